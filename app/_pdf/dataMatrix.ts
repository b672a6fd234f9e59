import bwipjs from 'bwip-js/node';

/** The modules of a DataMatrix (ISO/IEC 16022, ECC 200), without its quiet zone. */
export interface DataMatrix {
  columns: number;
  rows: number;
  /** 1 is dark; row by row from the top. */
  modules: number[];
}

/** A GS1 DataMatrix (FNC1 first) of an element string with brackets. */
export function gs1DataMatrix(elementString: string): DataMatrix {
  return made('gs1datamatrix', elementString);
}

/** A DataMatrix of plain text: a number of our own. */
export function plainDataMatrix(text: string): DataMatrix {
  return made('datamatrix', text);
}

let last: { key: string; symbol: DataMatrix } | null = null;

function made(bcid: 'gs1datamatrix' | 'datamatrix', text: string): DataMatrix {
  const key = `${bcid} ${text}`;
  // every page of a sheet carries the same one
  if (last?.key === key) return last.symbol;
  const [raw] = bwipjs.raw({ bcid, text }) as unknown as { pixs: number[]; pixx: number; pixy: number }[];
  if (!raw) throw new Error('no symbol was made');
  const symbol = { columns: raw.pixx, rows: raw.pixy, modules: Array.from(raw.pixs) };
  last = { key, symbol };
  return symbol;
}
