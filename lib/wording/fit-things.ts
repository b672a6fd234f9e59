import type { Hole } from '../catalogue/hole';
import type { Item } from '../catalogue/item';
import { type Design, itemOf } from '../fit/designs';
import type { Relation } from '../fit/rule';
import { writeMm } from '../quantities/length';
import { choiceWords, writeFactValue } from './fit';

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const HOLE_CLASS: Record<Hole['holeClass'], string> = {
  round: 'round hole',
  compressionSlot: 'compression slot',
  threaded: 'threaded hole',
  polyaxialThreaded: 'polyaxial threaded hole',
  twoZone: 'two-zone hole',
  elongatedSlot: 'elongated slot',
  wireHole: 'wire hole',
};

/** `compression slot, opening 4.1 mm`: what tells one hole from another at a glance. */
export function holeWords(hole: Hole): string {
  const opening = hole.openingUm === null ? null : `opening ${writeMm(hole.openingUm)} mm`;
  const seat = hole.plainSeat === 'conical' ? 'conical seat' : null;
  const family = hole.lockingFamily;
  return [HOLE_CLASS[hole.holeClass], opening, seat, family].filter(Boolean).join(', ');
}

/** `2 mm to 14 mm` of whatever lengths there are. */
function lengthRange(lengths: readonly (number | null)[]): string | null {
  const stated = lengths.filter((length): length is number => length !== null);
  if (stated.length === 0) return null;
  const [low, high] = [Math.min(...stated), Math.max(...stated)];
  return low === high ? `${writeMm(low)} mm` : `${writeMm(low)}–${writeMm(high)} mm`;
}

/** The head of a row or column: what it is, and how much it stands for. */
export function designWords(relation: Relation, { things }: Design): { label: string; note: string } {
  const [first] = things;
  const items = [...new Set(things.flatMap((thing) => itemOf(thing) ?? []))];
  switch (first.is) {
    case 'screw': {
      const lengths = lengthRange(
        things.map((thing) => (thing.is === 'screw' ? thing.screw.lengthUm : null)),
      );
      return {
        label: first.screw.screwFamily,
        note: [lengths, count(things.length, 'screw')].filter(Boolean).join(' · '),
      };
    }
    case 'hole': {
      const sizes = first.plate.takesThreadsUm.map(writeMm).join(', ');
      return {
        label: `${capital(holeWords(first.hole))}`,
        note: `${sizes ? `for ${sizes} mm · ` : ''}${count(things.length, 'hole')} in ${count(items.length, 'plate')}`,
      };
    }
    case 'sleeveEnd': {
      const bore =
        first.by.end.boreUm === null ? 'bore not stated' : `bore ${writeMm(first.by.end.boreUm)} mm`;
      const form = first.by.end.outerForm ? `, ${choiceWords(first.by.end.outerForm)}` : '';
      return {
        label: `${first.by.sleeve.code} end ${first.by.endIndex + 1}`,
        note: `${bore}${form}${alike(things.length)}`,
      };
    }
    case 'limb':
      return { label: `${capital(first.limb)} limb`, note: '' };
    case 'shank':
      return { label: first.item.code, note: `${first.item.name}${alike(things.length)}` };
    case 'item':
      return itemDesignWords(relation, first.item, things.length);
  }
}

function itemDesignWords(relation: Relation, item: Item, size: number): { label: string; note: string } {
  if (item.kind === 'plate' && relation === 'wearsWith') {
    return { label: `Plates of ${writeFactValue('text', item.material)}`, note: count(size, 'plate') };
  }
  if (item.kind === 'plate')
    return { label: `${item.side ? capital(item.side) : 'Side not stated'}`, note: count(size, 'plate') };
  if (item.kind === 'drillBit' || item.kind === 'guideWire') {
    const diameter = item.diameterUm === null ? 'diameter not stated' : `${writeMm(item.diameterUm)} mm`;
    return {
      label: `${item.kind === 'drillBit' ? 'Bit' : 'Wire'} ${diameter}`,
      note: size > 1 ? count(size, 'item') : item.code,
    };
  }
  return { label: item.name, note: size > 1 ? count(size, 'item') : item.code };
}

const count = (size: number, word: string) => `${size} ${word}${size === 1 ? '' : 's'}`;
const alike = (size: number) => (size > 1 ? `, and ${size - 1} alike` : '');
