import { isClosed, waysToClose } from '@/lib/kits/cover/closure';
import { complete } from '@/lib/kits/cover/packs';
import { matchPieces } from '@/lib/kits/cover/pieces';
import {
  type AtHand,
  addPacks,
  addSet,
  type CoverChain,
  type CoverProblem,
  type CoverSet,
  NOTHING,
  nothingAtHand,
} from '@/lib/kits/cover/problem';
import { reachable } from '@/lib/kits/cover/search';
import { chainSpare, pieceSpare, unmetPieces } from '@/lib/kits/cover/spare';
import { coverLinesWords } from '@/lib/wording/kit-calculations';
import type { Answer, MissingValue } from '../calculation';
import { NOTHING_NEEDED } from '../fewestTrays/schema';
import type { BuildableInput, BuildableOutput } from './schema';

const MOST_WAYS = 6;

/**
 * Whether the contents of a set, with the pouches named, build a construct: for each step a closed chain of instruments,
 * and for the pieces that stay a matching. What blocks is named, with the steps it blocks. Never another implant.
 *
 * A chain that only an answer not established would close makes the whole not established, with what is missing.
 */
export function buildable(input: BuildableInput): Answer<BuildableOutput> {
  const world = worldOf(input, false);
  const { problem, chainNames, pieceSteps, names } = world;
  const reach = reachable(problem);
  const all = everything(problem);
  const inSet = nothingAtHand(problem);
  addSet(inSet, problem.sets[0] as CoverSet);
  const perhaps = worldOf(input, true);
  const open = reach.shortChains.filter((chain) =>
    isClosed(perhaps.problem.chains[chain] as CoverChain, everything(perhaps.problem)),
  );
  const stepsOf = (chain: number) =>
    input.steps.filter((step) => step.chains.includes(chainNames[chain] ?? '')).map(({ step }) => step);

  const blocked: BuildableOutput['blocked'] = [];
  for (const chain of reach.shortChains) {
    if (open.includes(chain)) continue;
    const steps = stepsOf(chain);
    if (steps.length === 0) continue;
    const cover = problem.chains[chain] as CoverChain;
    const unlimited = new Int32Array(problem.itemCount).fill(9);
    const wouldDo = waysToClose(cover, all, unlimited, 2_000)
      .sort((a, b) => a.size - b.size)
      .slice(0, MOST_WAYS)
      .map((way) => [...way.keys()].map((item) => names[item] ?? ''));
    const reasons = reasonsOf(input, chainNames[chain] ?? '', all, world);
    const name = chainNames[chain] ?? '';
    blocked.push({
      kind: 'chain',
      name,
      steps,
      wouldDo,
      reasons,
      sentence: coverLinesWords.chainBlocked(name, steps, wouldDo),
    });
  }
  for (const at of unmetPieces(problem, all)) {
    const name = pieceSteps[at] ?? '';
    const wouldDo = (problem.pieces[at]?.accepts ?? []).map(({ item }) => [names[item] ?? '']);
    blocked.push({
      kind: 'piece',
      name,
      steps: [name],
      wouldDo,
      reasons: [],
      sentence: coverLinesWords.pieceBlocked(name, wouldDo),
    });
  }
  const kit = complete(problem, reach.chains, [0]);
  const onlyWith = kit.packs.flatMap((pieces, pack) => {
    const item = problem.packs[pack]?.item;
    return pieces > 0 && item !== undefined ? [{ item: names[item] ?? '', pieces }] : [];
  });
  const stopped = new Set(blocked.flatMap(({ steps }) => steps));
  const unsettled = new Set(open.flatMap(stepsOf));
  const answer: BuildableOutput = {
    buildable: stopped.size > 0 ? 'no' : onlyWith.length > 0 ? 'onlyWith' : 'yes',
    steps: input.steps.length,
    stepsPossible: input.steps.filter(({ step }) => !stopped.has(step) && !unsettled.has(step)).length,
    onlyWith,
    blocked,
    singlePoints: singlePointsOf(world, reach.chains, all, stepsOf),
    margins: input.steps.map(({ step, chains }) => {
      const spares = chains.map((chain) =>
        chainSpare(problem.chains[chainNames.indexOf(chain)] as CoverChain, all),
      );
      const piece = pieceSteps.indexOf(step);
      if (piece !== -1) spares.push(stopped.has(step) ? -1 : pieceSpare(problem, piece, all));
      return { step, spare: stopped.has(step) ? -1 : Math.min(3, ...spares) };
    }),
  };
  const working = coverLinesWords.buildableWorking(answer);
  if (open.length === 0 || stopped.size > 0) return { outcome: 'answered', answer, working };
  return {
    outcome: 'notEstablished',
    missing: missingOf(
      input,
      open.map((chain) => chainNames[chain] ?? ''),
    ),
    known: null,
    working,
  };
}

