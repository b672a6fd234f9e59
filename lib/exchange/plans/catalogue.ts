import type { ItemDraft } from '../../catalogue/form/draft';
import { readDraft } from '../../catalogue/form/read';
import type { Item, ItemKind } from '../../catalogue/item';
import { groupBy } from '../../lists/groupBy';
import { comparableName } from '../../people/name';
import { KIND_WORDS } from '../../wording/catalogue';
import { exchangeRules as words } from '../../wording/exchange-rules';
import { catalogueList } from '../lists/catalogue';
import { type Planned, type RowOutcome, ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';
import { cellsOfItem, columnOfPath, columnsOfKind, draftWithCells, flagsOf } from './itemCells';

/** The catalogue as it stands. */
export interface CatalogueFacts {
  items: readonly { item: Item; revision: number }[];
  makers: readonly { id: string; name: string }[];
}

export interface CatalogueChoices {
  /** Makers that are new, by the name the file gives them, as a person said. */
  newMakers: readonly string[];
  empty: 'keep' | 'clear';
}

/** What an operation is to do with one item. `maker`: one that is here, or the name of a new one. */
export interface ItemWork {
  kind: ItemKind;
  draft: ItemDraft;
  maker: { id: string } | { name: string };
}

/** Stands for a maker that is not there yet while its item is checked. */
const NEW_MAKER = 'maker_new';
const NEW_ITEM = 'item_new';

/** Codes are compared without regard to capitals, as the catalogue does. */
export const codeKey = (code: string): string => code.trim().toLowerCase();

/** What bringing in a catalogue would do, row by row, with every problem of every row. */
export function planCatalogue(
  rows: readonly SettledRow[],
  facts: CatalogueFacts,
  choices: CatalogueChoices,
): Planned<ItemWork> {
  const known = new Map(facts.items.map((one) => [codeKey(one.item.code), one]));
  const makers = new Map(facts.makers.map((maker) => [comparableName(maker.name), maker]));
  const makerNames = new Map(facts.makers.map(({ id, name }) => [id, name]));
  const byGtin = new Map(facts.items.map(({ item }) => [item.gtin, item]));
  const outcomes: RowOutcome<ItemWork>[] = [];
  const problems: CellProblem[] = [...twice(rows, 'code', codeKey), ...twice(rows, 'gtin', (gtin) => gtin)];
  for (const row of rows) {
    const code = row.cells.code ?? '';
    if (code === '') continue;
    const stands = known.get(codeKey(code)) ?? null;
    const one = planItem(row, stands, { choices, makers, makerNames });
    problems.push(...one.problems, ...gtinTaken(row, byGtin, stands?.item ?? null));
    if (one.outcome) outcomes.push(one.outcome);
  }
  return { outcomes, problems };
}

export function twice(
  rows: readonly SettledRow[],
  column: string,
  keyOf: (text: string) => string,
): CellProblem[] {
  const groups = groupBy(
    rows.filter(({ cells }) => (cells[column] ?? '') !== ''),
    ({ cells }) => keyOf(cells[column] ?? ''),
  );
  return [...groups.values()].flatMap((same) =>
    same.length < 2
      ? []
      : same.map(({ row, cells }) =>
          ruleProblem(
            row,
            column,
            'twice',
            words.twice(
              cells[column] ?? '',
              same.map((one) => one.row),
            ),
            cells[column],
          ),
        ),
  );
}

function gtinTaken(
  { row, cells }: SettledRow,
  byGtin: ReadonlyMap<string | null, Item>,
  own: Item | null,
): CellProblem[] {
  const gtin = cells.gtin ?? '';
  const other = gtin === '' ? undefined : byGtin.get(gtin);
  return other && other.id !== own?.id
    ? [ruleProblem(row, 'gtin', 'gtin-taken', words.gtinTaken(other.code), gtin)]
    : [];
}

interface Around {
  choices: CatalogueChoices;
  makers: ReadonlyMap<string, { id: string; name: string }>;
  makerNames: ReadonlyMap<string, string>;
}

function planItem(
  { row, cells }: SettledRow,
  stands: CatalogueFacts['items'][number] | null,
  { choices, makers, makerNames }: Around,
): { outcome: RowOutcome<ItemWork> | null; problems: CellProblem[] } {
  const before = stands?.item ?? null;
  const stated = cells.kind ?? '';
  if (before && stated !== '' && stated !== before.kind)
    return {
      outcome: null,
      problems: [ruleProblem(row, 'kind', 'other-kind', words.otherKind(KIND_WORDS[before.kind]))],
    };
  const kind = (before?.kind ?? stated) as ItemKind | '';
  if (kind === '') return { outcome: null, problems: [ruleProblem(row, 'kind', 'needed', words.noKind)] };
  const problems = foreignCells(row, cells, kind);
  const own = columnsOfKind(kind);
  const put = Object.fromEntries(
    Object.entries(cells).filter(
      ([key, text]) => own.has(key) && (text !== '' || before === null || choices.empty === 'clear'),
    ),
  );
  if (before === null)
    for (const flag of flagsOf(kind))
      if ((cells[flag] ?? '') === '') problems.push(ruleProblem(row, flag, 'needed', words.flagNeeded));
  // an item is known by its code and keeps it as it is written
  if (before) put.code = before.code;
  const maker = makerOf(put.makerId ?? '', before, { choices, makers });
  if (maker === null)
    problems.push(
      ruleProblem(
        row,
        'makerId',
        'maker-unknown',
        words.makerUnknown(put.makerId ?? ''),
        put.makerId ?? null,
      ),
    );
  const makerId = maker === null ? NEW_MAKER : 'id' in maker ? maker.id : NEW_MAKER;
  const { draft, takesFault } = draftWithCells(kind, before, {
    ...put,
    makerId,
  });
  if (takesFault) problems.push(ruleProblem(row, 'takes', 'not-shanks', words.takesForm, put.takes ?? null));
  const read = readDraft(kind, draft, { id: before?.id ?? NEW_ITEM, status: before?.status ?? 'current' });
  if (!read.ok) {
    const seen = new Set(problems.map(({ column }) => column));
    for (const { path, code, message } of read.problems) {
      const column = columnOfPath(path);
      if (column !== null && seen.has(column)) continue;
      problems.push(
        ruleProblem(row, column, code, message, column === null ? null : (cells[column] ?? null) || null),
      );
    }
  }
  if (!read.ok || maker === null || problems.length > 0) return { outcome: null, problems };
  const makerName = 'name' in maker ? maker.name : (makerNames.get(maker.id) ?? '');
  const after = cellsOfItem(read.value, makerName);
  const now = before ? cellsOfItem(before, makerNames.get(before.makerId) ?? '') : {};
  const changes = before
    ? catalogueList.columns.flatMap(({ key }) => {
        const [from = '', to = ''] = [now[key], after[key]];
        return from === to ? [] : [{ column: key, from, to }];
      })
    : [];
  return {
    outcome: {
      rows: [row],
      kind: before === null ? 'new' : changes.length > 0 ? 'changed' : 'unchanged',
      name: `${read.value.code}, ${read.value.name}`,
      id: before?.id ?? null,
      revision: stands?.revision ?? null,
      changes,
      remarks: 'name' in maker ? [`The maker ${maker.name} is added.`] : [],
      work: { kind, draft, maker },
    },
    problems,
  };
}

function foreignCells(row: number, cells: Readonly<Record<string, string>>, kind: ItemKind): CellProblem[] {
  const own = columnsOfKind(kind);
  return catalogueList.columns.flatMap(({ key, heading }) =>
    !own.has(key) && (cells[key] ?? '') !== ''
      ? [ruleProblem(row, key, 'not-of-kind', words.notOfKind(KIND_WORDS[kind], heading), cells[key])]
      : [],
  );
}

/** The maker a row names; `null` where none is called so and nobody said it is new. */
function makerOf(
  name: string,
  before: Item | null,
  { choices, makers }: Pick<Around, 'choices' | 'makers'>,
): ItemWork['maker'] | null {
  if (name === '') return before ? { id: before.makerId } : { id: '' };
  const known = makers.get(comparableName(name));
  if (known) return { id: known.id };
  const isNew = choices.newMakers.some((one) => comparableName(one) === comparableName(name));
  return isNew ? { name: name.trim() } : null;
}
