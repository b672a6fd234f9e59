import type { HoleFill, PlannedLength, ScrewFill } from '@/lib/plans/plan';
import type { ItemEntry } from '../catalogue/entry';
import type { LineEntry } from '../configurations/layout';
import type { Chance } from './chance';
import type { PastCase } from './pastCases';
import type { PastTurn } from './pastTurns';

const MINUTE = 60_000;

export interface SlotMove {
  kind: 'implanted' | 'wasted' | 'notFound' | 'setAside' | 'refilled';
  at: number;
  itemId: string;
  setId: string;
  lineId: string;
  quantity: number;
  reason: string | null;
  caseId: string | null;
  packId: string | null;
}

/** A single pack that was opened for a case, or came back from it. */
export interface SingleUse {
  at: number;
  itemId: string;
  case: PastCase;
  outcome: 'implanted' | 'wasted' | 'cameBack';
  reason: string | null;
}

/** What lies in a slot of a set of the demo now. */
export interface SlotNow {
  setId: string;
  lineId: string;
  itemId: string;
  expected: number;
  found: number;
}

/** A moment in a set's life at which pieces move. */
type Moment =
  | { kind: 'case'; at: number; used: PastCase; packId: string | null }
  | { kind: 'count'; at: number };

/** How life goes: shares of screws, of lines, of turns. Invented, so that every chart has something to say. */
const OTHER_LENGTH_FIRST = 0.07;
const DROPPED = 0.012;
const NOT_FOUND_BY_LINE = 0.0015;
const BIT_WORN = 0.03;
const REFILLED_AT_ONCE = 0.96;
const EXACT_SD_MM = 1.7;

export interface UseStory {
  slotMoves: SlotMove[];
  singles: SingleUse[];
  /** What lay in each slot as the record began, by set and line. */
  began: { setId: string; lineId: string; itemId: string; quantity: number }[];
}

interface Teller {
  items: ReadonlyMap<string, ItemEntry>;
  screws: ReadonlyMap<string, readonly { itemId: string; mm: number }[]>;
  chance: Chance;
}

/** Tells what one set gave and got over the years, so that what is left is what lies in it now. */
export function storyOfSet(
  teller: Teller,
  lines: readonly LineEntry[],
  slots: readonly SlotNow[],
  moments: readonly Moment[],
): UseStory {
  const { chance, items } = teller;
  const story: UseStory = { slotMoves: [], singles: [], began: [] };
  const slotOf = new Map(slots.map((slot) => [slot.itemId, slot]));
  const target = new Map(slots.map((slot) => [slot.lineId, Math.max(slot.found, slot.expected)]));
  const held = new Map(target);
  const movedAt = new Map<string, number>();
  for (const slot of slots)
    story.began.push({
      setId: slot.setId,
      lineId: slot.lineId,
      itemId: slot.itemId,
      quantity: target.get(slot.lineId) ?? 0,
    });
  const lastCount = moments.findLast(({ kind }) => kind === 'count');
  let lastCase: string | null = null;
  const move = (
    slot: SlotNow,
    kind: SlotMove['kind'],
    at: number,
    quantity: number,
    more: Partial<Pick<SlotMove, 'reason' | 'caseId' | 'packId'>> = {},
  ) => {
    if (quantity <= 0) return;
    const before = held.get(slot.lineId) ?? 0;
    // what a slot gives and gets is told in the order it happened, however near a count and the next case lie
    const when = Math.max(at, movedAt.get(slot.lineId) ?? at);
    movedAt.set(slot.lineId, when);
    held.set(slot.lineId, kind === 'refilled' ? before + quantity : before - quantity);
    story.slotMoves.push({
      kind,
      at: when,
      itemId: slot.itemId,
      setId: slot.setId,
      lineId: slot.lineId,
      quantity,
      reason: null,
      caseId: null,
      packId: null,
      ...more,
    });
  };
  const take = (itemId: string, used: PastCase, at: number, packId: string | null, outcome: Outcome) => {
    const slot = slotOf.get(itemId);
    if (slot && (held.get(slot.lineId) ?? 0) > 0)
      move(slot, outcome.kind, at, 1, { reason: outcome.reason, caseId: used.id, packId });
    else if (outcome.kind !== 'notFound')
      story.singles.push({ at, itemId, case: used, outcome: outcome.kind, reason: outcome.reason });
  };
  for (const moment of moments) {
    if (moment.kind === 'case') {
      // after the last count nobody has entered yet what was used
      if (!lastCount || moment.at > lastCount.at) continue;
      const { used, packId } = moment;
      lastCase = used.id;
      const length = used.endsAt - used.startsAt;
      let share = 0.25;
      for (const [itemId, outcome] of usedIn(teller, used, lines, slotOf, held)) {
        take(itemId, used, used.startsAt + Math.round(length * share), packId, outcome);
        share = Math.min(0.9, share + 0.04);
      }
      continue;
    }
    const { at } = moment;
    for (const slot of slots) {
      const bal = held.get(slot.lineId) ?? 0;
      const kind = items.get(slot.itemId)?.kind;
      if (kind === 'drillBit' && bal > 0 && lastCase && chance.is(BIT_WORN))
        move(slot, 'setAside', at, 1, { reason: 'blunt' });
      if (bal > 1 && lastCase && chance.is(NOT_FOUND_BY_LINE))
        move(slot, 'notFound', at, 1, { reason: 'bench', caseId: lastCase });
      const left = held.get(slot.lineId) ?? 0;
      const want = target.get(slot.lineId) ?? 0;
      if (moment === lastCount) {
        // from here on it is as it is now
        if (left > slot.found)
          move(slot, 'notFound', at, left - slot.found, { reason: 'bench', caseId: lastCase });
        else move(slot, 'refilled', at + 5 * MINUTE, slot.found - left);
      } else if (left < want && chance.is(REFILLED_AT_ONCE))
        move(slot, 'refilled', at + 5 * MINUTE, want - left);
    }
  }
  return story;
}

