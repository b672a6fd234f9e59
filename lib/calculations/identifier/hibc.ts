import { HIBC_ALPHABET, hibcCheckCharacter } from './checkDigits';
import { readSecondary, readSupplement } from './hibcSecondary';
import type { Element, Fault, Reading } from './reading';

/** Whether the text begins as a HIBC code does. `++` begins a Basic UDI-DI, which names a model and is on no label. */
export const looksHibc = (text: string): boolean => /^\*?\+[^+]/.test(text);

/**
 * A HIBC code: primary (labeller, product, pack level), secondary (dates, lot or serial, link character) or both in
 * one, with its modulo 43 check character. The asterisks of the printed line are left out.
 *
 * Source: ANSI/HIBC 2, supplier labelling standard; from memory but for the published strings in the tests.
 */
export function readHibc(given: string, firstPosition: number, currentYear: number): Reading {
  const starred = given.startsWith('*') ? 1 : 0;
  const text = starred && given.length > 2 && given.endsWith('*') ? given.slice(1, -1) : given.slice(starred);
  const first = firstPosition + starred;
  if (text.length < 4) {
    return { elements: [], faults: [{ kind: 'bad-form', what: 'hibcTooShort', position: first }] };
  }
  const stray = [...text].findIndex((character) => !HIBC_ALPHABET.includes(character));
  if (stray >= 0) {
    const character = [...text][stray] ?? '';
    const at = text.indexOf(character);
    return {
      elements: [],
      faults: [
        { kind: 'bad-character', name: 'HIBC code', character, allowed: 'capitals', position: first + at },
      ],
    };
  }
  const body = text.slice(0, -1);
  const check = text.slice(-1);
  const due = hibcCheckCharacter(body) ?? '';
  const checkAt = first + text.length - 1;
  const faults: Fault[] =
    check === due ? [] : [{ kind: 'check-character', given: check, due, position: checkAt }];
  const reading = /^\+[A-Z]/.test(body)
    ? readPrimary(body, first, currentYear)
    : readAlone(body, first, currentYear);
  const sound = faults.length === 0;
  const last: Element = {
    identifier: null,
    name: 'Check character',
    value: check,
    meaning: 'checkCharacter',
    plain: sound ? check : null,
    position: checkAt,
  };
  // nothing is vouched for when the check character is wrong: any character may be the misread one
  const elements = reading.elements.map((element) => (sound ? element : { ...element, plain: null }));
  return { elements: [...elements, last], faults: [...faults, ...reading.faults] };
}

const LEVELS: Readonly<Record<string, string>> = { '0': 'unit of use', '9': 'variable quantity' };

/** `+`, labeller (4), product (1 to 18), pack level (1); then what is appended, each after a `/`. */
function readPrimary(body: string, first: number, currentYear: number): Reading {
  const [primary = '', ...appended] = body.split('/');
  const read = /^\+([A-Z][A-Z0-9]{3})([A-Z0-9]{1,18})([0-9])$/.exec(primary);
  const elements: Element[] = [];
  const faults: Fault[] = [];
  if (read) {
    const [, labeller = '', product = '', level = ''] = read;
    const value = labeller + product + level;
    elements.push(
      {
        identifier: '+',
        name: 'Device identifier',
        value,
        meaning: 'deviceIdentifier',
        plain: value,
        position: first + 1,
      },
      {
        identifier: null,
        name: 'Pack level',
        value: level,
        meaning: 'packLevel',
        plain: LEVELS[level] ?? level,
        position: first + primary.length - 1,
      },
    );
  } else {
    faults.push({ kind: 'bad-form', what: 'hibcPrimary', position: first });
  }
  let position = first + primary.length + 1;
  appended.forEach((part, order) => {
    const reading =
      readSupplement(part, position) ?? (order === 0 ? readSecondary(part, position, currentYear) : null);
    if (reading) {
      elements.push(...reading.elements);
      faults.push(...reading.faults);
    } else {
      elements.push({
        identifier: null,
        name: 'Unknown',
        value: part,
        meaning: 'unknown',
        plain: null,
        position,
      });
      faults.push({ kind: 'unknown-identifier', scheme: 'hibc', given: part.slice(0, 4), position });
    }
    position += part.length + 1;
  });
  return { elements, faults };
}

/** A secondary code on its own: after its data comes the link character, which is the primary's check character. */
function readAlone(body: string, first: number, currentYear: number): Reading {
  const link = body.slice(-1);
  const data = body.slice(1, -1);
  const reading = readSecondary(data, first + 1, currentYear);
  if (!reading) {
    return { elements: [], faults: [{ kind: 'bad-form', what: 'hibcSecondary', position: first + 1 }] };
  }
  const linkElement: Element = {
    identifier: null,
    name: 'Link character',
    value: link,
    meaning: 'linkCharacter',
    plain: link,
    position: first + body.length - 1,
  };
  return { elements: [...reading.elements, linkElement], faults: reading.faults };
}
