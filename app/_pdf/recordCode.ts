import type { RecordCode } from '@/lib/documents/sheet';
import { type DataMatrix, gs1DataMatrix, plainDataMatrix } from './dataMatrix';
import { DOT, INK } from './paper';
import type { Pen } from './pen';

/** Dots of a 203 dpi printer to one module: half a millimetre, which a copier of a copier leaves whole. */
const DOTS_PER_MODULE = 4;
const MODULE = DOT * DOTS_PER_MODULE;
/** ISO/IEC 16022 asks for one module of quiet zone all round. */
const QUIET_MODULES = 2;

/** The symbol of a sheet: its number where it has one, which is known when it is scanned; else its record code. */
export function recordSymbol({ number, elementString }: RecordCode): DataMatrix {
  return number === null ? gs1DataMatrix(elementString) : plainDataMatrix(number);
}

/** Width and height of the symbol with its quiet zone, in points. */
export function symbolSize({ columns, rows }: DataMatrix): { width: number; height: number } {
  return { width: (columns + 2 * QUIET_MODULES) * MODULE, height: (rows + 2 * QUIET_MODULES) * MODULE };
}

/**
 * Draws the symbol near that corner as filled rectangles, every edge on the dot grid of a 203 dpi printer, so that no
 * module comes out a dot wider than its neighbour.
 */
export function paintSymbol(pen: Pen, symbol: DataMatrix, x: number, y: number): void {
  const left = (Math.round(x / DOT) + QUIET_MODULES * DOTS_PER_MODULE) * DOT;
  const top = (Math.round(y / DOT) + QUIET_MODULES * DOTS_PER_MODULE) * DOT;
  for (let row = 0; row < symbol.rows; row += 1) {
    for (let column = 0; column < symbol.columns; ) {
      let end = column;
      while (end < symbol.columns && symbol.modules[row * symbol.columns + end] === 1) end += 1;
      if (end > column)
        pen.doc.rect(left + column * MODULE, top + row * MODULE, (end - column) * MODULE, MODULE);
      column = Math.max(end, column + 1);
    }
  }
  pen.doc.fill(INK);
}
