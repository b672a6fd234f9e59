import type { Block, Sheet } from '@/lib/documents/sheet';
import { never } from '@/lib/identity/result';
import {
  paintFigure,
  paintHeading,
  paintLegend,
  paintNotice,
  paintParagraph,
  paintSignatures,
  SIGNATURES_LEAST,
} from './blocks';
import { paintFooters, paintRunningHead, paintTitleBlock } from './furniture';
import { mm, type PaperSize } from './paper';
import { openDocument, openPen, type Pen } from './pen';
import { paintRack } from './rack';
import { KEPT_WHOLE, paintTable } from './table';

/**
 * The sheet as a PDF of that paper size. It only draws: every word and figure is in the sheet already.
 *
 * @param at the moment of printing, for the file's own date
 */
export async function paintSheet(sheet: Sheet, paper: PaperSize, at: Date): Promise<Buffer> {
  const doc = openDocument(sheet, paper, at);
  const whole = collect(doc);
  let firstPage = true;
  const pen = openPen(doc, (fresh) => {
    if (firstPage) paintTitleBlock(fresh, sheet);
    else paintRunningHead(fresh, sheet);
    firstPage = false;
  });
  pen.newPage();
  for (const [at, block] of sheet.blocks.entries()) paintBlock(pen, block, sheet.blocks.slice(at + 1));
  paintFooters(pen, sheet);
  pen.root.end();
  doc.end();
  return whole;
}

function paintBlock(pen: Pen, block: Block, next: Block[]): void {
  switch (block.kind) {
    case 'heading':
      paintHeading(pen, block, leastOf(next));
      break;
    case 'paragraph':
      paintParagraph(pen, block, signedBelow(next));
      break;
    case 'legend':
      paintLegend(pen, block);
      break;
    case 'notice':
      paintNotice(pen, block);
      break;
    case 'figure':
      paintFigure(pen, block);
      break;
    case 'signatures':
      paintSignatures(pen, block);
      break;
    case 'table':
      paintTable(pen, block, signedBelow(next));
      break;
    case 'rack':
      paintRack(pen, block);
      break;
    default:
      never(block);
  }
}

/** How much of what follows a heading must stand below it on the same page. */
function leastOf([block, ...rest]: Block[]): number {
  if (block?.kind === 'rack') return mm(38);
  if (block?.kind === 'table' && block.rows.length <= KEPT_WHOLE)
    return mm(9 + block.rows.length * (block.rowMm + 4)) + signedBelow(rest);
  if (block?.kind === 'heading') return mm(9) + leastOf(rest);
  if (block?.kind === 'signatures') return mm(62);
  return mm(26);
}

/** Boxes to sign stand on no page alone: what is right before them, however little of it, stands on the same page. */
const signedBelow = ([block]: Block[]): number => (block?.kind === 'signatures' ? SIGNATURES_LEAST : 0);

function collect(doc: PDFKit.PDFDocument): Promise<Buffer> {
  const chunks: Buffer[] = [];
  return new Promise((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
}
