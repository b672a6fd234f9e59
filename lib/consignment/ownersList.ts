import { hasValidCheckDigit } from '../calculations/identifier/checkDigits';
import { failed, ok, type Problem, type Result } from '../identity/result';
import { type CsvRow, SEPARATORS, splitCsv } from '../lists/splitCsv';
import { ownersListWords as words } from '../wording/owners-list';

/** What an owner says lies here of one lot. */
export interface ListedLot {
  itemId: string;
  /** `null`: the list states none. */
  lot: string | null;
  pieces: number;
}

/** What the catalogue knows, for matching. */
export interface KnownItem {
  id: string;
  code: string;
  gtin: string | null;
  name: string;
}

const HEADINGS = {
  code: ['code', 'item code', 'catalogue number', 'ref', 'reference', 'article'],
  gtin: ['gtin', 'gtin-14', 'di'],
  lot: ['lot', 'lot number', 'lot no', 'lot no.'],
  pieces: ['quantity', 'qty', 'pieces', 'count', 'stock'],
} as const;
type Column = keyof typeof HEADINGS;
type Columns = Partial<Record<Column, number>>;

const MOST_LINES = 2_000;
const MOST_PIECES = 99_999;
const MOST_LOT = 60;

/**
 * Reads an owner's list from text with a heading, whatever separates its cells. Every fault of every cell at once, at its
 * line and column; where there is one, nothing is taken. The same lot on several lines is added up: lists go by place.
 */
export function readOwnersList(text: string, catalogue: readonly KnownItem[]): Result<ListedLot[]> {
  const split = splitAtHeading(text);
  if (!split.ok) return split;
  const { rows, columns } = split.value;
  if (rows.length === 0) return failed(problem([], 'no-lines', words.noLines));
  if (rows.length > MOST_LINES) return failed(problem([], 'too-many', words.tooManyLines(MOST_LINES)));
  const byCode = new Map(catalogue.map((item) => [item.code.toUpperCase(), item]));
  const byGtin = new Map(
    catalogue.flatMap((item) => (item.gtin === null ? [] : [[item.gtin, item] as const])),
  );
  const problems: Problem[] = [];
  const lots = new Map<string, ListedLot>();
  for (const row of rows) {
    const line = readLine(row, columns, { byCode, byGtin }, problems);
    if (!line) continue;
    const key = JSON.stringify([line.itemId, line.lot]);
    const known = lots.get(key);
    if (known) known.pieces += line.pieces;
    else lots.set(key, line);
  }
  return problems.length > 0 ? failed(...problems) : ok([...lots.values()]);
}

const problem = (path: (string | number)[], code: string, message: string): Problem => ({
  path,
  code,
  message,
});

/** The separator is the one under which the heading names a quantity, a lot, and a code or a GTIN. */
function splitAtHeading(text: string): Result<{ rows: CsvRow[]; columns: Columns }> {
  let broken: number | null = null;
  for (const separator of SEPARATORS) {
    const split = splitCsv(text, separator);
    if (!split.ok) {
      broken ??= split.line;
      continue;
    }
    const [heading, ...rows] = split.rows;
    if (!heading) return failed(problem([], 'empty', words.empty));
    const { columns, twice } = headings(heading.cells);
    const named = columns.code !== undefined || columns.gtin !== undefined;
    if (columns.pieces === undefined || columns.lot === undefined || !named) continue;
    if (twice.length > 0)
      return failed(...twice.map((one) => problem([heading.line, one], 'heading-twice', words.twice(one))));
    return ok({ rows: rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== '')), columns });
  }
  if (broken !== null) return failed(problem([broken], 'quote-open', words.quoteOpen(broken)));
  return failed(problem([], 'no-heading', words.noHeading));
}

function headings(cells: readonly string[]): { columns: Columns; twice: string[] } {
  const columns: Columns = {};
  const twice: string[] = [];
  for (const [at, cell] of cells.entries()) {
    const said = cell.trim().toLowerCase();
    const column = (Object.keys(HEADINGS) as Column[]).find((one) =>
      (HEADINGS[one] as readonly string[]).includes(said),
    );
    if (column === undefined) continue;
    if (columns[column] !== undefined) twice.push(cell.trim());
    else columns[column] = at;
  }
  return { columns, twice };
}

interface Catalogue {
  byCode: ReadonlyMap<string, KnownItem>;
  byGtin: ReadonlyMap<string, KnownItem>;
}

function readLine(
  row: CsvRow,
  columns: Columns,
  { byCode, byGtin }: Catalogue,
  problems: Problem[],
): ListedLot | null {
  const cell = (column: Column) => {
    const at = columns[column];
    return at === undefined ? '' : (row.cells[at] ?? '').trim();
  };
  const before = problems.length;
  const wrong = (column: Column, code: string, message: string) =>
    problems.push(problem([row.line, column], code, words.at(row.line, column, message)));
  const [code, gtin] = [cell('code'), gtinOf(cell('gtin'), wrong)];
  const [ofCode, ofGtin] = [byCode.get(code.toUpperCase()), gtin === null ? undefined : byGtin.get(gtin)];
  const item = ofGtin ?? ofCode;
  if (ofCode && ofGtin && ofCode.id !== ofGtin.id)
    wrong('gtin', 'two-items', words.twoItems(ofGtin.name, ofCode.name));
  else if (code !== '' && !ofCode && ofGtin === undefined)
    wrong('code', 'unknown', words.notInCatalogue(code));
  else if (!item && code === '' && problems.length === before)
    wrong('gtin', 'unknown', gtin === null ? words.noItem : words.notInCatalogue(gtin));
  const lot = cell('lot');
  if (lot.length > MOST_LOT) wrong('lot', 'too-long', words.lotTooLong(MOST_LOT));
  const pieces = piecesOf(cell('pieces'), wrong);
  if (!item || pieces === null || problems.length > before) return null;
  return { itemId: item.id, lot: lot === '' ? null : lot, pieces };
}

type Wrong = (column: Column, code: string, message: string) => void;

/** Whole pieces, as `12`, `12.0` or `12,00`. Three digits behind a sign can be thousands or decimals: nobody guesses which. */
function piecesOf(said: string, wrong: Wrong): number | null {
  const bare = said.replaceAll(/[\s\u00A0\u202F']/g, '');
  if (bare === '') {
    wrong('pieces', 'not-stated', words.notStated);
    return null;
  }
  if (/^\d{1,3}[.,]\d{3}$/.test(bare)) {
    wrong('pieces', 'two-readings', words.twoReadings(said));
    return null;
  }
  const whole = /^(\d{1,6})(?:[.,]0{1,2})?$/.exec(bare)?.[1];
  const pieces = whole === undefined ? Number.NaN : Number(whole);
  if (pieces >= 0 && pieces <= MOST_PIECES) return pieces;
  wrong('pieces', 'not-whole', words.notWhole(said, MOST_PIECES));
  return null;
}

/** A GTIN of 8, 12, 13 or 14 digits, as 14. Its check digit must be right: a wrong one is another article or none. */
function gtinOf(said: string, wrong: Wrong): string | null {
  if (said === '') return null;
  const digits = said.replaceAll(/[ -]/g, '');
  if (!/^(\d{8}|\d{12,14})$/.test(digits)) {
    wrong('gtin', 'not-a-gtin', words.notAGtin(said));
    return null;
  }
  if (hasValidCheckDigit(digits)) return digits.padStart(14, '0');
  wrong('gtin', 'check-digit', words.wrongCheckDigit(said));
  return null;
}
