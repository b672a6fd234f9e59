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
  return cases.flatMap((booked) => [
    ...pieceGaps(booked, given, there),
    ...chainGaps(
      booked,
      there.filter(({ useBy }) => isGoodOn(useBy, booked.caseDate)),
    ),
  ]);
}

const isGoodOn = (useBy: PlainDate | null, day: PlainDate) => useBy === null || !isPastUseBy(useBy, day);
const asksForOne = ({ length }: PieceNeed) => length?.kind !== 'notStated';

function matchPieces(cases: readonly CaseInNeed[], there: readonly PiecesThere[]): Set<PieceNeed> {
  const kindsOf = groupBy(there.keys(), (at) => there[at]?.itemId);
  const needs = cases.flatMap(({ needs: { pieces }, caseDate }) =>
    pieces.filter(asksForOne).map((need) => ({ need, caseDate })),
  );
  const accepted = needs.map(({ need, caseDate }) =>
    need.accepts.flatMap(({ itemId }) =>
      (kindsOf.get(itemId) ?? []).filter((at) => isGoodOn(there[at]?.useBy ?? null, caseDate)),
    ),
  );
  const given = largestMatching(
    accepted,
    there.map(({ pieces }) => pieces),
  );
  return new Set(needs.flatMap(({ need }, at) => (given[at] === null ? [] : [need])));
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

function chainGaps({ needs, ...booked }: CaseInNeed, there: readonly PiecesThere[]): Gap[] {
  const pieces = new Map<ItemId, number>();
  for (const one of there) pieces.set(one.itemId, (pieces.get(one.itemId) ?? 0) + one.pieces);
  return needs.chains.flatMap((chain): Gap[] => {
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
    return [{ ...booked, kind: 'chain', chain: chain.kind, lacking, steps: chain.steps }];
  });
}
