import type { Hole } from '../catalogue/hole';
import type { DrillBit, Item, Plate, Screw } from '../catalogue/item';
import type { Question, ScrewUse } from '../fit/question';
import type { ItemId } from '../identity/ids';
import type { Ground } from './ground';
import type { NearMiss, SourceRef } from './kit';
import type { ChainNeed, LinkVerdict, SlotName } from './need';

/** Enough to see why; a tray may hold dozens of sleeves. */
const MOST_SHOWN = 8;

const KIND_OF_SLOT: Record<SlotName, Item['kind']> = {
  pilotBit: 'drillBit',
  sleeve: 'drillSleeve',
  glidingBit: 'drillBit',
  glidingSleeve: 'drillSleeve',
  insertSleeve: 'drillSleeve',
  tap: 'tap',
  countersink: 'countersink',
  gauge: 'depthGauge',
  driver: 'driver',
  torqueLimiter: 'torqueLimiter',
  handle: 'handle',
  glidingHandle: 'handle',
  wireDriver: 'handle',
};

/**
 * Why what lies in the chosen trays does not close an open chain: every piece of the right kind for a slot that stays
 * empty, with the answers that refuse it. Whoever stands with the tray open asks exactly this.
 */
export function nearMissesOf(need: ChainNeed, emptySlots: SlotName[], ground: Ground): NearMiss[] {
  const place = placeOf(need, ground);
  if (!place) return [];
  const misses: NearMiss[] = [];
  for (const slot of new Set(emptySlots)) {
    const seen = new Set<ItemId>();
    for (const setNumber of ground.chosen.sets) {
      const set = ground.store.sets[setNumber];
      for (const { itemId, found } of set?.contents ?? []) {
        const item = ground.index.byId.get(itemId);
        if (!set || !item || found <= 0 || item.kind !== KIND_OF_SLOT[slot] || seen.has(itemId)) continue;
        seen.add(itemId);
        const answers = askAbout(slot, item, place, need, ground).filter(
          (answer) => answer.verdict.outcome !== 'fits',
        );
        const from: SourceRef = { kind: 'set', setId: set.id };
        if (answers.length > 0 && misses.length < MOST_SHOWN) misses.push({ slot, itemId, from, answers });
      }
    }
  }
  return misses;
}

interface Place {
  screw: Screw;
  use: ScrewUse;
  seat: { hole: Hole; plate: Plate } | null;
}

/** The hole and screw of the first step that the chain is for. */
function placeOf(need: ChainNeed, { needs, index, construct }: Ground): Place | null {
  const screw = index.byId.get(need.forItemId);
  const step = needs.steps.find((one) => one.key === need.steps[0]);
  if (screw?.kind !== 'screw' || !step || step.purpose === 'plate' || step.purpose === 'temporaryWire')
    return null;
  const planned = construct.plates.find((one) => one.key === step.plateKey);
  const plate = planned && index.byId.get(planned.plateItemId);
  const hole = plate?.kind === 'plate' ? plate.holes.find((one) => one.id === step.holeId) : undefined;
  const fill =
    step.holeId === null
      ? construct.freeScrews.find((one) => one.key === step.key)
      : planned?.fills[step.holeId];
  const cortices = fill && 'cortices' in fill ? fill.cortices : 2;
  return {
    screw,
    use: { purpose: step.purpose, cortices },
    seat: plate?.kind === 'plate' && hole ? { hole, plate } : null,
  };
}

function askAbout(
  slot: SlotName,
  item: Item,
  { screw, use, seat }: Place,
  need: ChainNeed,
  ground: Ground,
): LinkVerdict[] {
  const say = (question: Question, items: Item[], holeId: string | null = null): LinkVerdict => ({
    itemIds: items.map((one) => one.id),
    holeId,
    verdict: ground.rules.ask(question),
  });
  switch (item.kind) {
    case 'drillBit': {
      const relation = slot === 'glidingBit' ? 'glides' : 'pilots';
      return [say({ relation, bit: item, screw }, [item, screw])];
    }
    case 'drillSleeve': {
      const position = use.purpose === 'locked' ? 'centred' : use.purpose === 'offset' ? 'offset' : 'neutral';
      const tools = toolsAtHand(need, slot, ground);
      return item.ends.flatMap((end, endIndex): LinkVerdict[] => {
        const by = { sleeve: item, end, endIndex };
        const on = seat ? ({ on: 'hole', ...seat } as const) : ({ on: 'bone' } as const);
        const guided =
          slot === 'insertSleeve'
            ? []
            : [
                say(
                  { relation: 'guides', by, seat: on, position: seat ? position : null },
                  [item],
                  seat?.hole.id ?? null,
                ),
              ];
        return [...guided, ...tools.map((tool) => say({ relation: 'passes', tool, by }, [tool, item]))];
      });
    }
    case 'tap':
      return [say({ relation: 'taps', tap: item, screw }, [item, screw])];
    case 'countersink':
      return [say({ relation: 'countersinks', countersink: item, screw }, [item, screw])];
    case 'depthGauge':
      return [say({ relation: 'measures', gauge: item, screw, use }, [item, screw])];
    case 'driver':
      return [say({ relation: 'turns', driver: item, screw }, [item, screw])];
    case 'torqueLimiter':
      return [say({ relation: 'limits', limiter: item, screw }, [item, screw])];
    default:
      return [];
  }
}

/** Bits of the chain that are at hand, which a sleeve would have to pass. */
function toolsAtHand(need: ChainNeed, slot: SlotName, { sources, index }: Ground): DrillBit[] {
  const bitSlot = slot === 'glidingSleeve' ? 'glidingBit' : 'pilotBit';
  const candidates = need.slots.find(({ name }) => name === bitSlot)?.candidates ?? [];
  return candidates.flatMap(({ itemId }) => {
    const item = itemId !== null && sources.has(itemId) ? index.byId.get(itemId) : undefined;
    return item?.kind === 'drillBit' ? [item] : [];
  });
}
