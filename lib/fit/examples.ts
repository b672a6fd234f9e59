import type { Item } from '../catalogue/item';
import { type Design, designsOf, questionOf, restrictedPlates, TABLE_AXES, THINGS } from './designs';
import { createFitEngine, type FitEngine } from './engine';
import type { Finding } from './finding';
import type { FitRule } from './rule';

/** What one rule says of the catalogue. */
export interface RuleExamples {
  /** Pairs of catalogue entries by what the rule says of them; the rest it says nothing about. */
  counts: Record<Finding['answer'], number>;
  examples: { answer: Finding['answer']; row: Design; column: Design; finding: Finding }[];
}

/** Asks one rule, by itself, about every pair of the catalogue; keeps up to `most` examples of each answer. */
export function examplesOf(
  engine: FitEngine,
  rule: FitRule,
  catalogue: readonly Item[],
  most = 3,
): RuleExamples {
  const alone = createFitEngine({ rules: [rule], exceptions: [], settings: engine.settings });
  const axes = TABLE_AXES[rule.relation];
  const plates = restrictedPlates(catalogue);
  const rows = designsOf(alone, rule.relation, THINGS[axes.rows](catalogue), plates);
  const columns = designsOf(alone, rule.relation, THINGS[axes.columns](catalogue), plates);
  const found: RuleExamples = { counts: { met: 0, notMet: 0, missing: 0 }, examples: [] };
  const kept = { met: 0, notMet: 0, missing: 0 };
  for (const row of rows) {
    for (const column of columns) {
      const verdict = alone.ask(questionOf(rule.relation, row.things[0], column.things[0]));
      const finding = verdict.findings.find(({ from }) => from.kind === 'rule');
      if (!finding) continue;
      found.counts[finding.answer] += row.things.length * column.things.length;
      if (kept[finding.answer] >= most) continue;
      kept[finding.answer] += 1;
      found.examples.push({ answer: finding.answer, row, column, finding });
    }
  }
  const order = { notMet: 0, missing: 1, met: 2 };
  found.examples.sort((a, b) => order[a.answer] - order[b.answer]);
  return found;
}
