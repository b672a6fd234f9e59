import type { Item } from '../catalogue/item';

/** Why two items are easily taken for each other. */
export type Likeness = 'otherSide' | 'nextLength' | 'nextDiameter' | 'codeReadsAlike';

export interface LookAlike {
  item: Item;
  because: Likeness;
}

/** Screws of one family two millimetres apart, and wires or bits half a millimetre apart. Common practice, no source. */
const NEXT_LENGTH_UM = 2_000;
const NEXT_DIAMETER_UM = 500;

/** Items that a piece of this one is easily taken for, each with the first reason. Putting one in needs two people. */
export function lookAlikesOf(item: Item, others: Iterable<Item>): LookAlike[] {
  const found: LookAlike[] = [];
  for (const other of others) {
    if (other.id === item.id || other.kind !== item.kind) continue;
    const because = likeness(item, other);
    if (because) found.push({ item: other, because });
  }
  return found;
}

/** The first reason for which two items of one kind are look-alikes, or `null`. */
export function likeness(a: Item, b: Item): Likeness | null {
  if (isOtherSide(a, b)) return 'otherSide';
  if (isNextLength(a, b)) return 'nextLength';
  if (isNextDiameter(a, b)) return 'nextDiameter';
  return readsAlike(a.code) === readsAlike(b.code) ? 'codeReadsAlike' : null;
}

function isOtherSide(a: Item, b: Item): boolean {
  if (a.side === null || b.side === null || a.side === b.side) return false;
  if (a.kind !== 'plate' || b.kind !== 'plate') return stem(a) === stem(b);
  return (
    a.shape === b.shape &&
    a.lengthUm === b.lengthUm &&
    a.holes.length === b.holes.length &&
    a.material === b.material
  );
}

/** A code without its letters for a side. */
const stem = ({ code }: Item) => code.replace(/-(L|R)(?=-|$)/g, '');

function isNextLength(a: Item, b: Item): boolean {
  if (a.kind !== 'screw' || b.kind !== 'screw' || a.screwFamily !== b.screwFamily) return false;
  return a.lengthUm !== null && b.lengthUm !== null && Math.abs(a.lengthUm - b.lengthUm) <= NEXT_LENGTH_UM;
}

function isNextDiameter(a: Item, b: Item): boolean {
  const [one, two] = [diameterUm(a), diameterUm(b)];
  if (one === null || two === null || one === two) return false;
  return Math.abs(one - two) <= NEXT_DIAMETER_UM && lengthUm(a) === lengthUm(b);
}

function diameterUm(item: Item): number | null {
  if (item.kind === 'drillBit' || item.kind === 'guideWire') return item.diameterUm;
  return item.kind === 'tap' ? item.threadUm : null;
}

function lengthUm(item: Item): number | null {
  return 'lengthUm' in item ? item.lengthUm : null;
}

/** Characters taken for each other by eye, and digits that read another way upside down (6 and 9). */
const SAME_LOOK: Record<string, string> = {
  O: '0',
  Q: '0',
  D: '0',
  I: '1',
  L: '1',
  Z: '2',
  S: '5',
  B: '8',
  G: '6',
  '9': '6',
};

function readsAlike(code: string): string {
  return [...code.toUpperCase()].map((letter) => SAME_LOOK[letter] ?? letter).join('');
}
