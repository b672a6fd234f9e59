import type { ItemId } from '../identity/ids';
import { isScrewFill } from './chosenHoles';
import type { Construct, FreeScrew, HoleFill, PlannedPlate, ScrewFill } from './plan';

/** Every change the planner can make to a construct. Each is a value, so that it can be undone, tested and replayed. */
export type PlanEdit =
  | { do: 'setRegion'; region: Construct['region'] }
  | { do: 'setBone'; bone: Construct['bone'] }
  | { do: 'setSharedSpread'; sdMm: number | null }
  | { do: 'setNote'; note: string | null }
  | { do: 'addPlate'; plateItemId: ItemId }
  | { do: 'exchangePlate'; plateKey: string; plateItemId: ItemId; holeIds: readonly string[] }
  | { do: 'removePlate'; plateKey: string }
  | { do: 'setZone'; plateKey: string; zone: PlannedPlate['zone'] }
  | { do: 'setPrinciple'; plateKey: string; principle: PlannedPlate['principle'] }
  /** `null` takes the holes back to not decided. */
  | { do: 'fillHoles'; plateKey: string; holeIds: readonly string[]; fill: HoleFill | null }
  /** Changes some values of the screws in these holes; holes without a screw stay as they are. */
  | { do: 'changeScrews'; plateKey: string; holeIds: readonly string[]; part: Partial<ScrewFill> }
  | { do: 'addFreeScrew'; screw: Omit<FreeScrew, 'key'> }
  | { do: 'setFreeScrew'; screwKey: string; screw: Omit<FreeScrew, 'key'> }
  | { do: 'removeFreeScrew'; screwKey: string }
  /** A saved start laid over the plan: all it states, on this plan's own limb. */
  | { do: 'layStart'; start: Construct }
  | { do: 'replace'; construct: Construct };

export const MOST_PLATES = 6;
export const MOST_FREE_SCREWS = 20;

/** The construct after one edit. An edit that names what is not there, or would pass a limit, changes nothing. */
export function applyEdit(construct: Construct, edit: PlanEdit): Construct {
  switch (edit.do) {
    case 'setRegion':
      return { ...construct, region: edit.region };
    case 'setBone':
      return { ...construct, bone: edit.bone };
    case 'setSharedSpread':
      return { ...construct, sharedLengthSdMm: edit.sdMm };
    case 'setNote':
      return { ...construct, note: edit.note };
    case 'addPlate': {
      if (construct.plates.length >= MOST_PLATES) return construct;
      const key = nextKey('P', construct.plates);
      const plate = { key, plateItemId: edit.plateItemId, zone: null, principle: null, fills: {} };
      return { ...construct, plates: [...construct.plates, plate] };
    }
    case 'exchangePlate':
      return onPlate(construct, edit.plateKey, (plate) => ({
        ...plate,
        plateItemId: edit.plateItemId,
        zone: null,
        fills: Object.fromEntries(Object.entries(plate.fills).filter(([id]) => edit.holeIds.includes(id))),
      }));
    case 'removePlate':
      return { ...construct, plates: construct.plates.filter(({ key }) => key !== edit.plateKey) };
    case 'setZone':
      return onPlate(construct, edit.plateKey, (plate) => ({ ...plate, zone: edit.zone }));
    case 'setPrinciple':
      return onPlate(construct, edit.plateKey, (plate) => ({ ...plate, principle: edit.principle }));
    case 'fillHoles':
      return onPlate(construct, edit.plateKey, (plate) => ({ ...plate, fills: filled(plate.fills, edit) }));
    case 'changeScrews':
      return onPlate(construct, edit.plateKey, (plate) => ({ ...plate, fills: changed(plate.fills, edit) }));
    case 'addFreeScrew': {
      if (construct.freeScrews.length >= MOST_FREE_SCREWS) return construct;
      const screw = { ...edit.screw, key: nextKey('L', construct.freeScrews) };
      return { ...construct, freeScrews: [...construct.freeScrews, screw] };
    }
    case 'setFreeScrew':
      return {
        ...construct,
        freeScrews: construct.freeScrews.map((screw) =>
          screw.key === edit.screwKey ? { ...edit.screw, key: screw.key } : screw,
        ),
      };
    case 'removeFreeScrew':
      return { ...construct, freeScrews: construct.freeScrews.filter(({ key }) => key !== edit.screwKey) };
    case 'layStart':
      return { ...edit.start, limb: construct.limb };
    case 'replace':
      return edit.construct;
  }
}

/** A construct with nothing in it yet, for the case as booked. */
export function emptyConstruct(region: Construct['region'], limb: Construct['limb']): Construct {
  return { region, limb, bone: 'notStated', plates: [], freeScrews: [], sharedLengthSdMm: null, note: null };
}

function onPlate(
  construct: Construct,
  plateKey: string,
  change: (plate: PlannedPlate) => PlannedPlate,
): Construct {
  return {
    ...construct,
    plates: construct.plates.map((plate) => (plate.key === plateKey ? change(plate) : plate)),
  };
}

function filled(fills: PlannedPlate['fills'], edit: { holeIds: readonly string[]; fill: HoleFill | null }) {
  const next = { ...fills };
  for (const holeId of edit.holeIds) {
    if (edit.fill) next[holeId] = edit.fill;
    else delete next[holeId];
  }
  return next;
}

function changed(
  fills: PlannedPlate['fills'],
  { holeIds, part }: { holeIds: readonly string[]; part: Partial<ScrewFill> },
): PlannedPlate['fills'] {
  return Object.fromEntries(
    Object.entries(fills).map(([id, fill]) => [
      id,
      holeIds.includes(id) && isScrewFill(fill) ? { ...fill, ...part } : fill,
    ]),
  );
}

/** The lowest free number, so that a plate removed and added again has its place back. */
function nextKey(letter: 'P' | 'L', taken: readonly { key: string }[]): string {
  const keys = new Set(taken.map(({ key }) => key));
  let number = 1;
  while (keys.has(`${letter}${number}`)) number += 1;
  return `${letter}${number}`;
}
