import { writeMm } from '../../quantities/length';
import type { Hole } from '../hole';
import type { Coupling, Drive, Item, ItemKind, SleeveEnd } from '../item';
import { formName, type ItemField, KIND_FIELDS, SHARED_FIELDS } from './fields';

/**
 * An item as it is being typed: every field as text under its dotted name (`lengthMm`, `drive.form`, `holes.3.alongMm`),
 * an empty text for what is not stated. `holes.count`, `ends.count` and `takes.count` say how many of them there are.
 */
export type ItemDraft = Record<string, string>;

/** The fields of one hole in the form, in the table's order. */
export const HOLE_FIELDS = [
  'id',
  'segment',
  'holeClass',
  'alongMm',
  'acrossMm',
  'openingMm',
  'seatMm',
  'slotMm',
  'plainSeat',
  'lockingFamily',
  'lockingConeDegrees',
  'tiltAlongDegrees',
  'tiltAcrossDegrees',
] as const;
export type HoleField = (typeof HOLE_FIELDS)[number];

export function fieldsOf(kind: ItemKind): readonly ItemField[] {
  return [...SHARED_FIELDS, ...KIND_FIELDS[kind]];
}

/** An empty form of one kind, with the few values that are always known. */
export function blankDraft(kind: ItemKind): ItemDraft {
  const draft: ItemDraft = { packMultiple: '1', partsPerPiece: '1' };
  for (const field of fieldsOf(kind)) {
    if (field.entry === 'flag') draft[field.key] = 'no';
    if (field.entry === 'ends') Object.assign(draft, { 'ends.count': '1' });
    if (field.entry === 'holes') Object.assign(draft, { 'holes.count': '0' });
    if (field.entry === 'couplings') Object.assign(draft, { 'takes.count': '0' });
  }
  return draft;
}

/** The form filled with an item as it stands. */
export function draftFromItem(item: Item): ItemDraft {
  const draft: ItemDraft = {};
  for (const field of fieldsOf(item.kind)) {
    const value = (item as unknown as Record<string, unknown>)[field.key];
    Object.assign(draft, textsOf(field, value));
  }
  return draft;
}

function textsOf(field: ItemField, value: unknown): ItemDraft {
  const name = formName(field.key);
  switch (field.entry) {
    case 'mm':
      return { [name]: mmText(value as number | null) };
    case 'pounds':
      return { [name]: value === null ? '' : ((value as number) / 100).toFixed(2) };
    case 'yesNo':
    case 'flag':
      return { [name]: value === null ? '' : value ? 'yes' : 'no' };
    case 'mmList':
      return { [name]: value === null ? '' : (value as number[]).map(writeMm).join(', ') };
    case 'textList':
      return { [name]: value === null ? '' : (value as string[]).join(', ') };
    case 'drive':
      return driveTexts(value as Drive | null);
    case 'coupling':
      return couplingTexts(field.key, value as Coupling | null);
    case 'couplings':
      return listTexts(field.key, (value as Coupling[] | null) ?? [], couplingTexts);
    case 'ends':
      return listTexts('ends', value as SleeveEnd[], endTexts);
    case 'holes':
      return listTexts('holes', value as Hole[], (at, hole) => prefixed(at, holeTexts(hole)));
    default:
      return { [name]: value === null ? '' : String(value) };
  }
}

function mmText(um: number | null): string {
  return um === null ? '' : writeMm(um);
}

function prefixed(at: string, texts: ItemDraft): ItemDraft {
  return Object.fromEntries(Object.entries(texts).map(([key, text]) => [`${at}.${key}`, text]));
}

function listTexts<T>(
  name: string,
  values: readonly T[],
  write: (at: string, value: T) => ItemDraft,
): ItemDraft {
  const draft: ItemDraft = { [`${name}.count`]: String(values.length) };
  values.forEach((value, index) => {
    Object.assign(draft, write(`${name}.${index}`, value));
  });
  return draft;
}

function driveTexts(drive: Drive | null): ItemDraft {
  if (drive === null) return { 'drive.form': '', 'drive.size': '' };
  const size =
    drive.form === 'hexalobular'
      ? String(drive.number)
      : writeMm(drive.form === 'hexagonSocket' ? drive.acrossFlatsUm : drive.sizeUm);
  return { 'drive.form': drive.form, 'drive.size': size };
}

function couplingTexts(at: string, coupling: Coupling | null): ItemDraft {
  return { [`${at}.form`]: coupling?.form ?? '', [`${at}.sizeMm`]: mmText(coupling?.sizeUm ?? null) };
}

function endTexts(at: string, end: SleeveEnd): ItemDraft {
  return prefixed(at, {
    boreMm: mmText(end.boreUm),
    outerMm: mmText(end.outerUm),
    outerForm: end.outerForm ?? '',
    seatsOn: end.seatsOn?.join(',') ?? '',
    positions: end.positions?.join(',') ?? '',
    lockingFamily: end.lockingFamily ?? '',
  });
}

/** One hole as the form's texts, without its place in the list. */
export function holeTexts(hole: Hole): Record<HoleField, string> {
  return {
    id: hole.id,
    segment: hole.segment,
    holeClass: hole.holeClass,
    alongMm: writeMm(hole.alongUm),
    acrossMm: writeMm(hole.acrossUm),
    openingMm: mmText(hole.openingUm),
    seatMm: mmText(hole.seatUm),
    slotMm: mmText(hole.slotUm),
    plainSeat: hole.plainSeat ?? '',
    lockingFamily: hole.lockingFamily ?? '',
    lockingConeDegrees: hole.lockingConeDegrees === null ? '' : String(hole.lockingConeDegrees),
    tiltAlongDegrees: String(hole.tiltAlongDegrees),
    tiltAcrossDegrees: String(hole.tiltAcrossDegrees),
  };
}
