import { type PackNumber, packNumber } from '../packs/packNumber';

/**
 * Codes of our own on paper. They begin with a letter and, but for numbers and names that people speak, contain a star:
 * no GS1, HIBC or ICCBBA code does both, so that one is never taken for the other.
 */
export const packLabelText = (number: PackNumber, copy: number): string => `${number}*${copy}`;
export const placeText = (placeId: string): string => `L*${placeId.replace(/^place_/, '')}`;
export const stockText = (stockId: string): string => `K*${stockId.replace(/^stock_/, '')}`;

/** What a text may be among our own codes, by its form alone; whether there is such a thing is for the store to say. */
export type OwnCode =
  | { kind: 'pack'; number: PackNumber; copy: number | null }
  | { kind: 'place'; placeId: string }
  | { kind: 'stock'; stockId: string }
  /** A set's code, a load's or sheet's number, a case's reference, an item's code. */
  | { kind: 'name'; name: string };

const MOST_NAME = 60;

/** Reads a text as one of ours. `null`: it has the form of none. */
export function ownCode(text: string): OwnCode | null {
  const bare = withoutMark(text).trim();
  const label = /^(P\d{7,12}-\d)(?:\*([1-9]\d{0,3}))?$/i.exec(bare);
  if (label) {
    const number = packNumber.safeParse(label[1]?.toUpperCase());
    if (number.success)
      return { kind: 'pack', number: number.data, copy: label[2] ? Number(label[2]) : null };
  }
  const starred = /^([LK])\*([0-9a-z-]{1,60})$/i.exec(bare);
  if (starred) {
    const tail = (starred[2] ?? '').toLowerCase();
    return starred[1]?.toUpperCase() === 'L'
      ? { kind: 'place', placeId: `place_${tail}` }
      : { kind: 'stock', stockId: `stock_${tail}` };
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a name has none
  const isName = bare !== '' && bare.length <= MOST_NAME && !/[\u0000-\u001f\u007f]/.test(bare);
  return isName ? { kind: 'name', name: bare } : null;
}

/** Marks of symbols without GS1 (`]d1`, `]C0`, `]Q1`, …) say nothing of the content; ours are printed in such. */
function withoutMark(text: string): string {
  return /^\](?:d1|C0|C2|Q1|A\d|z0)/.test(text) ? text.slice(3) : text;
}