interface World {
  problem: CoverProblem;
  names: string[];
  chainNames: string[];
  /** By piece: its step. */
  pieceSteps: string[];
  numbers: Map<string, number>;
}

function worldOf(input: BuildableInput, withUnknown: boolean): World {
  const numbers = new Map<string, number>();
  const names: string[] = [];
  const number = (item: string): number => {
    if (item === NOTHING_NEEDED) return NOTHING;
    const known = numbers.get(item);
    if (known !== undefined) return known;
    numbers.set(item, names.length);
    return names.push(item) - 1;
  };
  const chains = input.chains.map(
    ({ slots, links }): CoverChain => ({
      slots: slots.map(({ items }) => ({ candidates: items.map(number), pieces: 1 })),
      links: links.map(({ slots: [first, second], pairs }) => ({
        first,
        second,
        pairs: pairs
          .filter(({ outcome }) => outcome === 'fits' || (withUnknown && outcome === 'notEstablished'))
          .map((pair): [number, number] => [
            slots[first]?.items.indexOf(pair.first) ?? -1,
            slots[second]?.items.indexOf(pair.second) ?? -1,
          ])
          .filter(([a, b]) => a !== -1 && b !== -1),
      })),
    }),
  );
  const withPiece = input.steps.filter(({ piece }) => piece !== null);
  const pieces = withPiece.map(({ piece }) => ({
    accepts: (piece ?? []).map((item) => ({ item: number(item), longerMm: 0 })),
  }));
  const holds = new Map<number, number>();
  for (const { item, pieces: sound } of input.contents)
    holds.set(number(item), (holds.get(number(item)) ?? 0) + sound);
  const packs = input.pouches
    .filter(({ pieces: sound }) => sound > 0)
    .map(({ item, pieces: quantity }) => ({
      item: number(item),
      quantity,
      cost: { useByDays: 0, metres: 0 },
    }));
  const sets: CoverSet[] = [{ holds, cost: { promises: 0, useByDays: 0, massGrams: 0, metres: 0 } }];
  return {
    problem: { itemCount: names.length, sets, packs, chains, pieces },
    names,
    chainNames: input.chains.map(({ chain }) => chain),
    pieceSteps: withPiece.map(({ step }) => step),
    numbers,
  };
}

function everything(problem: CoverProblem): AtHand {
  const all = nothingAtHand(problem);
  addPacks(all, problem);
  for (const set of problem.sets) addSet(all, set);
  return all;
}

/** Why pairs that are both at hand do not go together. */
function reasonsOf({ chains }: BuildableInput, name: string, all: AtHand, { numbers }: World): string[] {
  const here = (item: string) => (all[numbers.get(item) ?? -1] ?? 0) > 0;
  const links = chains.find(({ chain }) => chain === name)?.links ?? [];
  return links.flatMap(({ pairs }) =>
    pairs
      .filter((pair) => pair.outcome !== 'fits' && here(pair.first) && here(pair.second))
      .map((pair) => pair.reason ?? coverLinesWords.pairRefused(pair.first, pair.second)),
  );
}

function missingOf({ chains }: BuildableInput, open: string[]): MissingValue[] {
  return chains.flatMap(({ chain, links }, at) => {
    if (!open.includes(chain)) return [];
    return links.flatMap(({ pairs }, linkAt) =>
      pairs.flatMap((pair, pairAt): MissingValue[] => {
        if (pair.outcome !== 'notEstablished') return [];
        const what = pair.reason ?? coverLinesWords.pairOpen(pair.first, pair.second);
        return [{ path: ['chains', at, 'links', linkAt, 'pairs', pairAt, 'outcome'], what }];
      }),
    );
  });
}

function singlePointsOf(
  world: World,
  chains: number[],
  all: AtHand,
  stepsOf: (chain: number) => string[],
): BuildableOutput['singlePoints'] {
  const { problem, names, pieceSteps } = world;
  const matched = matchPieces(problem, all).matched;
  return names.flatMap((name, item) => {
    if ((all[item] ?? 0) === 0) return [];
    const less = all.slice();
    less[item] = (less[item] ?? 0) - 1;
    const steps = new Set(
      chains.filter((chain) => !isClosed(problem.chains[chain] as CoverChain, less)).flatMap(stepsOf),
    );
    if (matchPieces(problem, less).matched < matched) {
      problem.pieces.forEach(({ accepts }, piece) => {
        if (accepts.some((one) => one.item === item)) steps.add(pieceSteps[piece] ?? '');
      });
    }
    return steps.size > 0 ? [{ item: name, steps: [...steps] }] : [];
  });
}