interface Outcome {
  kind: 'implanted' | 'wasted' | 'notFound';
  reason: string | null;
}
const IMPLANTED: Outcome = { kind: 'implanted', reason: null };

/** What one case took, piece by piece in order. */
function* usedIn(
  { screws, chance }: Teller,
  used: PastCase,
  lines: readonly LineEntry[],
  slotOf: ReadonlyMap<string, SlotNow>,
  held: ReadonlyMap<string, number>,
): Generator<[itemId: string, outcome: Outcome]> {
  const inSet = new Set(lines.map(({ itemId }) => itemId));
  const there = (itemId: string) => {
    const slot = slotOf.get(itemId);
    return slot !== undefined && (held.get(slot.lineId) ?? 0) > 0;
  };
  const fixings = used.construct.plates.flatMap(({ fills }) => Object.values(fills).filter(isScrew));
  for (const { plateItemId } of used.construct.plates) yield [plateItemId, IMPLANTED];
  for (const fix of [...fixings, ...used.construct.freeScrews]) {
    const made = screws.get(fix.screwFamily) ?? [];
    const racked = made.filter(({ itemId }) => inSet.has(itemId));
    const choice = racked.some(({ itemId }) => there(itemId))
      ? racked.filter(({ itemId }) => there(itemId))
      : made;
    const mm = wanted(fix.length, choice, chance);
    const nearest = [...choice].sort((a, b) => Math.abs(a.mm - mm) - Math.abs(b.mm - mm));
    const [best, other] = nearest;
    if (!best) continue;
    if (other && chance.is(OTHER_LENGTH_FIRST))
      yield [other.itemId, { kind: 'wasted', reason: 'otherLength' }];
    if (chance.is(DROPPED)) yield [best.itemId, { kind: 'wasted', reason: 'dropped' }];
    yield [best.itemId, IMPLANTED];
  }
}

const isScrew = (fill: HoleFill): fill is ScrewFill => 'screwFamily' in fill;

function wanted(length: PlannedLength, made: readonly { mm: number }[], chance: Chance): number {
  switch (length.kind) {
    case 'exact':
      return chance.normal(length.mm, EXACT_SD_MM);
    case 'spread':
      return chance.normal(length.meanMm, length.sdMm);
    case 'notStated':
      return chance.normal(made[Math.floor(made.length / 2)]?.mm ?? 20, 4);
  }
}

/** The moments of one set, in order: its cases, and the counts at the bench between them. */
export function momentsOf(
  setId: string,
  cases: readonly PastCase[],
  turns: readonly PastTurn[],
  toldCounts: readonly number[],
): Moment[] {
  // what was opened beside gave nothing, and its count found it whole
  const own = turns.filter(({ set, isBeside }) => set.setId === setId && !isBeside);
  const packOf = new Map(own.map(({ used, packId }) => [used.id, packId]));
  const counts = own.flatMap(({ steps }) =>
    steps.filter(({ step }) => step === 'onBench').map(({ at }) => at + 15 * MINUTE),
  );
  return [
    ...[...counts, ...toldCounts].map((at) => ({ kind: 'count' as const, at })),
    ...cases
      .filter(({ set }) => set.setId === setId)
      .map((used) => ({
        kind: 'case' as const,
        at: used.startsAt,
        used,
        packId: packOf.get(used.id) ?? `pack_demo-${used.set.code.toLowerCase()}-${used.toldTurn}`,
      })),
  ].sort((a, b) => a.at - b.at);
}
