import type { ItemId } from '../identity/ids';
import type { Candidate, LinkVerdict, Slot, SlotLink, SlotName } from './need';

/** A candidate with the catalogue entry it stands for, while chains are being built. */
export interface Part<T> {
  item: T | null;
  candidate: Candidate;
}

/** A slot under construction: who could play the part. */
export interface DraftSlot<T> {
  name: SlotName;
  parts: Part<T>[];
}

/**
 * A candidate from the answers about it alone. `null` where one of them is a plain no: it is then no candidate.
 */
export function candidateFrom<T extends { id: ItemId }>(
  item: T,
  endIndex: number | null,
  answers: LinkVerdict[],
): Part<T> | null {
  if (answers.some((answer) => answer.verdict.outcome === 'doesNotFit')) return null;
  const established = answers.every((answer) => answer.verdict.outcome === 'fits');
  return { item, candidate: { itemId: item.id, endIndex, answers, established } };
}

/** The candidate that is no item: the part is not needed beside certain neighbours. */
export function nothingNeeded<T>(): Part<T> {
  return { item: null, candidate: { itemId: null, endIndex: null, answers: [], established: true } };
}

/**
 * The pairs of two slots that go together. `ask` gives the answer for a pair, `true` where they go together without
 * a rule (a fixed handle beside no handle), `false` where they do not.
 */
export function linkBetween<A, B>(
  first: number,
  second: number,
  slots: [DraftSlot<A>, DraftSlot<B>],
  ask: (a: A | null, b: B | null) => LinkVerdict | boolean,
): SlotLink {
  const pairs: SlotLink['pairs'] = [];
  slots[0].parts.forEach((a, i) => {
    slots[1].parts.forEach((b, j) => {
      const answer = ask(a.item, b.item);
      if (answer === false) return;
      if (answer === true) pairs.push({ first: i, second: j, answer: null, established: true });
      else if (answer.verdict.outcome !== 'doesNotFit')
        pairs.push({ first: i, second: j, answer, established: answer.verdict.outcome === 'fits' });
    });
  });
  return { first, second, pairs };
}

/** Drops the candidates that take part in no whole chain, so that what is shown and solved is what could serve. */
export function prune(slots: Slot[], links: SlotLink[]): { slots: Slot[]; links: SlotLink[] } {
  const alive = slots.map((slot) => slot.candidates.map(() => true));
  let changed = true;
  while (changed) {
    changed = false;
    for (const link of links) {
      for (const side of ['first', 'second'] as const) {
        const other = side === 'first' ? 'second' : 'first';
        const mine = alive[link[side]] as boolean[];
        const theirs = alive[link[other]] as boolean[];
        const held = new Set(link.pairs.filter((pair) => theirs[pair[other]]).map((pair) => pair[side]));
        mine.forEach((lives, index) => {
          if (!lives || held.has(index)) return;
          mine[index] = false;
          changed = true;
        });
      }
    }
    // one empty slot empties the chain
    if (alive.some((slot) => !slot.includes(true)) && alive.some((slot) => slot.includes(true))) {
      for (const slot of alive) slot.fill(false);
      changed = true;
    }
  }
  const places = alive.map((slot) => {
    let next = 0;
    return slot.map((lives) => (lives ? next++ : -1));
  });
  return {
    slots: slots.map((slot, s) => ({ ...slot, candidates: slot.candidates.filter((_, c) => alive[s]?.[c]) })),
    links: links.map((link) => ({
      ...link,
      pairs: link.pairs
        .filter((pair) => alive[link.first]?.[pair.first] && alive[link.second]?.[pair.second])
        .map((pair) => ({
          ...pair,
          first: places[link.first]?.[pair.first] as number,
          second: places[link.second]?.[pair.second] as number,
        })),
    })),
  };
}
