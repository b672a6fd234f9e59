import type { Item } from '../catalogue/item';
import { type Design, designsOf, questionOf, restrictedPlates, TABLE_AXES, THINGS } from './designs';
import type { FitEngine } from './engine';
import type { Outcome, Verdict } from './question';
import type { Relation } from './rule';

/** One group of pairs whose answer a change would change. */
export interface ChangedPair {
  row: Design;
  column: Design;
  before: Verdict;
  after: Verdict;
  /** Pairs of catalogue entries it stands for. */
  pairs: number;
}

/** What a change of rules would do to the whole catalogue. */
export interface Effect {
  relation: Relation;
  /** Pairs of catalogue entries asked about. */
  asked: number;
  changed: ChangedPair[];
  /** Pairs by what they were and what they would be; only where the two differ. */
  counts: { before: Outcome; after: Outcome; pairs: number }[];
  /** Pairs whose outcome stays, and about which a caution or note would be added, removed or changed. */
  otherwiseSaid: number;
}

/**
 * Tries a change against every pair of the catalogue that its relation relates: the answers of the engine in
 * force beside those of the engine as it would be.
 */
export function effectOf(
  before: FitEngine,
  after: FitEngine,
  catalogue: readonly Item[],
  relation: Relation,
): Effect {
  const steps = effectSteps(before, after, catalogue, relation);
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

/** The same, a row of pairs at a time, for whoever shares the thread with others. */
export function* effectSteps(
  before: FitEngine,
  after: FitEngine,
  catalogue: readonly Item[],
  relation: Relation,
): Generator<{ done: number; of: number }, Effect> {
  const axes = TABLE_AXES[relation];
  const plates = restrictedPlates(catalogue);
  // Told apart by the rules of both engines, so that a pair is one group only if it is so before and after.
  const both: FitEngine = {
    ...before,
    rules: [...before.rules, ...after.rules],
    exceptions: [...before.exceptions, ...after.exceptions],
  };
  const rows = designsOf(both, relation, THINGS[axes.rows](catalogue), plates);
  const columns = designsOf(both, relation, THINGS[axes.columns](catalogue), plates);
  const changed: ChangedPair[] = [];
  let asked = 0;
  let otherwiseSaid = 0;
  for (const [at, row] of rows.entries()) {
    yield { done: at, of: rows.length };
    for (const column of columns) {
      const question = questionOf(relation, row.things[0], column.things[0]);
      const pairs = row.things.length * column.things.length;
      asked += pairs;
      const was = before.ask(question);
      const would = after.ask(question);
      if (was.outcome !== would.outcome) changed.push({ row, column, before: was, after: would, pairs });
      else if (said(was) !== said(would)) otherwiseSaid += pairs;
    }
  }
  return { relation, asked, changed, counts: countsOf(changed), otherwiseSaid };
}

const said = (verdict: Verdict) =>
  JSON.stringify(
    verdict.findings
      .filter(({ answer }) => answer !== 'met')
      .map(({ answer, severity, sentence }) => [answer, severity, sentence]),
  );

function countsOf(changed: readonly ChangedPair[]): Effect['counts'] {
  const counts = new Map<string, Effect['counts'][number]>();
  for (const { before, after, pairs } of changed) {
    const key = `${before.outcome}→${after.outcome}`;
    const known = counts.get(key);
    if (known) known.pairs += pairs;
    else counts.set(key, { before: before.outcome, after: after.outcome, pairs });
  }
  return [...counts.values()].sort((a, b) => b.pairs - a.pairs);
}
