import { largestMatching } from '@/lib/calculations/matching';
import type { CaseId, ItemId } from '@/lib/identity/ids';
import { isClosed } from '@/lib/kits/cover/closure';
import type { AtHand } from '@/lib/kits/cover/problem';
import { coverChain } from '@/lib/kits/coverOfStore';
import type { ChainNeed, Needs, PieceNeed } from '@/lib/kits/need';
import { groupBy } from '@/lib/lists/groupBy';
import { isPastUseBy, type PlainDate } from '@/lib/quantities/plainDate';

/** A booked case with a confirmed plan. */
export interface CaseInNeed {
  caseId: CaseId;
  reference: string;
  startsAt: string;
  caseDate: PlainDate;
  needs: Needs;
}

/** Pieces that could serve, wherever they are: in a set at any step that is not held, or on the shelf. */
export interface PiecesThere {
  itemId: ItemId;
  pieces: number;
  /** Of a lot on the shelf; pieces in sets have none of their own. */
  useBy: PlainDate | null;
}

interface GapOfCase {
  caseId: CaseId;
  reference: string;
  startsAt: string;
  caseDate: PlainDate;
  /** Steps of the plan that stop. */
  steps: string[];
}

/** Something booked cases need that the house does not have. */
export type Gap =
  | (GapOfCase & {
      kind: 'piece';
      what: PieceNeed['what'];
      /** Any of these would serve, the planned one first; none: nothing current fits. */
      accepts: ItemId[];
      pieces: number;
      /** There are such pieces, but cases that begin earlier take them. */
      takenEarlier: boolean;
    })
  | (GapOfCase & {
      kind: 'chain';
      chain: ChainNeed['kind'];
      /** Parts of the chain of which no piece that fits is in the house; none: those there do not fit one another. */
      lacking: ChainNeed['slots'][number]['name'][];
    });

/**
 * What confirmed plans need that neither sets nor shelf have. Pieces that stay in the patient are matched to cases in the
 * order they begin, so that a later case never takes from an earlier one; instruments come back, and only have to be there.
 * Use-by is tested against the day of each case. Must-haves only.
 *
 * @param cases in the order they begin
 */
export function gapsOf(cases: readonly CaseInNeed[], there: readonly PiecesThere[]): Gap[] {
  const given = matchPieces(cases, there);
  const chainsOf = chainGapsAmong(there);
  return cases.flatMap((booked, at) => [
    ...pieceGaps(booked, given[at] ?? new Set(), there),
    ...chainsOf(booked),
  ]);
}

const isGoodOn = (useBy: PlainDate | null, day: PlainDate) => useBy === null || !isPastUseBy(useBy, day);
const asksForOne = ({ length }: PieceNeed) => length?.kind !== 'notStated';

/** Of each case, the needs that a piece is there for. Cases may share the very same needs, so each is told apart. */
function matchPieces(cases: readonly CaseInNeed[], there: readonly PiecesThere[]): Set<PieceNeed>[] {
  const kindsOf = groupBy(there.keys(), (at) => there[at]?.itemId);
  const needs = cases.flatMap(({ needs: { pieces }, caseDate }, of) =>
    pieces.filter(asksForOne).map((need) => ({ need, caseDate, of })),
  );
  // what serves a need on a day is looked up once, however many cases of that day share it
  const known = new Map<PlainDate, Map<PieceNeed, number[]>>();
  const servingOn = ({ need, caseDate }: (typeof needs)[number]) => {
    const ofDay = known.get(caseDate) ?? new Map<PieceNeed, number[]>();
    known.set(caseDate, ofDay);
    const before = ofDay.get(need);
    if (before) return before;
    const serving = need.accepts.flatMap(({ itemId }) =>
      (kindsOf.get(itemId) ?? []).filter((at) => isGoodOn(there[at]?.useBy ?? null, caseDate)),
    );
    ofDay.set(need, serving);
    return serving;
  };
  const matched = largestMatching(
    needs.map(servingOn),
    there.map(({ pieces }) => pieces),
  );
  const given = cases.map(() => new Set<PieceNeed>());
  for (const [at, { need, of }] of needs.entries()) if (matched[at] !== null) given[of]?.add(need);
  return given;
}

