import { type Carrier, carrierOf } from './carrier';
import { hibcCheckCharacter } from './checkDigits';
import { readBareKey } from './gs1/bareKey';
import { isWebAddress, readDigitalLink } from './gs1/digitalLink';
import { readBracketed, readElementString, writeBracketed } from './gs1/elementString';
import { IDENTIFIERS, identifierAt } from './gs1/identifiers';
import { readingsWithout } from './gs1/lostSeparators';
import { GS, type Plain, plainSeparators } from './gs1/separators';
import { looksHibc, readHibc } from './hibc';
import { looksIccbba, readIccbba } from './iccbba';
import type { Element, Fault, Reading } from './reading';
import type { IdentifierInput, Scheme, State } from './schema';

/** A code recognised and read, or kept as text. */
export interface Identified extends Reading {
  scheme: Scheme;
  state: State;
  carrier: string | null;
  /** Where there are several: each as bracketed text. */
  readings: string[];
  /** Whether all readings are listed. */
  complete: boolean;
  separators: 'notNeeded' | 'there' | 'none' | 'lost';
}

/**
 * Recognises what a text is and reads it. It is a code of a scheme only if its carrier says so or its own form does: for
 * GS1 strings without any mark, only a matching check digit of a key. Everything else is text, and stays it.
 */
export function identify({ text, currentYear, separators }: IdentifierInput): Identified {
  const lead = text.length - text.trimStart().length;
  const { carrier, length } = carrierOf(text.slice(lead));
  // a space may be a check character, so only what ends a transmission is cut off
  const sent = text.slice(lead + length).replace(/[\r\n\t]+$/, '');
  const content = sent.trimEnd();
  const position = 1 + lead + length;
  const name = carrier?.name ?? null;
  const as = (scheme: Scheme, reading: Reading): Identified => ({
    ...plainResult(scheme, name),
    ...reading,
    state: reading.faults.length > 0 ? 'faulty' : 'read',
  });
  const unknown = (faults: Fault[] = []): Identified => ({ ...plainResult('unknown', name), faults });
  if (content === '') return unknown([{ kind: 'nothing-after-mark', position }]);

  const holds = carrier?.holds ?? null;
  if (holds === 'elements') {
    return elementString(plainSeparators(content, position), currentYear, separators, name);
  }
  if (holds !== null && holds !== 'any') {
    const key = holds.keyDigits.includes(content.length) ? readBareKey(content, position) : null;
    return key ? as('gs1Key', key) : unknown([{ kind: 'stray-text', given: content.slice(0, 20), position }]);
  }
  if (isWebAddress(content)) {
    const link = readDigitalLink(content, position, currentYear);
    return link ? as('gs1DigitalLink', link) : unknown();
  }
  if (looksHibc(content)) {
    const whole = hibcCheckCharacter(sent.slice(0, -1)) === sent.slice(-1) ? sent : content;
    const reading = readHibc(whole, position, currentYear);
    const vouched = !reading.faults.some(({ kind }) => kind === 'check-character');
    const formed =
      reading.elements.some(({ meaning }) => meaning === 'deviceIdentifier') || /^\*?\+\$/.test(content);
    return formed || (vouched && reading.elements.length > 0) ? as('hibc', reading) : unknown(reading.faults);
  }
  if (looksIccbba(content)) return as('iccbba', readIccbba(content, position));
  return unmarked(content, position, { currentYear, separators }, carrier, { as, unknown });
}

/** What only its own form can tell: bracketed text, digits of a key, an element string without symbology identifier. */
function unmarked(
  content: string,
  position: number,
  { currentYear, separators }: Omit<IdentifierInput, 'text'>,
  carrier: Carrier | null,
  make: { as: (scheme: Scheme, reading: Reading) => Identified; unknown: (faults?: Fault[]) => Identified },
): Identified {
  const plain = plainSeparators(content, position);
  const bare = plain.text.startsWith(GS) ? plain.text.slice(1) : plain.text;
  const opening = /^\((\d{2,4})(\))?/.exec(bare);
  if (opening) {
    if (!IDENTIFIERS.has(opening[1] ?? '') && opening[2]) return make.unknown();
    const reading = readBracketed(plain, currentYear);
    return reading.elements.length > 0 ? make.as('gs1ElementString', reading) : make.unknown(reading.faults);
  }
  const key = readBareKey(content, position);
  if (key) return key.faults.length > 0 ? make.unknown(key.faults) : make.as('gs1Key', key);

  const first = identifierAt(bare, 0);
  if (!first) return make.unknown();
  const read = elementString(plain, currentYear, separators, carrier?.name ?? null);
  const evident = plain.text.includes(GS) || vouchedFor(read, plain, currentYear);
  if (evident && carrier)
    return make.unknown([{ kind: 'not-a-gs1-carrier', carrier: carrier.name, position }]);
  if (evident) return read;
  return make.unknown(keyFaults(read.faults, read.elements[0], first.code, position));
}

/** Whether the first element, or every reading, has a key whose check digit matches. */
function vouchedFor(read: Identified, plain: Plain, currentYear: number): boolean {
  const first = readElementString(plain, currentYear, false).elements[0];
  if (first && isVouchedKey(first)) return true;
  return read.state === 'read' && read.elements.some(isVouchedKey);
}

function isVouchedKey({ identifier, plain }: Element): boolean {
  const format = identifier === null ? undefined : IDENTIFIERS.get(identifier)?.format;
  return plain !== null && (format?.components.some(({ rule }) => rule === 'mod10') ?? false);
}

/** What keeps a text that begins like a key from being one: it is said, but the text is not taken for a GS1 string. */
function keyFaults(faults: Fault[], first: Element | undefined, code: string, position: number): Fault[] {
  if (!['00', '01', '02'].includes(code) || !first) return [];
  const end = position + code.length + first.value.length;
  return faults.filter((fault) => fault.kind === 'check-digit' && fault.position < end);
}

/** An element string: as the standard reads it where separators are sent, else only if there is one way to cut it. */
function elementString(
  plain: Plain,
  currentYear: number,
  separators: IdentifierInput['separators'],
  carrier: string | null,
): Identified {
  const base = plainResult('gs1ElementString', carrier);
  const there = plain.text.includes(GS);
  const straight = readElementString(plain, currentYear, there || separators === 'sent');
  const state: State = straight.faults.length > 0 ? 'faulty' : 'read';
  if (there || separators === 'sent') {
    return { ...base, ...straight, state, separators: there ? 'there' : 'none' };
  }
  const { readings, complete, shared } = readingsWithout(plain, currentYear);
  const [only] = readings;
  if (readings.length === 0 && complete) return { ...base, ...straight, state };
  if (only && readings.length === 1 && complete) {
    const lost = writeBracketed(only.elements) !== writeBracketed(straight.elements);
    return { ...base, ...only, state: 'read', separators: lost ? 'lost' : 'notNeeded' };
  }
  return {
    ...base,
    state: 'ambiguous',
    elements: shared,
    readings: readings.map(({ elements }) => writeBracketed(elements)),
    complete,
    separators: 'lost',
  };
}

const plainResult = (scheme: Scheme, carrier: string | null): Identified => ({
  scheme,
  state: 'unknown',
  carrier,
  elements: [],
  faults: [],
  readings: [],
  complete: true,
  separators: 'notNeeded',
});
