import { exchangeRules as words } from '../../wording/exchange-rules';
import { type Planned, type RowOutcome, ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';
import { codeKey, twice } from './catalogue';

/** Sets, configurations and places as they stand. */
export interface SetsFacts {
  sets: readonly {
    id: string;
    code: string;
    configuration: string;
    owner: 'ours' | 'loan';
    placeName: string | null;
    revision: number;
  }[];
  configurations: readonly {
    id: string;
    code: string;
    isWithdrawn: boolean;
    isOnLoan: boolean;
    isInForce: boolean;
  }[];
  /** Places in use. */
  places: readonly { id: string; name: string }[];
}

export interface SetWork {
  code: string;
  configurationId: string;
  placeId: string | null;
}

/** What bringing in sets would do: new ones are added, those that are here stay as they are. */
export function planSets(rows: readonly SettledRow[], facts: SetsFacts): Planned<SetWork> {
  const sets = new Map(facts.sets.map((set) => [codeKey(set.code), set]));
  const configurations = new Map(facts.configurations.map((one) => [codeKey(one.code), one]));
  const places = new Map(facts.places.map((place) => [codeKey(place.name), place]));
  const outcomes: RowOutcome<SetWork>[] = [];
  const problems: CellProblem[] = twice(rows, 'code', codeKey);
  for (const { row, cells } of rows) {
    const [code = '', configuration = '', placeName = ''] = [cells.code, cells.configuration, cells.place];
    if (code === '' || configuration === '') continue;
    const found: CellProblem[] = [];
    const add = (column: string, name: string, sentence: string, value: string) =>
      found.push(ruleProblem(row, column, name, sentence, value));
    const stands = sets.get(codeKey(code));
    const kind = configurations.get(codeKey(configuration));
    const place = placeName === '' ? null : places.get(codeKey(placeName));
    if (!kind)
      add('configuration', 'no-such-configuration', words.noSuchConfiguration(configuration), configuration);
    if (place === undefined) add('place', 'no-such-place', words.noSuchPlace(placeName), placeName);
    if (stands) {
      if (stands.owner === 'loan') add('code', 'on-loan', words.onLoan, code);
      else if (kind && codeKey(stands.configuration) !== codeKey(kind.code))
        add(
          'configuration',
          'other-configuration',
          words.otherConfiguration(stands.configuration),
          configuration,
        );
    } else if (kind) {
      if (kind.isOnLoan) add('configuration', 'on-loan', words.configurationOnLoan(kind.code), configuration);
      else if (kind.isWithdrawn)
        add('configuration', 'out-of-use', words.configurationOut(kind.code), configuration);
      else if (!kind.isInForce)
        add('configuration', 'not-in-force', words.notInForce(kind.code), configuration);
      if (!isSetCode(code, kind.code)) add('code', 'set-code', words.setCode(kind.code), code);
    }
    problems.push(...found);
    if (found.length > 0 || !kind) continue;
    const isElsewhere = stands && place && stands.placeName !== place.name;
    outcomes.push({
      rows: [row],
      kind: stands ? 'unchanged' : 'new',
      name: stands?.code ?? code.toUpperCase(),
      id: stands?.id ?? null,
      revision: stands?.revision ?? null,
      changes: [],
      remarks: isElsewhere ? [words.isElsewhere(stands.placeName ?? 'no place')] : [],
      work: { code: code.toUpperCase(), configurationId: kind.id, placeId: place?.id ?? null },
    });
  }
  return { outcomes, problems };
}

/** A set's code begins with that of its configuration; then a hyphen and one to four letters or digits. */
export const isSetCode = (code: string, configuration: string): boolean => {
  const [begins, rest] = [`${configuration}-`.toUpperCase(), code.toUpperCase()];
  return rest.startsWith(begins) && /^[A-Z0-9]{1,4}$/.test(rest.slice(begins.length));
};
