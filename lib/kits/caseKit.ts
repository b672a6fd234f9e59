import type { Item } from '../catalogue/item';
import type { Construct } from '../plans/plan';
import type { PlainDate } from '../quantities/plainDate';
import { askOnce, type Rules } from './askOnce';
import { type Availability, availableFor } from './availability';
import { indexCatalogue } from './catalogueIndex';
import { cautionsOf } from './cautioned';
import { chosenChains, chosenPacks, chosenSets, LEFT_OPEN, STOPPING, stepKits, tieOf } from './chosen';
import { reachable, search } from './cover/search';
import { solveCover } from './cover/solve';
import { coverOfLengths } from './coverOfLengths';
import { coverOfStore, type StoreProblem } from './coverOfStore';
import { type Ground, groundOf } from './ground';
import { keptNeeds } from './keptWays';
import type { CaseKit, ChosenChain, KitVerdict, Proof, Short, SourceRef, Tie } from './kit';
import { packsLeft, setsLeft, singlePoints, stepMargins, whyNotFewer } from './sensitivity';
import type { KitSettings } from './settings';
import { cautionedNeeds, helpfulSets, unmetNeeds } from './shorts';
import type { Solver } from './solver';
import type { Store, StoredSet } from './store';
import { orderOfUse, pickLines } from './useOrder';

export type * from './kit';

export interface KitQuestion {
  construct: Construct;
  /** Use-by is tested against it. */
  caseDate: PlainDate;
  /** When the kit must stand in theatre, an ISO instant; `null` when not set. */
  needBy: string | null;
  store: Store;
  catalogue: readonly Item[];
  engine: Rules;
  settings: KitSettings;
  solver: Solver | null;
  /** `figure`: the length cover without a top-up, which is quick. */
  lengthCover: 'withTopUp' | 'figure' | 'none';
}

/** Other kits worth naming. */
const MOST_TIES = 5;

/**
 * The kit for a planned construct from what is in store (calculations.md §5), with its reasons. Order of aims: no
 * must-have short, no back-up short, (no chain that carries a caution where there is one without), fewest trays,
 * fewest single packs, lengths as stated rather than longer, no promise to another case touched, earliest use-by,
 * least mass, least distance. Pure but for `solver`, which is only called when the search gives up.
 */
export async function planKit(question: KitQuestion): Promise<CaseKit> {
  const { construct, catalogue, engine, store, caseDate } = question;
  const needs = keptNeeds(construct, catalogue, engine);
  const available = availableFor(store, caseDate);
  const build = (sets: StoredSet[]): StoreProblem =>
    coverOfStore({
      needs,
      sets,
      packs: available.packs,
      caseDate,
      index: indexCatalogue(catalogue),
      settings: question.settings,
    });
  const now = build(available.sets);
  const waiting = waitFor(now, available, build);
  const problem = waiting?.problem ?? now;
  const ground = await settle(question, needs, available, problem);
  const kit = answer(ground, question);
  if (!waiting) return kit;
  const codes = kit.sets.filter((set) => set.readyAt !== null).map((set) => set.code);
  if (codes.length === 0) return kit;
  return { ...kit, verdict: waitingVerdict(kit.verdict, waiting, codes, question.needBy) };
}

async function settle(
  question: KitQuestion,
  needs: Ground['needs'],
  available: Availability,
  store: StoreProblem,
) {
  const { construct, catalogue, engine, settings, solver } = question;
  const solved = await solveCover(store.problem, { solver, timeLimitMs: settings.timeLimitMs });
  const rules = askOnce(engine, catalogue);
  return groundOf({
    construct,
    catalogue,
    index: indexCatalogue(catalogue),
    rules,
    needs,
    available,
    store,
    solved,
  });
}

interface Waiting {
  at: string;
  problem: StoreProblem;
  shortUntilThen: string[];
}

/** The earliest moment at which nothing is short because sets have come back; `null` when nothing is short or none helps. */
function waitFor(
  now: StoreProblem,
  available: Availability,
  build: (sets: StoredSet[]) => StoreProblem,
): Waiting | null {
  const shortNow = shortNeeds(now);
  if (shortNow.length === 0) return null;
  const coming = available.otherSets
    .filter(({ because }) => because.kind === 'notInStore' && because.readyAt !== null)
    .map(({ set }) => ({ set, at: set.readyAt as string }))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  for (let count = 1; count <= coming.length; count += 1) {
    const problem = build([...now.sets, ...coming.slice(0, count).map(({ set }) => set)]);
    if (shortNeeds(problem).length === 0)
      return { at: coming[count - 1]?.at as string, problem, shortUntilThen: shortNow };
  }
  return null;
}

