import bwipjs from 'bwip-js/node';
import { DOT, INK } from './paper';
import type { Pen } from './pen';

/** Dots of a 203 dpi printer to one module: half a millimetre, which a copier of a copier leaves whole. */
const DOTS_PER_MODULE = 4;
const MODULE = DOT * DOTS_PER_MODULE;
/** ISO/IEC 16022 asks for one module of quiet zone all round. */
const QUIET_MODULES = 2;

interface Symbol {
  columns: number;
  rows: number;
  /** 1 is dark; row by row from the top. */
  modules: number[];
}

let last: { elementString: string; symbol: Symbol } | null = null;

/** The modules of a GS1 DataMatrix (ISO/IEC 16022, ECC 200, FNC1 first). */
export function dataMatrix(elementString: string): Symbol {
  // every page of a sheet carries the same one
  if (last?.elementString === elementString) return last.symbol;
  const [raw] = bwipjs.raw({ bcid: 'gs1datamatrix', text: elementString }) as unknown as {
    pixs: number[];
    pixx: number;
    pixy: number;
  }[];
  if (!raw) throw new Error('no symbol was made');
  const symbol = { columns: raw.pixx, rows: raw.pixy, modules: Array.from(raw.pixs) };
  last = { elementString, symbol };
  return symbol;
}

/** Width and height of the symbol with its quiet zone, in points. */
export function symbolSize({ columns, rows }: Symbol): { width: number; height: number } {
  return { width: (columns + 2 * QUIET_MODULES) * MODULE, height: (rows + 2 * QUIET_MODULES) * MODULE };
}

/**
 * Draws the symbol near that corner as filled rectangles, every edge on the dot grid of a 203 dpi printer, so that no
 * module comes out a dot wider than its neighbour.
 */
export function paintSymbol(pen: Pen, symbol: Symbol, x: number, y: number): void {
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
