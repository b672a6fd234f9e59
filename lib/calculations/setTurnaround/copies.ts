import { largestOverlap, type Stretch } from '@/lib/turnaround/overlap';
import type { SetTurnaroundOutput } from './output';
import type { Numbered } from './problemOf';
import type { SetTurnaroundInput } from './schema';

/**
 * How many copies the cases need, were each served in its first way: per configuration, or configurations that stand in
 * for each other in a part of it, then by the longest of their turns.
 */
export function copiesOf(
  input: SetTurnaroundInput,
  { problem, cases, sets, configurationOf }: Numbered,
): SetTurnaroundOutput['copies'] {
  const given = new Map(input.cases.map((one) => [one.case, one]));
  const configurationOfSet = new Map(sets.map((set, number) => [set, configurationOf[number] as string]));
  const turnMs = new Map(
    problem.sets.map((set, number) => [configurationOf[number] as string, set.turnMs[problem.rule.planBy]]),
  );
  const pools = new Map<string, { configurations: string[]; stretches: (Stretch & { case: number })[] }>();
  problem.cases.forEach(({ needMs, endMs }, one) => {
    for (const part of given.get(cases[one] as string)?.ways[0]?.parts ?? []) {
      const named = [
        ...part.configurations,
        ...part.sets.flatMap((set) => configurationOfSet.get(set) ?? []),
      ];
      const configurations = [...new Set(named)].sort();
      const key = JSON.stringify(configurations);
      const pool = pools.get(key) ?? { configurations, stretches: [] };
      pools.set(key, pool);
      const longestMs = Math.max(...configurations.map((configuration) => turnMs.get(configuration) ?? 0));
      pool.stretches.push({ case: one, fromMs: needMs, toMs: endMs + longestMs });
    }
  });
  return [...pools.values()].map(({ configurations, stretches }) => {
    const { most, where, which } = largestOverlap(stretches);
    return {
      configurations,
      needed: most,
      present: configurationOf.filter((configuration) => configurations.includes(configuration)).length,
      fromMs: where?.fromMs ?? null,
      toMs: where?.toMs ?? null,
      cases: which.map((at) => cases[stretches[at]?.case as number] as string),
    };
  });
}
