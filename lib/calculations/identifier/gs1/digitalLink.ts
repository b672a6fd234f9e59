import type { Element, Fault, Reading } from '../reading';
import { readElement } from './elementValue';
import { IDENTIFIERS, type Identifier } from './identifiers';
import { pairFaults } from './pairs';

/**
 * Keys that a link can be of, each with the qualifiers that may follow it in the path, in this order.
 * Source: GS1 Digital Link Standard, URI syntax; formats as GS1's syntax dictionary lists them.
 */
const KEYS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  '00': [[]],
  '01': [['22', '10', '21'], ['235']],
  '253': [[]],
  '255': [[]],
  '401': [[]],
  '402': [[]],
  '414': [['254'], ['7040']],
  '415': [['8020']],
  '417': [['7040']],
  '8003': [[]],
  '8004': [['7040']],
  '8006': [['22', '10', '21']],
  '8010': [['8011']],
  '8013': [[]],
  '8017': [['8019']],
  '8018': [['8019']],
};

interface Part {
  identifier: string;
  value: string;
  position: number;
}

export const isWebAddress = (text: string): boolean => /^https?:\/\//i.test(text);

/**
 * A GS1 Digital Link URI, uncompressed: key and qualifiers in the path, all else in the query. `null` for a web address
 * that is none.
 *
 * @param firstPosition of the address in the text as given
 */
export function readDigitalLink(address: string, firstPosition: number, currentYear: number): Reading | null {
  const read = /^(https?:\/\/[^/?#]+)([^?#]*)(?:\?([^#]*))?/i.exec(address);
  if (!read) return null;
  const [, origin = '', path = '', query = ''] = read;
  const segments = pieces(path, /\//, firstPosition + origin.length);
  const key = keyPlace(segments);
  if (key < 0) return null;
  const faults: Fault[] = [];
  const parts = segments.slice(key);
  const pairs: Part[] = [];
  for (let at = 0; at + 1 < parts.length; at += 2) {
    const [name, value] = [parts[at], parts[at + 1]];
    if (name && value) pairs.push({ identifier: name.text, value: value.text, position: value.position });
  }
  faults.push(...orderFaults(pairs));
  const asked = pieces(query, /[&;]/, firstPosition + origin.length + path.length + 1).flatMap((piece) => {
    const [name = '', ...rest] = piece.text.split('=');
    const position = piece.position + name.length + 1;
    return /^\d{2,4}$/.test(name) ? [{ identifier: name, value: rest.join('='), position }] : [];
  });
  const elements = [...pairs, ...asked].map((part) => readPart(part, currentYear, faults));
  return { elements, faults: [...faults, ...pairFaults(elements)] };
}

function readPart(part: Part, currentYear: number, faults: Fault[]): Element {
  const { identifier: code, position } = part;
  const identifier = IDENTIFIERS.get(code);
  const decoded = decode(part.value);
  if (decoded === null) {
    faults.push({
      kind: 'bad-percent-code',
      given: part.value.slice(0, 20),
      position: position + Math.max(0, part.value.search(/%(?![0-9A-Fa-f]{2})/)),
    });
  }
  if (!identifier) faults.push({ kind: 'unknown-identifier', scheme: 'gs1', given: code, position });
  if (!identifier || decoded === null) {
    const name = identifier?.name ?? 'Unknown';
    const meaning = identifier?.meaning ?? 'unknown';
    return { identifier: code, name, value: part.value, meaning, plain: null, position };
  }
  const read = readElement(identifier, padded(identifier, decoded), position, currentYear, true);
  faults.push(...read.faults);
  return { ...read.element, value: decoded };
}

/** A link may carry the shorter GTINs as they are; they are the same numbers with zeros before. */
function padded({ code }: Identifier, value: string): string {
  return code === '01' && /^(\d{8}|\d{12}|\d{13})$/.test(value) ? value.padStart(14, '0') : value;
}

function decode(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

/** The last place in the path from which only keys, qualifiers and their values follow. */
function keyPlace(segments: readonly { text: string }[]): number {
  for (let at = segments.length - 2; at >= 0; at -= 2) {
    const name = segments[at]?.text ?? '';
    if (Object.hasOwn(KEYS, name)) return at;
    if (!/^\d{2,4}$/.test(name)) return -1;
  }
  return -1;
}

function orderFaults(pairs: readonly Part[]): Fault[] {
  const [key, ...rest] = pairs;
  if (!key) return [];
  const orders = KEYS[key.identifier] ?? [];
  const follows = orders.some((order) => {
    let from = 0;
    return rest.every(({ identifier }) => {
      const place = order.indexOf(identifier, from);
      from = place + 1;
      return place >= 0;
    });
  });
  if (follows) return [];
  const known = new Set(orders.flat());
  const wrong = rest.find(({ identifier }) => !known.has(identifier)) ?? rest.at(-1) ?? key;
  return [
    {
      kind: 'not-a-key-qualifier',
      identifier: wrong.identifier,
      key: key.identifier,
      position: wrong.position - wrong.identifier.length - 1,
    },
  ];
}

/** The parts of a path or query with their places; empty ones (a slash at the end) are left out. */
function pieces(text: string, divider: RegExp, firstPosition: number): { text: string; position: number }[] {
  let from = 0;
  return text.split(divider).flatMap((piece) => {
    const position = firstPosition + from;
    from += piece.length + 1;
    return piece === '' ? [] : [{ text: piece, position }];
  });
}
