import { hasValidCheckDigit } from '../calculations/identifier/checkDigits';
import { failed, ok, type Problem, type Result } from '../identity/result';
import { type CsvRow, SEPARATORS, splitCsv } from '../lists/splitCsv';
import { loanListWords as words } from '../wording/loan-list';

/** One line of a lender's content list. `itemId` is `null` where the catalogue has nothing by its GTIN or code. */
export interface LoanListLine {
  tray: number;
  itemId: string | null;
  code: string | null;
  gtin: string | null;
  name: string;
  quantity: number;
  implant: boolean | null;
  mustHaveClass: number | null;
}

/** What the catalogue knows, for matching. */
export interface KnownItem {
  id: string;
  code: string;
  gtin: string | null;
  name: string;
  implant: boolean;
}

export interface LoanList {
  lines: LoanListLine[];
  trays: number;
  pieces: number;
  /** Lines that are nothing in the catalogue: kept as they are written. */
  unknown: number;
}

const HEADINGS = {
  tray: ['tray', 'box', 'layer'],
  code: ['code', 'item code', 'catalogue number', 'ref', 'reference', 'article'],
  gtin: ['gtin', 'gtin-14', 'di'],
  name: ['name', 'description', 'item', 'content'],
  quantity: ['quantity', 'qty', 'pieces', 'number', 'count'],
  implant: ['implant'],
  mustHaveClass: ['class', 'must-have class'],
} as const;
type Column = keyof typeof HEADINGS;
type Columns = Partial<Record<Column, number>>;

const MOST_LINES = 600;
const MOST_TRAYS = 26;
const MOST_NAME = 120;
const MOST_PIECES = 999;

/**
 * Reads a lender's content list from CSV text with a heading. Every fault of every cell at once, at its line and column;
 * where there is one, nothing is taken. An item is matched by its GTIN, else by its code; a GTIN and a code that are
 * two different items are a fault, never a choice. What the catalogue does not have is kept as text.
 */
export function readLoanList(text: string, catalogue: readonly KnownItem[]): Result<LoanList> {
  const split = splitAtHeading(text);
  if (!split.ok) return split;
  const { rows, columns } = split.value;
  if (rows.length === 0) return failed(problem([], 'no-lines', words.noLines));
  if (rows.length > MOST_LINES) return failed(problem([], 'too-many', words.tooManyLines(MOST_LINES)));
  const known = new Catalogue(catalogue);
  const problems: Problem[] = [];
  const lines = rows.map((row) => readLine(row, columns, known, problems));
  problems.push(...trayGaps(lines));
  if (problems.length > 0) return failed(...problems);
  return ok({
    lines,
    trays: Math.max(...lines.map(({ tray }) => tray)),
    pieces: lines.reduce((sum, { quantity }) => sum + quantity, 0),
    unknown: lines.filter(({ itemId }) => itemId === null).length,
  });
}

const problem = (path: (string | number)[], code: string, message: string): Problem => ({
  path,
  code,
  message,
});

/** The separator is the one under which the heading names a quantity and a name or a code. */
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
    const found = headings(heading.cells);
    const named = found.columns.name !== undefined || found.columns.code !== undefined;
    if (found.columns.quantity === undefined || !named) continue;
    if (found.twice.length > 0)
      return failed(
        ...found.twice.map((one) => problem([heading.line, one], 'heading-twice', words.twice(one))),
      );
    return ok({
      rows: rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== '')),
      columns: found.columns,
    });
  }
  if (broken !== null) return failed(problem([broken], 'quote-open', words.quoteOpen(broken)));
  return failed(problem([], 'no-heading', words.noHeading));
}

function headings(cells: readonly string[]): { columns: Columns; twice: string[] } {
  const columns: Columns = {};
  const twice: string[] = [];
  cells.forEach((cell, at) => {
    const said = cell.trim().toLowerCase();
    const column = (Object.keys(HEADINGS) as Column[]).find((one) =>
      (HEADINGS[one] as readonly string[]).includes(said),
    );
    if (column === undefined) return;
    if (columns[column] !== undefined) twice.push(cell.trim());
    else columns[column] = at;
  });
  return { columns, twice };
}

