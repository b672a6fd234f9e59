import type { Verdict } from '../fit/question';
import type { ItemId } from '../identity/ids';
import type { LinkVerdict, Needs } from '../kits/need';

/**
 * Everything of a plan's needs on which its kit rests, as text: what serves, what is refused, what stays open, and what is
 * cautioned about. Two engines that give the same text for a plan give it the same kit, so that most plans need no second
 * one. What merely holds is left out: a rule withdrawn that was met everywhere changes nothing.
 */
export function needsSignature(needs: Needs): string {
  return JSON.stringify(needs, (key, value) => {
    if (key === 'verdict') return verdictSaid(value as Verdict);
    if (key === 'answers') return (value as LinkVerdict[]).filter(({ verdict }) => speaks(verdict));
    return value;
  });
}

const speaks = ({ outcome, findings }: Verdict) =>
  outcome !== 'fits' || findings.some(({ answer }) => answer !== 'met');

const verdictSaid = ({ outcome, findings }: Verdict) => [
  outcome,
  findings
    .filter(({ answer }) => answer !== 'met')
    .map(({ answer, severity, sentence, outranked }) => [answer, severity, sentence, outranked]),
];

/** Every item that could serve a plan somewhere. A set that holds none of them is never chosen for it. */
export function itemsNeeded({ pieces, chains }: Needs): Set<ItemId> {
  const items = new Set<ItemId>();
  for (const { accepts, notEstablished, refused } of pieces)
    for (const { itemId } of [...accepts, ...notEstablished, ...refused]) items.add(itemId);
  for (const { slots } of chains)
    for (const { candidates } of slots)
      for (const { itemId } of candidates) if (itemId !== null) items.add(itemId);
  return items;
}