function pieceGaps(
  { needs, ...booked }: CaseInNeed,
  given: ReadonlySet<PieceNeed>,
  there: readonly PiecesThere[],
): Gap[] {
  const unmet = needs.pieces.filter((need) => asksForOne(need) && !given.has(need));
  const alike = groupBy(
    unmet,
    ({ what, accepts }) => `${what} ${accepts.map(({ itemId }) => itemId).join(' ')}`,
  );
  return [...alike.values()].flatMap((group): Gap[] => {
    const [first] = group;
    if (!first) return [];
    const accepts = first.accepts.map(({ itemId }) => itemId);
    const takenEarlier = there.some(
      ({ itemId, pieces, useBy }) =>
        pieces > 0 && accepts.includes(itemId) && isGoodOn(useBy, booked.caseDate),
    );
    const steps = group.map(({ step }) => step);
    return [
      { ...booked, kind: 'piece', what: first.what, accepts, pieces: group.length, takenEarlier, steps },
    ];
  });
}

/** What of its chains is lacking, the same for all cases that share their needs while the same heaps are good. */
function chainGapsAmong(there: readonly PiecesThere[]): (booked: CaseInNeed) => Gap[] {
  const goodOn = new Map<PlainDate, ReadonlyMap<ItemId, number>>();
  const byHeaps = new Map<number, ReadonlyMap<ItemId, number>>();
  const piecesOn = (day: PlainDate) => {
    const before = goodOn.get(day);
    if (before) return before;
    const good = there.filter(({ useBy }) => isGoodOn(useBy, day));
    // what is good on a later day was good before: as many heaps are the very same ones
    const pieces = byHeaps.get(good.length) ?? piecesByItem(good);
    byHeaps.set(good.length, pieces);
    goodOn.set(day, pieces);
    return pieces;
  };
  const known = new Map<ReadonlyMap<ItemId, number>, Map<Needs, ChainLack[]>>();
  return ({ needs, ...booked }) => {
    const pieces = piecesOn(booked.caseDate);
    const ofNeeds = known.get(pieces) ?? new Map<Needs, ChainLack[]>();
    known.set(pieces, ofNeeds);
    const lacks = ofNeeds.get(needs) ?? chainLacks(needs, pieces);
    ofNeeds.set(needs, lacks);
    return lacks.map((lack): Gap => ({ ...booked, kind: 'chain', ...lack }));
  };
}

function piecesByItem(heaps: readonly PiecesThere[]): ReadonlyMap<ItemId, number> {
  const pieces = new Map<ItemId, number>();
  for (const one of heaps) pieces.set(one.itemId, (pieces.get(one.itemId) ?? 0) + one.pieces);
  return pieces;
}

type ChainLack = Pick<Extract<Gap, { kind: 'chain' }>, 'chain' | 'lacking' | 'steps'>;

function chainLacks(needs: Needs, pieces: ReadonlyMap<ItemId, number>): ChainLack[] {
  return needs.chains.flatMap((chain): ChainLack[] => {
    if (chain.importance === 'backUp') return [];
    const numbers = new Map<ItemId, number>();
    const number = (id: ItemId) => {
      const known = numbers.get(id) ?? numbers.size;
      numbers.set(id, known);
      return known;
    };
    const bare = coverChain(chain, number, () => true);
    const atHand: AtHand = new Int32Array(numbers.size);
    for (const [id, at] of numbers) atHand[at] = pieces.get(id) ?? 0;
    if (isClosed(bare, atHand)) return [];
    const lacking = chain.slots
      .filter(({ candidates }) =>
        candidates.every(
          ({ itemId, established }) => itemId !== null && !(established && (pieces.get(itemId) ?? 0) > 0),
        ),
      )
      .map(({ name }) => name);
    return [{ chain: chain.kind, lacking, steps: chain.steps }];
  });
}
