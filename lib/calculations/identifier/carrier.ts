/** What a symbology identifier says of the mark a code was read from. */
export interface Carrier {
  name: string;
  /**
   * `elements`: a GS1 element string is in it; `key`: the digits of a GTIN alone, so many of them; `any`: it says
   * nothing of what is in it.
   */
  holds: 'elements' | 'any' | { keyDigits: readonly number[] };
}

// ISO/IEC 15424 symbology identifiers, as the GS1 General Specifications use them
const CARRIERS: Readonly<Record<string, Carrier>> = {
  C1: { name: 'GS1-128', holds: 'elements' },
  C0: { name: 'Code 128', holds: 'any' },
  C2: { name: 'Code 128', holds: 'any' },
  C4: { name: 'Code 128, ISBT 128', holds: 'any' },
  d2: { name: 'GS1 DataMatrix', holds: 'elements' },
  d1: { name: 'DataMatrix', holds: 'any' },
  Q3: { name: 'GS1 QR Code', holds: 'elements' },
  Q1: { name: 'QR Code', holds: 'any' },
  e0: { name: 'GS1 DataBar', holds: 'elements' },
  e1: { name: 'GS1 Composite', holds: 'elements' },
  e2: { name: 'GS1 Composite', holds: 'elements' },
  J1: { name: 'GS1 DotCode', holds: 'elements' },
  E0: { name: 'EAN-13', holds: { keyDigits: [13] } },
  E4: { name: 'EAN-8', holds: { keyDigits: [8] } },
  I1: { name: 'ITF-14', holds: { keyDigits: [14] } },
  I0: { name: 'Interleaved 2 of 5', holds: 'any' },
  A0: { name: 'Code 39', holds: 'any' },
  z0: { name: 'Aztec Code', holds: 'any' },
};

/** The symbology identifier a text begins with, and how long it is. One that is not known says nothing of the content. */
export function carrierOf(text: string): { carrier: Carrier | null; length: number } {
  const read = /^\]([A-Za-z][0-9A-Za-z])/.exec(text);
  if (!read) return { carrier: null, length: 0 };
  const key = read[1] ?? '';
  const known = Object.hasOwn(CARRIERS, key) ? CARRIERS[key] : undefined;
  return { carrier: known ?? { name: `]${key}`, holds: 'any' }, length: 3 };
}
