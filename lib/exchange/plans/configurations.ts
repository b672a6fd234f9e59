import type { Item } from '../../catalogue/item';
import { itemId as itemIds, lineId } from '../../identity/ids';
import type { Problem } from '../../identity/result';
import { groupBy } from '../../lists/groupBy';
import { checkVersion, NEVER_SAVED, type VersionContent } from '../../sets/checkVersion';
import type { ConfigurationLine, MustHaveClass } from '../../sets/configuration';
import { exchangeRules as words } from '../../wording/exchange-rules';
import { type Change, type Planned, type RowOutcome, ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';
import { codeKey } from './catalogue';

/** A version of a configuration as it stands, with what the editor would save. */
export interface VersionOnRecord {
  id: string;
  version: number;
  status: 'draft' | 'approved' | 'inForce' | 'superseded';
  inForceFrom: string | null;
  revision: number;
  savedBy: string | null;
  content: VersionContent;
}

export interface ConfigurationsFacts {
  configurations: readonly {
    id: string;
    code: string;
    name: string;
    isWithdrawn: boolean;
    isOnLoan: boolean;
    /** The newest first. */
    versions: readonly VersionOnRecord[];
  }[];
  items: readonly Item[];
}

export type PlannedLine = Omit<ConfigurationLine, 'id'>;

/** What is saved as the draft of one configuration. `id` `null`: it is added first. */
export interface ConfigurationWork {
  code: string;
  name: string;
  layers: VersionContent['layers'];
  lines: PlannedLine[];
}

const BOUNDS: Record<string, readonly [number, number]> = {
  layer: [1, 12],
  row: [1, 60],
  slot: [1, 60],
  expected: [1, 999],
  minimum: [0, 999],
};
const MOST_LINES = 600;

/** A version as rows of cells, in the order of the set. */
export function rowsOfVersion(
  configuration: { code: string; name: string },
  { layers, lines }: VersionContent,
  codeOf: (itemId: string) => string,
): Record<string, string>[] {
  const names = new Map(layers.map(({ layer, name }) => [layer, name]));
  return [...lines].sort(inOrder).map((line) => ({
    configuration: configuration.code,
    name: configuration.name,
    layer: String(line.layer),
    layerName: names.get(line.layer) ?? '',
    row: String(line.row),
    slot: String(line.slot),
    item: codeOf(line.itemId),
    rack: line.rackItemId === null ? '' : codeOf(line.rackItemId),
    expected: String(line.expected),
    minimum: String(line.minimum),
    mustHaveClass: String(line.mustHaveClass),
    substitutes: line.substitutes.map(codeOf).join('; '),
  }));
}

const inOrder = (a: PlannedLine, b: PlannedLine) => a.layer - b.layer || a.row - b.row || a.slot - b.slot;

/** What bringing in configurations would do: each that differs from what is in force becomes a draft. */
export function planConfigurations(
  rows: readonly SettledRow[],
  facts: ConfigurationsFacts,
): Planned<ConfigurationWork> {
  const known = new Map(facts.configurations.map((one) => [codeKey(one.code), one]));
  const codes = new Map(facts.items.map((item) => [codeKey(item.code), item]));
  const byId = new Map(facts.items.map((item) => [item.id, item]));
  const groups = groupBy(
    rows.filter(({ cells }) => (cells.configuration ?? '') !== ''),
    ({ cells }) => codeKey(cells.configuration ?? ''),
  );
  const outcomes: RowOutcome<ConfigurationWork>[] = [];
  const problems: CellProblem[] = [];
  for (const [key, own] of groups) {
    const one = planOne(own, known.get(key) ?? null, { codes, byId });
    problems.push(...one.problems);
    if (one.outcome) outcomes.push(one.outcome);
  }
  return { outcomes, problems };
}

type OnRecord = ConfigurationsFacts['configurations'][number];
interface Items {
  codes: ReadonlyMap<string, Item>;
  byId: ReadonlyMap<Item['id'], Item>;
}

function planOne(
  rows: readonly SettledRow[],
  stands: OnRecord | null,
  items: Items,
): { outcome: RowOutcome<ConfigurationWork> | null; problems: CellProblem[] } {
  const [first] = rows;
  if (!first) return { outcome: null, problems: [] };
  const problems: CellProblem[] = [];
  const add = (row: number, column: string | null, code: string, sentence: string) =>
    problems.push(ruleProblem(row, column, code, sentence));
  const code = (first.cells.configuration ?? '').toUpperCase();
  const names = [...new Set(rows.flatMap(({ cells }) => cells.name || []))];
  if (!stands && !/^[A-Z0-9]{2,8}$/.test(code))
    add(first.row, 'configuration', 'code-form', words.configurationCode);
  if (!stands && names.length === 0) add(first.row, 'name', 'needed', words.configurationName);
  if (names.length > 1) add(first.row, 'name', 'differs', words.namesDiffer(names));
  const lines = rows.map((row) => lineOf(row, items.codes, problems));
  if (problems.length > 0) return { outcome: null, problems };
  const whole = lines.flatMap((line) => line ?? []);
  if (whole.length < rows.length) return { outcome: null, problems };
  const [current] = stands?.versions ?? [];
  const draft = current?.status === 'draft' ? current : null;
  const inForce = stands?.versions.find(({ status }) => status === 'inForce') ?? null;
  const basis = draft ?? inForce ?? current ?? null;
  const layers = layersOf(rows, basis?.content.layers ?? [], problems);
  const content: VersionContent = {
    ...(basis?.content ?? { promises: [], basketItemId: null, containerItemId: null }),
    layers,
    lines: whole.map((line, at) => ({ ...line, id: lineId.parse(`line_${at}`) })),
  };
  for (const { path, code: name, message } of neverSaved(content, items.byId)) {
    const [top, at, field] = path;
    const row = top === 'lines' && typeof at === 'number' ? rows[at]?.row : first.row;
    add(row ?? first.row, COLUMN_OF[String(field)] ?? null, name, message);
  }
  if (whole.length > MOST_LINES)
    add(first.row, 'configuration', 'out-of-bounds', words.outOfBounds(1, MOST_LINES));
  const asItIs = stands?.versions.find(
    ({ status, content: of }) => (status === 'draft' || status === 'inForce') && isSame(of, content),
  );
  if (stands && !asItIs) {
    if (stands.isOnLoan) add(first.row, 'configuration', 'on-loan', words.configurationOnLoan(stands.code));
    if (stands.isWithdrawn)
      add(first.row, 'configuration', 'out-of-use', words.configurationOut(stands.code));
    if (current?.status === 'approved')
      add(first.row, 'configuration', 'waits', words.waits(current.version, current.inForceFrom ?? ''));
  }
  if (problems.length > 0) return { outcome: null, problems };
  const [named] = names;
  return {
    outcome: {
      rows: rows.map(({ row }) => row),
      kind: !stands ? 'new' : asItIs ? 'unchanged' : 'changed',
      name: `${stands?.code ?? code}, ${stands?.name ?? named ?? ''}`,
      id: stands?.id ?? null,
      // of the draft that is replaced; a version in force never changes
      revision: draft && !asItIs ? draft.revision : null,
      changes: stands && !asItIs && basis ? changesOf(basis.content, content, items.byId) : [],
      remarks: [
        ...(asItIs ? [] : [words.becomesDraft]),
        ...(draft && !asItIs ? [words.draftOpen(draft.savedBy)] : []),
        ...(stands && named !== undefined && named !== stands.name ? [words.keepsName(stands.name)] : []),
      ],
      work: { code, name: stands?.name ?? named ?? '', layers, lines: whole },
    },
    problems: [],
  };
}

const COLUMN_OF: Record<string, string> = {
  itemId: 'item',
  rackItemId: 'rack',
  layer: 'layer',
  row: 'row',
  slot: 'slot',
  minimum: 'minimum',
  expected: 'expected',
  substitutes: 'substitutes',
};

const neverSaved = (content: VersionContent, items: Items['byId']): Problem[] =>
  checkVersion(content, items).filter(({ code }) => NEVER_SAVED.has(code));

function lineOf(
  { row, cells }: SettledRow,
  codes: Items['codes'],
  problems: CellProblem[],
): PlannedLine | null {
  const before = problems.length;
  const item = (column: string, code: string) => {
    const found = codes.get(codeKey(code));
    if (!found) problems.push(ruleProblem(row, column, 'no-such-item', words.noSuchItem(code), code));
    return found?.id ?? itemIds.parse('item_unknown');
  };
  for (const [key, [from, to]] of Object.entries(BOUNDS)) {
    const value = Number(cells[key] || Number.NaN);
    if (cells[key] && (value < from || value > to))
      problems.push(ruleProblem(row, key, 'out-of-bounds', words.outOfBounds(from, to), cells[key]));
  }
  // what a row lacks was told as it was read
  if (['item', 'mustHaveClass', ...Object.keys(BOUNDS)].some((key) => (cells[key] ?? '') === '')) return null;
  const line: PlannedLine = {
    itemId: item('item', cells.item ?? ''),
    layer: Number(cells.layer),
    row: Number(cells.row),
    slot: Number(cells.slot),
    rackItemId: cells.rack ? item('rack', cells.rack) : null,
    expected: Number(cells.expected),
    minimum: Number(cells.minimum),
    mustHaveClass: Number(cells.mustHaveClass) as MustHaveClass,
    substitutes: (cells.substitutes ?? '')
      .split(/[;,|]/)
      .map((code) => code.trim())
      .filter(Boolean)
      .map((code) => item('substitutes', code)),
  };
  return problems.length > before ? null : line;
}

/** Layers that have lines, named as the rows say, else as they are named already. */
function layersOf(
  rows: readonly SettledRow[],
  before: VersionContent['layers'],
  problems: CellProblem[],
): VersionContent['layers'] {
  const byLayer = groupBy(rows, ({ cells }) => Number(cells.layer));
  const named = [...byLayer].map(([layer, own]) => {
    const names = [...new Set(own.flatMap(({ cells }) => cells.layerName || []))];
    if (names.length > 1)
      problems.push(ruleProblem(own[0]?.row ?? 0, 'layerName', 'differs', words.layerNames(layer, names)));
    return { layer, name: names[0] ?? before.find((one) => one.layer === layer)?.name ?? `Layer ${layer}` };
  });
  // a layer without lines stays: it may hold what a list of lines can't say
  const kept = before.filter(({ layer }) => !byLayer.has(layer));
  return [...named, ...kept].sort((a, b) => a.layer - b.layer);
}

function isSame(one: VersionContent, other: VersionContent): boolean {
  const texts = ({ lines, layers }: VersionContent) =>
    JSON.stringify([
      [...layers].sort((a, b) => a.layer - b.layer).map(({ layer, name }) => [layer, name]),
      [...lines].sort(inOrder).map(valuesOf),
    ]);
  return texts(one) === texts(other);
}

const valuesOf = (line: PlannedLine) => [
  line.layer,
  line.row,
  line.slot,
  line.itemId,
  line.rackItemId,
  line.expected,
  line.minimum,
  line.mustHaveClass,
  line.substitutes,
];

/** Place by place: what lies there, how many, and how much it matters. */
function changesOf(before: VersionContent, after: VersionContent, items: Items['byId']): Change[] {
  const at = (line: PlannedLine) => `layer ${line.layer}, row ${line.row}, slot ${line.slot}`;
  const code = (id: ConfigurationLine['itemId'] | null) => (id === null ? '' : (items.get(id)?.code ?? id));
  const cells = (line: PlannedLine) => ({
    item: code(line.itemId),
    rack: code(line.rackItemId),
    expected: String(line.expected),
    minimum: String(line.minimum),
    mustHaveClass: String(line.mustHaveClass),
    substitutes: line.substitutes.map(code).join('; '),
  });
  const was = new Map(before.lines.map((line) => [at(line), cells(line)]));
  const is = new Map(after.lines.map((line) => [at(line), cells(line)]));
  const gone = [...was].flatMap(([of, { item }]) =>
    is.has(of) ? [] : [{ column: 'item', from: item, to: '', of }],
  );
  const others = [...is].flatMap(([of, now]) => {
    const then = was.get(of);
    if (!then) return [{ column: 'item', from: '', to: now.item, of }];
    return (Object.keys(now) as (keyof typeof now)[]).flatMap((column) =>
      then[column] === now[column] ? [] : [{ column, from: then[column], to: now[column], of }],
    );
  });
  const names = after.layers.flatMap(({ layer, name }) => {
    const from = before.layers.find((one) => one.layer === layer)?.name ?? '';
    return from === name ? [] : [{ column: 'layerName', from, to: name, of: `layer ${layer}` }];
  });
  return [...gone, ...others, ...names];
}