class Catalogue {
  private readonly byCode: ReadonlyMap<string, KnownItem>;
  private readonly byGtin: ReadonlyMap<string, KnownItem>;
  constructor(items: readonly KnownItem[]) {
    this.byCode = new Map(items.map((item) => [item.code.toUpperCase(), item]));
    this.byGtin = new Map(items.flatMap((item) => (item.gtin === null ? [] : [[item.gtin, item] as const])));
  }
  withCode = (code: string | null) => (code === null ? undefined : this.byCode.get(code.toUpperCase()));
  withGtin = (gtin: string | null) => (gtin === null ? undefined : this.byGtin.get(gtin));
}

function readLine(row: CsvRow, columns: Columns, known: Catalogue, problems: Problem[]): LoanListLine {
  const cell = (column: Column) => {
    const at = columns[column];
    return at === undefined ? '' : (row.cells[at] ?? '').trim();
  };
  const wrong = (column: Column, code: string, message: string) =>
    problems.push(problem([row.line, column], code, words.at(row.line, column, message)));
  const code = cell('code') || null;
  const gtin = readGtin(cell('gtin'), wrong);
  const [byGtin, byCode] = [known.withGtin(gtin), known.withCode(code)];
  if (byGtin && byCode && byGtin.id !== byCode.id)
    wrong('gtin', 'two-items', words.twoItems(byGtin.name, byCode.name));
  const item = byGtin ?? byCode ?? null;
  const name = cell('name') || item?.name || code || '';
  if (name === '') wrong('name', 'no-name', words.noName);
  if (name.length > MOST_NAME) wrong('name', 'too-long', words.nameTooLong(MOST_NAME));
  const said = readYesNo(cell('implant'), wrong);
  if (item !== null && said !== null && said !== item.implant)
    wrong('implant', 'not-as-known', words.implantNotAsKnown(item.name, item.implant));
  return {
    tray: cell('tray') === '' ? 1 : readNumber(cell('tray'), 'tray', MOST_TRAYS, wrong),
    itemId: item?.id ?? null,
    code,
    gtin,
    name: name.slice(0, MOST_NAME),
    quantity: readNumber(cell('quantity'), 'quantity', MOST_PIECES, wrong),
    implant: item?.implant ?? said,
    mustHaveClass:
      cell('mustHaveClass') === '' ? null : readNumber(cell('mustHaveClass'), 'mustHaveClass', 4, wrong),
  };
}

type Wrong = (column: Column, code: string, message: string) => void;

function readNumber(said: string, column: Column, most: number, wrong: Wrong): number {
  const value = /^\d{1,5}$/.test(said) ? Number(said) : Number.NaN;
  if (value >= 1 && value <= most) return value;
  wrong(column, said === '' ? 'not-stated' : 'not-a-number', words.notANumber(said, most));
  return 1;
}

/** A GTIN of 8, 12, 13 or 14 digits, as 14. Its check digit must be right: a wrong one is another article or none. */
function readGtin(said: string, wrong: Wrong): string | null {
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

function readYesNo(said: string, wrong: Wrong): boolean | null {
  if (said === '') return null;
  if (/^(yes|y|1|true|implant)$/i.test(said)) return true;
  if (/^(no|n|0|false)$/i.test(said)) return false;
  wrong('implant', 'not-yes-or-no', words.notYesOrNo(said));
  return null;
}

/** Trays are numbered from 1 without a gap: a gap is a page of the list that is not here. */
function trayGaps(lines: readonly LoanListLine[]): Problem[] {
  const trays = new Set(lines.map(({ tray }) => tray));
  const most = Math.max(...trays);
  return Array.from({ length: most }, (_, at) => at + 1)
    .filter((tray) => !trays.has(tray))
    .map((tray) => problem([], 'tray-without-lines', words.trayWithoutLines(tray)));
}
