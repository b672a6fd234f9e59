import 'server-only';
import type { CellValue } from '@/app/_ui/data-table-columns';
import { type ServedRows, servedPage } from '@/app/_ui/served-rows';
import type { Database } from '@/db/client';
import { keptSetStandings } from '@/db/queries/keptStandings';
import { type SetLine, setLines } from './set-lines';
import { SET_VALUES, SETS_A_PAGE } from './set-values';

/** One page of the whole-hospital view, with the kinds of set there are. */
export interface ServedSets extends ServedRows<SetLine> {
  /** By name. */
  kinds: { code: string; name: string }[];
}

/** The sets that an address asks for: found by words, step, configuration and standing, sorted, and one page of them. */
export async function servedSets(
  db: Database,
  params: Pick<URLSearchParams, 'get'>,
  now: string,
): Promise<ServedSets> {
  const lines = setLines(await keptSetStandings(db, now), now);
  const chosen = (name: string) => params.get(name) ?? '';
  const words = chosen('q').toLowerCase().split(/\s+/).filter(Boolean);
  const [step, configuration, standing] = [chosen('step'), chosen('configuration'), chosen('standing')];
  const shown = lines.filter(
    (line) =>
      (step === '' || line.step === step) &&
      (configuration === '' || line.configurationCode === configuration) &&
      (standing === '' || line.standing.word === standing) &&
      (words.length === 0 || holdsAll(searched(line), words)),
  );
  const kinds = new Map(lines.map((line) => [line.configurationCode, line.configuration]));
  const values: Record<string, (line: SetLine) => CellValue> = SET_VALUES;
  return {
    rows: servedPage(shown, values, {
      sort: params.get('sets-sort') ?? 'stops',
      page: params.get('sets-page'),
      pageSize: SETS_A_PAGE,
    }),
    found: shown.length,
    total: lines.length,
    kinds: [...kinds].map(([code, name]) => ({ code, name })).sort((a, b) => a.name.localeCompare(b.name)),
  };
}

const holdsAll = (text: string, words: readonly string[]) => words.every((word) => text.includes(word));

function searched(line: SetLine): string {
  return [
    line.code,
    line.configuration,
    line.place ?? '',
    line.stepWords,
    ...line.stops.map(({ about, words }) => `${about} ${words}`),
    ...line.remarks,
    ...line.promisedTo.map(({ reference }) => reference),
  ]
    .join(' ')
    .toLowerCase();
}
