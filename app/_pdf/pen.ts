import PDFDocument from 'pdfkit';
import type { Sheet } from '@/lib/documents/sheet';
import { CAP_HEIGHT, FONTS, type FontName, LEADING, readFont } from './fonts';
import { INK, MARGIN, mm, PAPER_SIZES, type PaperSize } from './paper';

type Document = PDFKit.PDFDocument;
export type Tag = PDFKit.PDFStructureElement;

/**
 * What every part of a sheet is drawn with: the document, where on the page the next thing goes, and the tag it hangs
 * from. Nothing here knows what a set or a case is.
 */
export interface Pen {
  doc: Document;
  /** The document's tag; everything read aloud hangs from it. */
  root: Tag;
  left: number;
  right: number;
  width: number;
  /** Where the next thing begins, from the top of the page. */
  y: number;
  /** Below this the footer begins. */
  bottom: number;
  /** Begins the next page below its running head. */
  newPage(): void;
}

/** Room kept free below the running text for cautions and page numbers. */
export const FOOTER = mm(25);

/** An empty document of that size: tagged, titled, in English, with its fonts embedded. */
export function openDocument(sheet: Sheet, paper: PaperSize, at: Date): Document {
  const doc = new PDFDocument({
    size: PAPER_SIZES[paper],
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    tagged: true,
    pdfVersion: '1.7',
    // the types do not know it yet
    subset: 'PDF/UA' as 'PDF/A-1',
    lang: 'en-GB',
    displayTitle: true,
    // without a font of its own the document would name one that is not embedded
    font: readFont('regular') as unknown as string,
    info: {
      Title: `${sheet.kindWords} ${sheet.title}, ${sheet.subtitle}`,
      Author: sheet.edition.printedBy,
      Subject: `${sheet.kindWords}, version ${sheet.edition.version}, printed ${sheet.edition.printedAt}`,
      Creator: 'Kitwright',
      Producer: 'Kitwright',
      CreationDate: at,
    },
  });
  // opened once by what it is, a font is known to the document by its own name
  doc.font(readFont('bold')).font(readFont('title'));
  return doc;
}

export function openPen(doc: Document, beginPage: (pen: Pen) => void): Pen {
  const root = doc.struct('Document');
  doc.addStructure(root);
  const pen: Pen = {
    doc,
    root,
    left: MARGIN,
    right: 0,
    width: 0,
    y: 0,
    bottom: 0,
    newPage() {
      doc.addPage();
      pen.right = doc.page.width - MARGIN;
      pen.width = pen.right - pen.left;
      pen.bottom = doc.page.height - FOOTER;
      beginPage(pen);
    },
  };
  return pen;
}

/** Goes on to the next page unless there is room for that height. */
export function needRoom(pen: Pen, height: number): void {
  if (pen.y + height > pen.bottom) pen.newPage();
}

/** Drawn, but not read aloud: rules, boxes, heads that repeat. */
export function artifact(pen: Pen, type: 'Layout' | 'Pagination', draw: () => void): void {
  pen.doc.markContent('Artifact', { type });
  draw();
  pen.doc.endMarkedContent();
}

/** A tag with its content under a parent. */
export function tagged(pen: Pen, parent: Tag, type: string, draw: () => void, options: object = {}): void {
  parent.add(pen.doc.struct(type as never, options, draw as never));
}

export interface Type {
  font: FontName;
  points: number;
}

/** Widths of words, each with the space after it, in shares of the type size: they are the same on every sheet. */
const wordWidths = new Map<string, number>();
const MOST_WORDS = 20_000;

export function widthOf(pen: Pen, words: string, { font, points }: Type): number {
  let share = 0;
  for (const word of words.match(/\S*\s|\S+$/g) ?? []) {
    const key = `${font} ${word}`;
    let width = wordWidths.get(key);
    if (width === undefined) {
      if (wordWidths.size >= MOST_WORDS) wordWidths.clear();
      width = pen.doc.font(FONTS[font]).fontSize(1000).widthOfString(word) / 1000;
      wordWidths.set(key, width);
    }
    share += width;
  }
  return share * points;
}

/** Letters of a word that are ever measured at once; no line of a sheet holds more. */
const LONGEST_WORD = 400;

/** How many letters from the beginning fit, at least one. */
function lettersThatFit(pen: Pen, word: string, type: Type, width: number): number {
  let [fits, tooMany] = [1, Math.min(word.length, LONGEST_WORD)];
  while (tooMany - fits > 1) {
    const middle = Math.floor((fits + tooMany) / 2);
    if (widthOf(pen, word.slice(0, middle), type) <= width) fits = middle;
    else tooMany = middle;
  }
  return fits;
}

/** At most so many lines; what is left out is marked. */
export function atMost(lines: readonly string[], most: number): string[] {
  if (lines.length <= most) return [...lines];
  return [...lines.slice(0, most - 1), `${(lines[most - 1] ?? '').slice(0, -1)}…`];
}

/** Broken at spaces into lines no wider than that; a word that is wider by itself is broken where it must be. */
export function wrap(pen: Pen, words: string, type: Type, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of words.split(/\s+/).filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length < LONGEST_WORD && widthOf(pen, longer, type) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (line.length > 1 && widthOf(pen, line.slice(0, LONGEST_WORD), type) > width) {
      const end = lettersThatFit(pen, line, type, width);
      lines.push(line.slice(0, end));
      line = line.slice(end);
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

export const leadingOf = ({ points }: Type): number => points * LEADING;
/** From the top of a line to its baseline, so that capitals stand in the middle of the line. */
export const riseOf = ({ points }: Type): number => points * (LEADING + CAP_HEIGHT) * 0.5;

/** One line of type; `y` is the top of the line. */
export function write(
  pen: Pen,
  words: string,
  x: number,
  y: number,
  type: Type,
  {
    align = 'left',
    width = 0,
    colour = INK,
  }: { align?: 'left' | 'centre' | 'right'; width?: number; colour?: string } = {},
): void {
  if (words === '') return;
  const own = align === 'left' ? 0 : widthOf(pen, words, type);
  const shift = align === 'left' ? 0 : align === 'right' ? width - own : (width - own) / 2;
  pen.doc
    .font(FONTS[type.font])
    .fontSize(type.points)
    .fillColor(colour)
    .text(words, x + shift, y + riseOf(type), { lineBreak: false, baseline: 'alphabetic' });
}

/** Lines below each other; answers the height they took. */
export function writeLines(
  pen: Pen,
  lines: readonly string[],
  x: number,
  y: number,
  type: Type,
  options: { align?: 'left' | 'centre' | 'right'; width?: number } = {},
): number {
  lines.forEach((line, at) => {
    write(pen, line, x, y + at * leadingOf(type), type, options);
  });
  return lines.length * leadingOf(type);
}

/** A straight black line, written as its operators at once (ISO 32000-1, 8.5): a sheet has hundreds. */
export function rule(pen: Pen, x1: number, y1: number, x2: number, y2: number, points = 0.5): void {
  const [a, b, c, d] = [x1, y1, x2, y2].map((value) => Math.round(value * 1000) / 1000);
  const page = pen.doc as unknown as { addContent(operators: string): void };
  page.addContent(`q 0 G ${points} w [] 0 d ${a} ${b} m ${c} ${d} l S Q`);
}
