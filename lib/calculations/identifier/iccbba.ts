import { dateOfDayOfYear } from './dates';
import type { Element, Fault, Meaning, Reading } from './reading';

interface Structure {
  mark: string;
  name: string;
  meaning: Meaning;
  length: number;
  characters: 'digits' | 'capitals';
  /** `cYYJJJ`, with the time `HHMM` after it where the value is ten long. */
  dated?: true;
}

/**
 * Data structures of ISBT 128 that are on devices and tissue, by the two or three characters before them.
 * Source: FDA, UDI formats by FDA-accredited issuing agency (ICCBBA); blood containers and date with time from memory.
 */
const STRUCTURES: readonly Structure[] = [
  { mark: '&,1', name: 'Lot', meaning: 'lot', length: 18, characters: 'capitals' },
  { mark: '=/', name: 'Device identifier', meaning: 'deviceIdentifier', length: 16, characters: 'capitals' },
  { mark: '=,', name: 'Serial number', meaning: 'serial', length: 6, characters: 'capitals' },
  { mark: '=>', name: 'Use-by', meaning: 'useBy', length: 6, characters: 'digits', dated: true },
  { mark: '&>', name: 'Use-by with time', meaning: 'useBy', length: 10, characters: 'digits', dated: true },
  {
    mark: '=}',
    name: 'Production date',
    meaning: 'productionDate',
    length: 6,
    characters: 'digits',
    dated: true,
  },
  {
    mark: '&}',
    name: 'Production date with time',
    meaning: 'productionDate',
    length: 10,
    characters: 'digits',
    dated: true,
  },
  {
    mark: '=)',
    name: 'Container maker and catalogue number',
    meaning: 'deviceIdentifier',
    length: 10,
    characters: 'capitals',
  },
  { mark: '&)', name: 'Container lot', meaning: 'lot', length: 10, characters: 'capitals' },
  { mark: '=+', name: 'Compound message', meaning: 'other', length: 5, characters: 'digits' },
];

/** Donation: facility (5), year (2), number (6), flags (2); its mark is the `=` alone. */
const DONATION = /^=[A-NP-Z1-9][A-Z0-9]{4}\d{8}[A-Z0-9]{2}$/;

export const looksIccbba = (text: string): boolean =>
  STRUCTURES.some(({ mark }) => text.startsWith(mark)) || DONATION.test(text.slice(0, 16));

/** ISBT 128 data structures, one after the other, as ICCBBA has them on medical devices of human origin. */
export function readIccbba(text: string, firstPosition: number): Reading {
  const elements: Element[] = [];
  const faults: Fault[] = [];
  for (const { index, 0: segment } of text.matchAll(/[=&][^=&]*/g)) {
    const position = firstPosition + index;
    const structure = STRUCTURES.find(({ mark }) => segment.startsWith(mark));
    if (structure) {
      const read = readStructure(
        structure,
        segment.slice(structure.mark.length),
        position + structure.mark.length,
      );
      elements.push(read.element);
      faults.push(...read.faults);
    } else if (DONATION.test(segment)) {
      const value = segment.slice(1);
      elements.push({
        identifier: '=',
        name: 'Donation',
        value,
        meaning: 'donation',
        plain: value,
        position: position + 1,
      });
    } else {
      elements.push({
        identifier: null,
        name: 'Unknown',
        value: segment,
        meaning: 'unknown',
        plain: null,
        position,
      });
      faults.push({ kind: 'unknown-identifier', scheme: 'iccbba', given: segment.slice(0, 2), position });
    }
  }
  return { elements, faults };
}

function readStructure(structure: Structure, value: string, position: number) {
  const { mark, name, meaning, length, characters, dated } = structure;
  const faults: Fault[] = [];
  const outside = value.search(characters === 'digits' ? /[^0-9]/ : /[^0-9A-Z]/);
  let plain: string | null = value;
  if (outside >= 0) {
    const character = String.fromCodePoint(value.codePointAt(outside) ?? 0);
    faults.push({
      kind: 'bad-character',
      name,
      character,
      allowed: characters,
      position: position + outside,
    });
  } else if (value.length < length) {
    faults.push({ kind: 'too-short', name, given: value.length, least: length, position });
  } else if (value.length > length) {
    faults.push({
      kind: 'too-long',
      name,
      given: value.length,
      most: length,
      separated: true,
      position: position + length,
    });
  } else if (dated) {
    const read = readDate(name, value, position);
    plain = read.plain;
    if (read.fault) faults.push(read.fault);
  }
  const element: Element = {
    identifier: mark,
    name,
    value,
    meaning,
    plain: faults.length > 0 ? null : plain,
    position,
  };
  return { element, faults };
}

/** `c` is the hundreds of the year: 0 is 20xx, 9 is 19xx. */
function readDate(
  name: string,
  value: string,
  position: number,
): { plain: string | null; fault: Fault | null } {
  const century = value[0] === '9' ? 1000 : 2000;
  const date = dateOfDayOfYear(century + Number(value.slice(0, 3)), Number(value.slice(3, 6)));
  if (!date.ok) {
    return { plain: null, fault: { kind: 'no-such-date', name, fault: date.fault, position: position + 3 } };
  }
  const time = value.slice(6);
  if (Number(time.slice(0, 2)) > 23 || Number(time.slice(2)) > 59) {
    return { plain: null, fault: { kind: 'no-such-time', name, given: time, position: position + 6 } };
  }
  return {
    plain: time === '' ? date.date : `${date.date} ${time.slice(0, 2)}:${time.slice(2)}`,
    fault: null,
  };
}
