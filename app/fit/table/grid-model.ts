import { pairAddress } from '@/lib/changes/fitEffect';
import type { Outcome } from '@/lib/fit/question';
import type { FitTable } from '@/lib/fit/table';
import { designWords } from '@/lib/wording/fit-things';

export type CellWord = Outcome | 'fitsWithCaution';

/** A fit table as the browser gets it: sentences are told once, cells point at them. */
export interface Grid {
  rows: { key: string; label: string; note: string }[];
  columns: { key: string; label: string; note: string }[];
  reasons: {
    answer: 'notMet' | 'missing' | 'exception';
    severity: 'stops' | 'caution' | 'note';
    sentence: string;
  }[];
  cells: { word: CellWord; pairs: number; why: number[]; href: string }[][];
}

/** What a table shows: for each cell its word, and every reason other than a rule that is simply met. */
export function gridOf({ relation, rows, columns, verdicts }: FitTable): Grid {
  const reasons: Grid['reasons'] = [];
  const told = new Map<string, number>();
  const tell = (reason: Grid['reasons'][number]): number => {
    const key = `${reason.answer} ${reason.severity} ${reason.sentence}`;
    const known = told.get(key);
    if (known !== undefined) return known;
    told.set(key, reasons.length);
    return reasons.push(reason) - 1;
  };
  const cells = rows.map((row, r) =>
    columns.map((column, c) => {
      const verdict = verdicts[r]?.[c];
      const findings = verdict?.findings ?? [];
      const caution = findings.some(({ severity, answer }) => severity === 'caution' && answer !== 'met');
      const outcome: Outcome = verdict?.outcome ?? 'notEstablished';
      const why = findings.flatMap(({ answer, from, severity, sentence }) =>
        from.kind === 'exception'
          ? [tell({ answer: 'exception', severity, sentence })]
          : answer === 'met'
            ? []
            : [tell({ answer, severity, sentence })],
      );
      return {
        word: outcome === 'fits' && caution ? ('fitsWithCaution' as const) : outcome,
        pairs: row.things.length * column.things.length,
        why,
        href: pairAddress(relation, row.things[0], column.things[0]),
      };
    }),
  );
  const head = (design: FitTable['rows'][number]) => ({ key: design.key, ...designWords(relation, design) });
  return { rows: rows.map(head), columns: columns.map(head), reasons, cells };
}
