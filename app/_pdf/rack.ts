import type { RackGrid, RackRow } from '@/lib/documents/sheet';
import { TYPE_POINTS } from './fonts';
import { paintMark } from './marks';
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
  write,
  writeLines,
} from './pen';

const LABEL = mm(37);
const NARROWEST = mm(9.5);
const WIDEST = mm(15);
/** At least; a long name of a row makes it higher. */
const EXPECTED_HEIGHT = mm(9.4);
const WRITE_HEIGHT = mm(7.2);
const HEAD_HEIGHT = mm(6);

const HEAD: Type = { font: 'bold', points: 9.5 };
const NAME: Type = { font: 'bold', points: 8.4 };
const SMALL: Type = { font: 'regular', points: TYPE_POINTS.small };
const EXPECTED: Type = { font: 'bold', points: TYPE_POINTS.key };

/** A screw rack as a grid. Too many lengths for one line go on below, in parts that each repeat the names of the rows. */
export function paintRack(pen: Pen, grid: RackGrid): void {
  const most = Math.max(1, Math.floor((pen.width - LABEL) / NARROWEST));
  const parts = Math.ceil(grid.columns.length / most);
  const perPart = Math.ceil(grid.columns.length / Math.max(parts, 1));
  for (let first = 0; first < grid.columns.length; first += perPart) {
    paintPart(pen, grid, { first, end: Math.min(first + perPart, grid.columns.length) });
  }
}

function paintPart(pen: Pen, grid: RackGrid, { first, end }: { first: number; end: number }): void {
  const column = Math.min(WIDEST, (pen.width - LABEL) / (end - first));
  const right = pen.left + LABEL + column * (end - first);
  const rows = grid.rows.filter((row) => row.cells.slice(first, end).some((cell) => cell !== null));
  const heightOf = (row: RackRow) => nameOf(pen, row).height + grid.writeIn.length * WRITE_HEIGHT;
  const tag = pen.doc.struct('Table', { title: grid.caption });
  pen.root.add(tag);
  needRoom(pen, HEAD_HEIGHT + (rows[0] ? heightOf(rows[0]) : 0));
  const frame = { first, end, column, right };
  paintHead(pen, grid, frame, tag);
  for (const row of rows) {
    if (pen.y + heightOf(row) > pen.bottom) {
      pen.newPage();
      paintHead(pen, grid, frame, null);
    }
    paintScrews(pen, row, frame, tag);
    for (const name of grid.writeIn) paintWriteIn(pen, name, row, frame, tag);
    artifact(pen, 'Layout', () => rule(pen, pen.left, pen.y, right, pen.y, 1));
  }
  tag.end();
  pen.y += mm(3);
}

interface Frame {
  first: number;
  end: number;
  column: number;
  right: number;
}

function paintHead(pen: Pen, grid: RackGrid, { first, end, column, right }: Frame, tag: Tag | null): void {
  const rowTag = tag ? pen.doc.struct('TR') : null;
  if (tag && rowTag) tag.add(rowTag);
  const put = (draw: () => void) => {
    if (rowTag) tagged(pen, rowTag, 'TH', draw, { scope: 'Column' });
    else artifact(pen, 'Pagination', draw);
  };
  artifact(pen, 'Layout', () => rule(pen, pen.left, pen.y, right, pen.y, 1));
  put(() =>
    write(pen, grid.columnsAre, pen.left, pen.y + mm(0.8), SMALL, { align: 'right', width: LABEL - mm(1.5) }),
  );
  for (let at = first; at < end; at += 1) {
    const x = pen.left + LABEL + (at - first) * column;
    put(() =>
      write(pen, grid.columns[at] ?? '', x, pen.y + mm(0.9), HEAD, { align: 'centre', width: column }),
    );
  }
  pen.y += HEAD_HEIGHT;
  artifact(pen, 'Layout', () => rule(pen, pen.left, pen.y, right, pen.y, 1));
}

/** The name of a row beside its mark, never cut short. */
function nameOf(pen: Pen, row: RackRow) {
  const markRoom = row.mark ? mm(6) : 0;
  const lines = wrap(pen, row.label, NAME, LABEL - markRoom - mm(1));
  return { lines, markRoom, height: Math.max(EXPECTED_HEIGHT, lines.length * leadingOf(NAME) + mm(1)) };
}

function paintScrews(pen: Pen, row: RackRow, { first, end, column, right }: Frame, tag: Tag): void {
  const rowTag = pen.doc.struct('TR');
  tag.add(rowTag);
  const { lines, height, markRoom } = nameOf(pen, row);
  tagged(
    pen,
    rowTag,
    'TH',
    () => {
      const top = pen.y + (height - lines.length * leadingOf(NAME)) / 2;
      writeLines(pen, lines, pen.left + markRoom, top, NAME);
    },
    { scope: 'Row' },
  );
  if (row.mark) {
    const mark = row.mark;
    artifact(pen, 'Layout', () => paintMark(pen, mark, pen.left + mm(2.6), pen.y + height / 2, mm(4.2)));
  }
  for (let at = first; at < end; at += 1) {
    const cell = row.cells[at];
    const x = pen.left + LABEL + (at - first) * column;
    if (!cell) {
      rowTag.add(pen.doc.struct('TD', {}, []));
      continue;
    }
    tagged(pen, rowTag, 'TD', () => {
      const above = [cell.label, cell.mark ? `class ${cell.mark.character}` : null].filter(
        (one) => one !== null,
      );
      write(pen, String(cell.expected), x, pen.y + mm(0.2), EXPECTED, { align: 'centre', width: column });
      const below = [...above, `min ${cell.minimum}`].join(', ');
      write(pen, below, x, pen.y + mm(6.2), { ...SMALL, points: 6.4 }, { align: 'centre', width: column });
    });
  }
  pen.y += height;
  artifact(pen, 'Layout', () => rule(pen, pen.left, pen.y, right, pen.y, 0.5));
}

function paintWriteIn(pen: Pen, name: string, row: RackRow, { first, end, column }: Frame, tag: Tag): void {
  const rowTag = pen.doc.struct('TR');
  tag.add(rowTag);
  const [top, bottom] = [pen.y, pen.y + WRITE_HEIGHT];
  tagged(
    pen,
    rowTag,
    'TH',
    () =>
      write(
        pen,
        name,
        pen.left,
        top + mm(1.6),
        { font: 'regular', points: 8.4 },
        { align: 'right', width: LABEL - mm(1.5) },
      ),
    { scope: 'Row' },
  );
  for (let at = first; at < end; at += 1) rowTag.add(pen.doc.struct('TD', {}, []));
  artifact(pen, 'Layout', () => {
    for (let at = first; at < end; at += 1) {
      const x = pen.left + LABEL + (at - first) * column;
      if (row.cells[at]) pen.doc.rect(x, top, column, WRITE_HEIGHT);
      else pen.doc.moveTo(x, bottom).lineTo(x + column, top);
    }
    pen.doc.undash().lineWidth(0.45).stroke('#000000');
  });
  pen.y = bottom;
}