/** Ids of the must-haves that even everything together does not meet. */
function shortNeeds(store: StoreProblem): string[] {
  const reach = reachable(store.problem);
  const short = reach.shortChains.flatMap((line) => {
    const { need, role } = store.lines[line] as StoreProblem['lines'][number];
    return role === 'need' ? [need.id] : [];
  });
  return reach.pieces < store.pieces.length ? [...short, ...store.pieces.map((piece) => piece.id)] : short;
}

function waitingVerdict(
  verdict: KitVerdict,
  waiting: Waiting,
  setCodes: string[],
  needBy: string | null,
): KitVerdict {
  if (verdict.kind !== 'ready') return verdict;
  const late = needBy !== null && Date.parse(waiting.at) > Date.parse(needBy);
  return { kind: 'readyAt', at: waiting.at, late, setCodes, shortUntilThen: waiting.shortUntilThen };
}

function answer(ground: Ground, question: KitQuestion): CaseKit {
  const { needs, solved, chosen } = ground;
  const { shorts, notEstablished } = unmetNeeds(ground);
  const chains = chosenChains(ground);
  const steps = stepKits(ground, chains, { shorts, notEstablished });
  const packs = chosenPacks(ground);
  const order = orderOfUse(needs, steps, chains);
  const { lengthCover } = question;
  const target = lengthCover === 'withTopUp' ? question.settings.targetCover : null;
  const verdict = verdictOf(ground, shorts, notEstablished.length > 0);
  return {
    verdict,
    buildable: buildableOf(
      verdict,
      packs.some((pack) => pack.role === 'open'),
    ),
    needs,
    sets: chosenSets(ground),
    packs,
    steps,
    chains,
    shorts,
    faults: needs.faults,
    notEstablished,
    withCaution: cautionedNeeds(ground).map((need) => ({
      needId: need.id,
      steps: need.steps,
      answers: cautionsInChain(need.id, chains),
    })),
    unavailable: helpfulSets(shorts, ground),
    singlePoints: singlePoints(ground),
    margins: stepMargins(ground),
    ties: solved.ties.slice(0, MOST_TIES).map((tie) => tieOf(tie, ground)),
    keepingPromises: keepingPromises(ground),
    whyNotFewer: whyNotFewer(ground),
    proof: proofOf(ground),
    lengthCover: lengthCover === 'none' ? null : coverOfLengths(ground, target),
    order,
    pickList: pickLines({
      needs,
      steps,
      chains,
      order,
      packs,
      nextOf: (itemId, from) => nextOf(itemId, from, ground),
    }),
  };

  function proofOf({ solved: { proof } }: Ground): Proof {
    if (proof.kind === 'optimal') return proof;
    return { kind: 'gap', trays: chosen.cost[0], lowerBoundTrays: proof.lowerBoundTrays, gap: proof.gap };
  }
}

function verdictOf({ needs }: Ground, shorts: Short[], unsettled: boolean): KitVerdict {
  if (needs.steps.length === 0 || needs.faults.some((fault) => STOPPING.has(fault.kind)))
    return { kind: 'planStopped' };
  if (shorts.some(stops)) return { kind: 'short' };
  const open = needs.faults.some(({ kind }) => LEFT_OPEN.has(kind));
  return unsettled || open ? { kind: 'notEstablished' } : { kind: 'ready' };
}

const stops = (short: Short) => short.kind === 'piece' || short.importance === 'mustHave';

/** What is not known to fit is never counted as a fit, here as in the verdict. */
function buildableOf(verdict: KitVerdict, opensPacks: boolean): CaseKit['buildable'] {
  if (verdict.kind === 'notEstablished') return 'notEstablished';
  if (verdict.kind === 'short' || verdict.kind === 'planStopped') return 'no';
  return opensPacks ? 'onlyWith' : 'yes';
}

function cautionsInChain(chainId: string, chains: ChosenChain[]) {
  const links = chains.find((chain) => chain.chainId === chainId)?.links ?? [];
  return links.flatMap((link) => cautionsOf(link.answers));
}

/** Where the next one of an item is: not in the kit, but in the store. */
function nextOf(
  itemId: CaseKit['pickList'][number]['itemId'],
  _from: SourceRef,
  ground: Ground,
): SourceRef[] {
  return [...packsLeft(itemId, ground), ...setsLeft(itemId, ground, 2)].slice(0, 2);
}

/** The best kit of sets promised to nobody else, when the chosen one breaks a promise and such a kit meets as much. */
function keepingPromises(ground: Ground): Tie | null {
  const { store, chosen, solved } = ground;
  const promised = (number: number) => (store.sets[number]?.promisedTo.length ?? 0) > 0;
  if (!chosen.sets.some(promised)) return null;
  const free = {
    ...store.problem,
    sets: store.problem.sets.map((set, number) => (promised(number) ? { ...set, holds: new Map() } : set)),
  };
  const reach = reachable(free);
  if (reach.pieces < solved.reach.pieces || reach.chains.length < solved.reach.chains.length) return null;
  const { best } = search(free, reach);
  return best && tieOf(best, ground);
}
