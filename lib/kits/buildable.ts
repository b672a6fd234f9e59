import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { Construct } from '../plans/plan';
import type { Rules } from './askOnce';
import { type CatalogueIndex, indexCatalogue } from './catalogueIndex';
import { STOPPING } from './chosen';
import { isClosed, waysToClose } from './cover/closure';
import { matchPieces } from './cover/pieces';
import type { CoverChain, CoverProblem } from './cover/problem';
import { unmetPieces } from './cover/spare';
import { coverChain, possibleChain } from './coverOfStore';
import type { ChainKind, ChainNeed, Needs, PieceNeed, StepKey } from './need';
import { needsOf } from './needs';

/** What one set, opened alone, allows of a construct. */
export interface Buildable {
  /** `notEstablished`: nothing is short, but an answer or a length it rests on is missing. */
  outcome: 'yes' | 'no' | 'notEstablished';
  /** Steps of the construct, and those that can be done with what is there. */
  steps: number;
  stepsPossible: number;
  /** Each need that is short, with the steps it stops. */
  blocked: Blocked[];
  /** Needs that would be met if missing values were known. */
  open: { needId: string; steps: StepKey[] }[];
}

export type Blocked =
  | { kind: 'piece'; needId: string; what: PieceNeed['what']; steps: StepKey[]; accepts: ItemId[] }
  /** `wouldClose`: the smallest additions, each of which closes the chain. */
  | { kind: 'chain'; needId: string; chain: ChainKind; steps: StepKey[]; wouldClose: ItemId[][] };

const MOST_WAYS = 4;

/**
 * Whether the pieces of a set build a construct (calculations.md §2): a closed chain of instruments for each step, and
 * a piece of its own for each implant. Quick enough for every set of a hospital: what a construct needs is worked out
 * once for as long as the construct, the catalogue and the engine are the same objects.
 *
 * @param contents sound pieces only; the same item may come on several lines
 */
export function buildableFrom(
  construct: Construct,
  contents: readonly { itemId: ItemId; found: number }[],
  catalogue: readonly Item[],
  engine: Rules,
): Buildable {
  const ready = readyFor(construct, catalogue, engine);
  const { needs, problem, items, possible, index } = ready;
  const atHand = new Int32Array(problem.itemCount);
  for (const { itemId, found } of contents) {
    const item = items.get(itemId);
    if (item !== undefined && index.byId.get(itemId)?.status === 'current')
      atHand[item] = (atHand[item] ?? 0) + found;
  }
  const blocked: Blocked[] = [];
  const open: Buildable['open'] = [];
  needs.chains.forEach((need, at) => {
    const chain = problem.chains[at] as CoverChain;
    if (isClosed(chain, atHand)) return;
    const { id: needId, kind, steps } = need;
    if (isClosed(possible[at] as CoverChain, atHand)) open.push({ needId, steps });
    else
      blocked.push({ kind: 'chain', needId, chain: kind, steps, wouldClose: waysFor(chain, atHand, ready) });
  });
  const stated = needs.pieces.filter(isStated);
  if (matchPieces(problem, atHand).matched < stated.length) {
    for (const at of unmetPieces(problem, atHand)) {
      const { id: needId, what, step, accepts, notEstablished } = stated[at] as PieceNeed;
      const perhaps = contents.some(
        ({ itemId, found }) => found > 0 && notEstablished.some((one) => one.itemId === itemId),
      );
      if (accepts.length === 0 && perhaps) open.push({ needId, steps: [step] });
      else
        blocked.push({
          kind: 'piece',
          needId,
          what,
          steps: [step],
          accepts: accepts.map((one) => one.itemId),
        });
    }
  }
  for (const { id: needId, step } of needs.pieces.filter((need) => !isStated(need)))
    open.push({ needId, steps: [step] });
  const stoppedByPlan = needs.faults.flatMap((fault) =>
    'step' in fault && STOPPING.has(fault.kind) ? [fault.step] : [],
  );
  const stopped = new Set([...stoppedByPlan, ...blocked.flatMap((one) => one.steps)]);
  const unsettled = open.length > 0 || needs.faults.some((fault) => fault.kind === 'factNotStated');
  return {
    outcome: stopped.size > 0 ? 'no' : unsettled ? 'notEstablished' : 'yes',
    steps: needs.steps.length,
    stepsPossible: needs.steps.length - stopped.size,
    blocked,
    open,
  };
}

const isStated = (need: PieceNeed) => need.length?.kind !== 'notStated';

interface Ready {
  needs: Needs;
  problem: CoverProblem;
  items: Map<ItemId, number>;
  ids: ItemId[];
  possible: CoverChain[];
  index: CatalogueIndex;
  /** The smallest additions already worked out, by chain and what is at hand. */
  ways: Map<string, ItemId[][]>;
}

const kept = new WeakMap<Rules, WeakMap<readonly Item[], WeakMap<Construct, Ready>>>();

function readyFor(construct: Construct, catalogue: readonly Item[], engine: Rules): Ready {
  const byCatalogue = kept.get(engine) ?? new WeakMap<readonly Item[], WeakMap<Construct, Ready>>();
  kept.set(engine, byCatalogue);
  const byConstruct = byCatalogue.get(catalogue) ?? new WeakMap<Construct, Ready>();
  byCatalogue.set(catalogue, byConstruct);
  const known = byConstruct.get(construct);
  if (known) return known;
  const made = makeReady(construct, catalogue, engine);
  byConstruct.set(construct, made);
  return made;
}

function makeReady(construct: Construct, catalogue: readonly Item[], engine: Rules): Ready {
  const needs = needsOf(construct, catalogue, engine);
  const items = new Map<ItemId, number>();
  const ids: ItemId[] = [];
  const number = (id: ItemId): number => {
    const known = items.get(id);
    if (known !== undefined) return known;
    items.set(id, ids.length);
    return ids.push(id) - 1;
  };
  const chains = needs.chains.map((need: ChainNeed) => coverChain(need, number, () => true));
  const possible = needs.chains.map((need) => possibleChain(need, number));
  const pieces = needs.pieces.filter(isStated).map(({ accepts }) => ({
    accepts: accepts.map(({ itemId, longerUm }) => ({ item: number(itemId), longerMm: longerUm / 1000 })),
  }));
  const problem: CoverProblem = { itemCount: ids.length, sets: [], packs: [], chains, pieces };
  return { needs, problem, items, ids, possible, index: indexCatalogue(catalogue), ways: new Map() };
}

function waysFor(chain: CoverChain, atHand: Int32Array, { problem, ids, ways }: Ready): ItemId[][] {
  const looks = chain.slots.flatMap(({ candidates }) =>
    candidates.map((item) => (item < 0 ? 1 : Math.min(atHand[item] ?? 0, 1))),
  );
  const key = `${problem.chains.indexOf(chain)}|${looks.join('')}`;
  const known = ways.get(key);
  if (known) return known;
  const unlimited = new Int32Array(problem.itemCount).fill(9);
  const found = waysToClose(chain, atHand, unlimited, 1_000)
    .sort((a, b) => a.size - b.size)
    .slice(0, MOST_WAYS)
    .map((way) => [...way.keys()].map((item) => ids[item] as ItemId));
  ways.set(key, found);
  return found;
}
