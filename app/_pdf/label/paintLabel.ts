import PDFDocument from 'pdfkit';
import { DOTS_PER_MM, type Label } from '@/lib/documents/label';
import type { DataMatrix } from '../dataMatrix';
import { FONTS, readFont } from '../fonts';
import { INK, mm, PAPER } from '../paper';
import { FONT_OF } from './outlines';

/** One dot of the label's printer, in points. */
const DOT = mm(1 / DOTS_PER_MM);

/**
 * The label as a page of exactly its size, for a printer's own driver. Edges stand on the dots the label was laid out in:
 * printed at full size, no module comes out a dot wider than its neighbour.
 */
export async function paintLabel(
  label: Label,
  symbol: DataMatrix,
  about: { title: string; author: string; at: Date },
): Promise<Buffer> {
  const doc = new PDFDocument({
    size: [label.width * DOT, label.height * DOT],
    margin: 0,
    tagged: true,
    pdfVersion: '1.7',
    // the types do not know it yet
    subset: 'PDF/UA' as 'PDF/A-1',
    lang: 'en-GB',
    displayTitle: true,
    font: readFont('regular') as unknown as string,
    info: {
      Title: about.title,
      Author: about.author,
      Creator: 'Kitwright',
      Producer: 'Kitwright',
      CreationDate: about.at,
    },
  });
  const chunks: Buffer[] = [];
  const whole = new Promise<Buffer>((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
  // opened once by what it is, a font is known to the document by its own name
  doc.font(readFont('bold'));
  const root = doc.struct('Document');
  doc.addStructure(root);
  doc.markContent('Artifact', { type: 'Layout' });
  for (const { x, y, width, height } of label.boxes)
    doc.rect(x * DOT, y * DOT, width * DOT, height * DOT).fill(INK);
  doc.endMarkedContent();
  const paragraph = doc.struct('P', {}, () => {
    for (const { text, x, y, em, weight, colour } of label.texts)
      doc
        .font(FONTS[FONT_OF[weight]])
        .fontSize(em * DOT)
        .fillColor(colour === 'black' ? INK : PAPER)
        .text(text, x * DOT, y * DOT, { lineBreak: false, baseline: 'alphabetic' });
  });
  root.add(paragraph);
  const side = (symbol.columns + 2 * label.symbol.quietModules) * label.symbol.moduleDots * DOT;
  const { x, y } = label.symbol;
  const bbox = [x * DOT, y * DOT, x * DOT + side, y * DOT + side];
  root.add(
    doc.struct('Figure', { alt: `DataMatrix: ${about.title}`, bbox } as object, () => {
      paintModules(doc, label, symbol);
    }),
  );
  root.end();
  doc.end();
  return whole;
}

function paintModules(doc: PDFKit.PDFDocument, { symbol: place }: Label, symbol: DataMatrix): void {
  const module = place.moduleDots * DOT;
  const left = place.x * DOT + place.quietModules * module;
  const top = place.y * DOT + place.quietModules * module;
  for (let row = 0; row < symbol.rows; row += 1) {
    for (let column = 0; column < symbol.columns; ) {
      let end = column;
      while (end < symbol.columns && symbol.modules[row * symbol.columns + end] === 1) end += 1;
      if (end > column) doc.rect(left + column * module, top + row * module, (end - column) * module, module);
      column = Math.max(end, column + 1);
    }
  }
  doc.fill(INK);
}
