import type { Sheet } from '@/lib/documents/sheet';
import { TYPE_POINTS } from './fonts';
import { mm } from './paper';
import {
  artifact,
  atMost,
  FOOTER,
  leadingOf,
  type Pen,
  rule,
  type Tag,
  type Type,
  tagged,
  widthOf,
  wrap,
  write,
  writeLines,
} from './pen';
import { paintSymbol, recordSymbol, symbolSize } from './recordCode';

/** What stands around the text of every page: ruler, title block or running head, cautions, page numbers. */

const RULER_TOP = mm(6.5);
const HEAD_TOP = mm(12);

const KIND: Type = { font: 'bold', points: 11 };
const HOSPITAL: Type = { font: 'regular', points: 11 };
const TITLE: Type = { font: 'title', points: 27 };
const RUNNING: Type = { font: 'title', points: TYPE_POINTS.key };
const SUBTITLE: Type = { font: 'regular', points: 12 };
const RUNNING_SUBTITLE: Type = { font: 'regular', points: 9.6 };
const CODE: Type = { font: 'regular', points: 6.6 };
const TERM: Type = { font: 'regular', points: 7.2 };
const VALUE: Type = { font: 'bold', points: 9.6 };
const CAUTION: Type = { font: 'regular', points: 6.8 };
const EDITION: Type = { font: 'bold', points: 7.6 };
const PAGE: Type = { font: 'bold', points: 10 };

/**
 * A ruler of 100 mm at the head of each page. It is the sheet's ornament and its proof: laid beside a real ruler it shows
 * whether the drawings came out of the printer at the scales they state.
 */
function ruler(pen: Pen): void {
  const y = RULER_TOP + mm(2.6);
  rule(pen, pen.left, y, pen.left + mm(100), y, 0.6);
  for (let at = 0; at <= 100; at += 1) {
    const tick = at % 10 === 0 ? mm(2.6) : at % 5 === 0 ? mm(1.8) : mm(1.1);
    pen.doc.moveTo(pen.left + mm(at), y).lineTo(pen.left + mm(at), y - tick);
  }
  pen.doc.lineWidth(0.4).stroke();
  write(pen, '100 mm when printed at full size', pen.left + mm(102), y - mm(3), CODE);
}

/** What the sheet is, and whose. */
function kindLine(pen: Pen, { kindWords, edition }: Sheet, y: number): void {
  write(pen, kindWords, pen.left, y, KIND);
  write(pen, edition.hospital, pen.left + widthOf(pen, kindWords, KIND) + mm(3), y, HOSPITAL);
}

/** The title block of the first page. */
export function paintTitleBlock(pen: Pen, sheet: Sheet): void {
  artifact(pen, 'Pagination', () => ruler(pen));
  const codeWidth = paintRecord(pen, sheet, pen.root);
  let y = HEAD_TOP;
  const room = pen.width - codeWidth - mm(4);
  tagged(pen, pen.root, 'P', () => kindLine(pen, sheet, y));
  y += leadingOf(KIND);
  tagged(pen, pen.root, 'H1', () => {
    y += writeLines(pen, atMost(wrap(pen, sheet.title, TITLE, room), 2), pen.left, y, TITLE);
  });
  tagged(pen, pen.root, 'P', () => {
    y += writeLines(pen, atMost(wrap(pen, sheet.subtitle, SUBTITLE, room), 4), pen.left, y, SUBTITLE);
  });
  y = Math.max(y + mm(2), HEAD_TOP + mm(24));
  artifact(pen, 'Layout', () => rule(pen, pen.left, y, pen.right, y, 1.4));
  y = paintFacts(pen, sheet, y + mm(1.2));
  artifact(pen, 'Layout', () => rule(pen, pen.left, y, pen.right, y, 0.5));
  pen.y = y + mm(3);
}

const FACT_COLUMNS = 4;

function paintFacts(pen: Pen, sheet: Sheet, top: number): number {
  const column = pen.width / FACT_COLUMNS;
  let y = top;
  for (let first = 0; first < sheet.facts.length; first += FACT_COLUMNS) {
    let height = 0;
    for (const [at, fact] of sheet.facts.slice(first, first + FACT_COLUMNS).entries()) {
      const x = pen.left + at * column;
      tagged(pen, pen.root, 'P', () => {
        write(pen, `${fact.term}`, x, y, TERM);
        const lines = atMost(wrap(pen, fact.value, VALUE, column - mm(3)), 4);
        const own = writeLines(pen, lines, x, y + leadingOf(TERM), VALUE);
        height = Math.max(height, leadingOf(TERM) + own);
      });
    }
    y += height + mm(1.2);
  }
  return y;
}

