import { largestMatching } from '../calculations/matching';
import type { ItemId } from '../identity/ids';
import { waysToClose } from './cover/closure';
import { addPacks, addSet, nothingAtHand } from './cover/problem';
import type { Reachable } from './cover/search';
import type { StoreProblem } from './coverOfStore';
import type { SlotName } from './need';

/** What a plan asks for and nothing that comes round holds. */
export type MissingPieces =
  /** Pieces that stay: so many more, of any of these. `asked`: what the plan names, where nothing current would serve. */
  | { kind: 'pieces'; pieces: number; anyOf: ItemId[]; asked: ItemId | null }
  /** A chain of instruments that would close with any one of these; none: nothing in the catalogue closes it. */
  | { kind: 'chain'; anyOf: { itemId: ItemId; pieces: number }[][]; slots: SlotName[] };

const PLENTY = 9;
const MOST_LOOKED_AT = 2_000;
/** Ways beyond these are told by the kit. */
const MOST_WAYS = 4;

/** The pieces that everything together lacks, each said once however many steps ask for it. */
export function missingPieces(store: StoreProblem, reach: Reachable): MissingPieces[] {
  const all = nothingAtHand(store.problem);
  addPacks(all, store.problem);
  for (const set of store.problem.sets) addSet(all, set);
  const unlimited = new Int32Array(store.problem.itemCount).fill(PLENTY);
  const chains = reach.shortChains.flatMap((line): MissingPieces[] => {
    const { need, role } = store.lines[line] as StoreProblem['lines'][number];
    if (role !== 'need') return [];
    const chain = store.problem.chains[line] as StoreProblem['problem']['chains'][number];
    const anyOf = waysToClose(chain, all, unlimited, MOST_LOOKED_AT)
      .sort((a, b) => a.size - b.size)
      .slice(0, MOST_WAYS)
      .map((way) => [...way].map(([item, pieces]) => ({ itemId: store.items[item] as ItemId, pieces })));
    const slots = need.slots
      .filter((_, slot) => {
        const { candidates, pieces } = chain.slots[slot] as (typeof chain.slots)[number];
        return !candidates.some((item) => item < 0 || (all[item] ?? 0) >= pieces);
      })
      .map(({ name }) => name);
    return [{ kind: 'chain', anyOf, slots: [...new Set(slots)] }];
  });
  return once([...chains, ...lackingPieces(store, [...all])]);
}

function lackingPieces({ problem, pieces, items }: StoreProblem, stock: number[]): MissingPieces[] {
  const accepted = problem.pieces.map(({ accepts }) => accepts.map(({ item }) => item));
  const lacking = new Map<string, Extract<MissingPieces, { kind: 'pieces' }>>();
  largestMatching(accepted, stock).forEach((given, at) => {
    if (given !== null) return;
    const anyOf = (accepted[at] ?? []).map((item) => items[item] as ItemId);
    const need = pieces[at];
    const asked = anyOf[0] ?? need?.refused[0]?.itemId ?? need?.notEstablished[0]?.itemId ?? null;
    const key = JSON.stringify([anyOf, asked]);
    const before = lacking.get(key)?.pieces ?? 0;
    lacking.set(key, { kind: 'pieces', pieces: before + 1, anyOf, asked });
  });
  return [...lacking.values()];
}

/** Chains of several steps that lack the very same are one lack. */
function once(missing: readonly MissingPieces[]): MissingPieces[] {
  return [...new Map(missing.map((one) => [JSON.stringify(one), one])).values()];
}

/** Every item that would help with what is missing. */
export function helpingItems(missing: readonly MissingPieces[]): Set<ItemId> {
  return new Set(
    missing.flatMap((one) =>
      one.kind === 'pieces' ? one.anyOf : one.anyOf.flatMap((way) => way.map(({ itemId }) => itemId)),
    ),
  );
}
