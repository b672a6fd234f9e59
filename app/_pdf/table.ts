import type { Cell, Table } from '@/lib/documents/sheet';
import { isSpoken, PADDING, type PlacedCell, placeCell } from './cell';
import { mm } from './paper';
import {
  artifact,
  leadingOf,
  needRoom,
  type Pen,
  rule,
  type Tag,
  type Type,
  tagged,
  wrap,
  writeLines,
} from './pen';

const HEAD: Type = { font: 'bold', points: 7.2 };

/** Tables of no more rows than this are never split. */
export const KEPT_WHOLE = 4;

/** So many of the last rows stand together with what must stand below the table. */
const LAST_TOGETHER = 2;
const BELOW = mm(3.5);

/**
 * A table: its head repeats on every page, and no row is ever split.
 *
 * @param follows the height of what must stand on the page of its last rows
 */
export function paintTable(pen: Pen, table: Table, follows: number): void {
  const widths = columnWidths(table, pen.width);
  const head = placeHead(pen, table, widths);
  const tag = pen.doc.struct('Table', { title: table.caption });
  pen.root.add(tag);
  const below = follows > 0 ? BELOW + follows : 0;
  const isShort = table.rows.length <= KEPT_WHOLE;
  needRoom(pen, head.height + heightKeptTogether(pen, table, widths) + (isShort ? below : 0));
  let top = pen.y;
  const headRow = pen.doc.struct('TR');
  tag.add(headRow);
  head.paint(headRow);
  for (const [at, row] of table.rows.entries()) {
    const placed = placeRow(pen, table, row, widths);
    const isLast = !isShort && at === table.rows.length - LAST_TOGETHER;
    const needed =
      isLast && below > 0 ? heightOf(pen, table, table.rows.slice(at), widths) + below : placed.height;
    if (pen.y + needed > pen.bottom) {
      paintGrid(pen, widths, top);
      pen.newPage();
      top = pen.y;
      head.paint(null);
    }
    const rowTag = pen.doc.struct('TR');
    tag.add(rowTag);
    paintRow(pen, table, row, placed, { widths, rowTag });
  }
  paintGrid(pen, widths, top);
  tag.end();
  pen.y += BELOW;
}

/** A short table stays whole; of a longer one, its first row stays with its head. */
function heightKeptTogether(pen: Pen, table: Table, widths: number[]): number {
  const rows = table.rows.length <= KEPT_WHOLE ? table.rows : table.rows.slice(0, 1);
  return heightOf(pen, table, rows, widths);
}

const heightOf = (pen: Pen, table: Table, rows: Cell[][], widths: number[]): number =>
  rows.reduce((sum, row) => sum + placeRow(pen, table, row, widths).height, 0);

function columnWidths({ columns }: Table, width: number): number[] {
  const stated = columns.reduce((sum, { widthMm }) => sum + mm(widthMm ?? 0), 0);
  const open = columns.filter(({ widthMm }) => widthMm === null).length;
  const scale = open === 0 ? width / stated : 1;
  return columns.map(({ widthMm }) => (widthMm === null ? (width - stated) / open : mm(widthMm) * scale));
}

interface PlacedRow {
  height: number;
  cells: PlacedCell[];
}

function placeRow(pen: Pen, table: Table, row: Cell[], widths: number[]): PlacedRow {
  const cells = row.map((cell, at) =>
    placeCell(pen, cell, table.columns[at] as Table['columns'][number], widths[at] ?? 0),
  );
  return { cells, height: Math.max(mm(table.rowMm), ...cells.map(({ height }) => height + 2 * PADDING)) };
}

function paintRow(
  pen: Pen,
  { rowHeader }: Table,
  row: Cell[],
  { cells, height }: PlacedRow,
  { widths, rowTag }: { widths: number[]; rowTag: Tag },
): void {
  let x = pen.left;
  for (const [at, placed] of cells.entries()) {
    const cell = row[at] as Cell;
    const options: object = at === rowHeader ? { scope: 'Row' } : {};
    const type = at === rowHeader ? 'TH' : 'TD';
    const draw = () => placed.paint(x, pen.y, height);
    if (cell.kind === 'drawing') {
      const holder = pen.doc.struct(type, options);
      rowTag.add(holder);
      const bbox = [x, pen.y, x + (widths[at] ?? 0), pen.y + height];
      tagged(pen, holder, 'Figure', draw, { alt: `${cell.alt} Printed at 1 to ${cell.denominator}.`, bbox });
    } else if (isSpoken(cell)) {
      tagged(
        pen,
        rowTag,
        type,
        draw,
        cell.kind === 'mark'
          ? { ...options, alt: `class ${cell.mark.character}, ${cell.mark.words}` }
          : options,
      );
    } else {
      rowTag.add(pen.doc.struct(type, options, []));
      artifact(pen, 'Layout', draw);
    }
    x += widths[at] ?? 0;
  }
  pen.y += height;
  artifact(pen, 'Layout', () => rule(pen, pen.left, pen.y, pen.right, pen.y, 0.5));
}

function placeHead(pen: Pen, table: Table, widths: number[]) {
  const words = table.columns.map(({ head }, at) => wrap(pen, head, HEAD, (widths[at] ?? 0) - 2 * PADDING));
  const height = Math.max(...words.map((lines) => lines.length)) * leadingOf(HEAD) + PADDING * 1.6;
  /** Tagged in its row the first time; on further pages it only repeats. */
  const paint = (rowTag: Tag | null) => {
    artifact(pen, 'Layout', () => rule(pen, pen.left, pen.y, pen.right, pen.y, 1));
    let x = pen.left;
    for (const [at, lines] of words.entries()) {
      const { align } = table.columns[at] as Table['columns'][number];
      const width = widths[at] ?? 0;
      const top = pen.y + height - PADDING * 0.8 - lines.length * leadingOf(HEAD);
      const draw = () =>
        writeLines(pen, lines, x + PADDING, top, HEAD, { align, width: width - 2 * PADDING });
      if (rowTag) tagged(pen, rowTag, 'TH', draw, { scope: 'Column' });
      else artifact(pen, 'Pagination', draw);
      x += width;
    }
    pen.y += height;
    artifact(pen, 'Layout', () => rule(pen, pen.left, pen.y, pen.right, pen.y, 1));
  };
  return { height, paint };
}

/** The upright hairlines of what has been drawn on this page. */
function paintGrid(pen: Pen, widths: number[], top: number): void {
  artifact(pen, 'Layout', () => {
    let x = pen.left;
    for (const width of [0, ...widths]) {
      x += width;
      rule(pen, x, top, x, pen.y, 0.35);
    }
  });
}
