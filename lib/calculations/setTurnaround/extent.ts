import type { Problem } from '@/lib/identity/result';
import { turnTime } from '@/lib/turnaround/turnTime';
import { setTurnaroundWords } from '@/lib/wording/set-turnaround';
import type { SetTurnaroundInput } from './schema';

const MINUTE_MS = 60_000;

/** What can be looked through in good time: how often some set could serve some part, over all cases. */
const MOST_PAIRS = 20_000;
/** How often some set could go from one case to the next before it is surely back. */
const MOST_EARLY_USES = 60_000;

/** A list that would take too long. The names in it are right. */
export function checkExtent(input: SetTurnaroundInput): Problem[] {
  const copies = new Map<string, number>();
  for (const { configuration } of input.sets) copies.set(configuration, (copies.get(configuration) ?? 0) + 1);
  const pairs = pairsOf(input, copies);
  if (pairs > MOST_PAIRS) {
    const message = setTurnaroundWords.tooManyPairs(pairs, MOST_PAIRS);
    return [{ path: ['cases'], code: 'too-many-pairs', message }];
  }
  if (earlyUsesOf(input, copies) > MOST_EARLY_USES)
    return [
      {
        path: ['wantedMarginMinutes'],
        code: 'too-many-early-uses',
        message: setTurnaroundWords.tooManyEarly,
      },
    ];
  return [];
}

function pairsOf({ cases }: SetTurnaroundInput, copies: ReadonlyMap<string, number>): number {
  const parts = cases.flatMap(({ ways }) => ways.flatMap((way) => way.parts));
  return parts.reduce(
    (sum, { sets, configurations }) =>
      sum + configurations.reduce((all, one) => all + (copies.get(one) ?? 0), sets.length),
    0,
  );
}

/** Counted as if every set of a configuration served every case that names it or one of its sets. */
function earlyUsesOf(input: SetTurnaroundInput, copies: ReadonlyMap<string, number>): number {
  const configurationOf = new Map(input.sets.map(({ set, configuration }) => [set, configuration]));
  const casesOf = new Map<string, { needMs: number; endMs: number }[]>();
  for (const { startAtMs, endAtMs, leadMinutes, ways } of input.cases) {
    const parts = ways.flatMap((way) => way.parts);
    const named = parts.flatMap((part) => [
      ...part.configurations,
      ...part.sets.map((set) => configurationOf.get(set) as string),
    ]);
    for (const configuration of new Set(named)) {
      const list = casesOf.get(configuration) ?? [];
      list.push({ needMs: startAtMs - leadMinutes * MINUTE_MS, endMs: endAtMs });
      casesOf.set(configuration, list);
    }
  }
  return input.configurations.reduce((sum, { configuration, stages }) => {
    const turn = turnTime(
      stages.map(({ p50Minutes, p90Minutes }) => ({ p50: p50Minutes, p90: p90Minutes })),
      input.stagesVary,
    );
    const backMinutes = turn[input.planBy];
    const sureMinutes = turn.p90 + input.wantedMarginMinutes;
    const cases = casesOf.get(configuration) ?? [];
    const needs = cases.map(({ needMs }) => needMs).sort((a, b) => a - b);
    const before = (ms: number) => countBelow(needs, ms);
    const uses = cases.reduce(
      (all, { endMs }) =>
        all + before(endMs + sureMinutes * MINUTE_MS) - before(endMs + backMinutes * MINUTE_MS),
      0,
    );
    return sum + uses * (copies.get(configuration) ?? 0);
  }, 0);
}

function countBelow(sorted: readonly number[], value: number): number {
  let from = 0;
  let to = sorted.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((sorted[middle] as number) < value) from = middle + 1;
    else to = middle;
  }
  return from;
}