/** The head of every further page: the same names, smaller, and the record code again, for pages get separated. */
export function paintRunningHead(pen: Pen, sheet: Sheet): void {
  artifact(pen, 'Pagination', () => {
    ruler(pen);
    paintRecord(pen, sheet, null);
    const y = HEAD_TOP + mm(3);
    kindLine(pen, sheet, y);
    const below = y + leadingOf(KIND);
    write(pen, sheet.title, pen.left, below, RUNNING);
    const x = pen.left + widthOf(pen, sheet.title, RUNNING) + mm(3);
    const room = pen.right - x - mm(42);
    const lines = atMost(wrap(pen, sheet.subtitle, RUNNING_SUBTITLE, room), 2);
    const middle = below + leadingOf(RUNNING) / 2 + mm(0.3);
    writeLines(pen, lines, x, middle - (lines.length * leadingOf(RUNNING_SUBTITLE)) / 2, RUNNING_SUBTITLE);
    rule(pen, pen.left, HEAD_TOP + mm(19.5), pen.right, HEAD_TOP + mm(19.5), 1.4);
  });
  pen.y = HEAD_TOP + mm(22.5);
}

/** The symbol at the right with its value beside it; answers the width both take. Tagged once, where `parent` is given. */
function paintRecord(pen: Pen, sheet: Sheet, parent: Tag | null): number {
  const { record } = sheet;
  const symbol = recordSymbol(record);
  const { width } = symbolSize(symbol);
  const x = pen.right - width;
  const lines = wrap(pen, record.text.replaceAll('/', '/ '), CODE, mm(24)).map((line) =>
    line.replaceAll('/ ', '/'),
  );
  const draw = () => paintSymbol(pen, symbol, x, HEAD_TOP);
  const words = () => {
    write(
      pen,
      record.number ?? 'Record code',
      x - mm(26),
      HEAD_TOP + mm(1),
      { ...CODE, font: 'bold' },
      { align: 'right', width: mm(25) },
    );
    writeLines(pen, lines, x - mm(26), HEAD_TOP + mm(1) + leadingOf(CODE), CODE, {
      align: 'right',
      width: mm(25),
    });
  };
  if (parent === null) {
    draw();
    words();
  } else {
    tagged(pen, parent, 'Figure', draw, {
      alt:
        record.number === null
          ? `GS1 DataMatrix, record code ${record.elementString}`
          : `DataMatrix, sheet number ${record.number}`,
      bbox: [x, HEAD_TOP, pen.right, HEAD_TOP + width],
    });
    tagged(pen, parent, 'P', words);
  }
  return width + mm(27);
}

/** Cautions, edition and page numbers, when the number of pages is known. Read aloud once, on the first page. */
export function paintFooters(pen: Pen, sheet: Sheet): void {
  const { count } = pen.doc.bufferedPageRange();
  for (let at = 0; at < count; at += 1) {
    pen.doc.switchToPage(at);
    const top = pen.doc.page.height - FOOTER + mm(2.5);
    const cautions = wrap(pen, sheet.cautions.join(' '), CAUTION, pen.width);
    const words = () => writeLines(pen, cautions, pen.left, top + mm(1), CAUTION);
    artifact(pen, 'Pagination', () => rule(pen, pen.left, top, pen.right, top, 0.5));
    if (at === 0) tagged(pen, pen.root, 'P', words);
    else artifact(pen, 'Pagination', words);
    artifact(pen, 'Pagination', () => {
      const y = top + mm(1.6) + cautions.length * leadingOf(CAUTION);
      const { version, printedAt, printedBy, ledgerHead } = sheet.edition;
      const edition = `${sheet.title} · version ${version} · printed ${printedAt} by ${printedBy}`;
      write(pen, edition, pen.left, y + mm(0.6), EDITION);
      if (ledgerHead !== undefined)
        write(pen, `Ledger head: entry ${ledgerHead}`, pen.left, y + mm(0.6) + leadingOf(EDITION), CODE);
      write(pen, `Page ${at + 1} of ${count}`, pen.right - mm(40), y, PAGE, {
        align: 'right',
        width: mm(40),
      });
    });
  }
}
