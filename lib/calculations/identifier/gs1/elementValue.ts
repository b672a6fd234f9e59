import { gs1CheckDigit } from '../checkDigits';
import { type DateFault, dateOf, slidingYear } from '../dates';
import type { Element, Fault, FaultOf } from '../reading';
import { type CharacterSet, type Component, firstOutside, type Rule } from './format';
import type { Identifier } from './identifiers';

const ALLOWED: Record<CharacterSet, (FaultOf & { kind: 'bad-character' })['allowed']> = {
  N: 'digits',
  X: 'standard',
  Y: 'capitals',
  Z: 'base64',
};

/**
 * One element: its value held against its identifier's lengths, characters, check digit and dates. Every fault comes
 * back, each with its place.
 *
 * @param position of the value's first character in the text as given, from 1
 * @param separated whether separators are known to be sent: what is too long may otherwise have lost one
 */
export function readElement(
  identifier: Identifier,
  value: string,
  position: number,
  currentYear: number,
  separated = false,
): { element: Element; faults: Fault[] } {
  const faults = valueFaults(identifier, value, position, currentYear, separated);
  const { code, name, meaning } = identifier;
  const plain = faults.length > 0 ? null : plainOf(identifier, value, currentYear);
  return { element: { identifier: code, name, value, meaning, plain, position }, faults };
}

/** Whether the value has nothing wrong with it; cheaper than listing what is. */
export function isSound(identifier: Identifier, value: string, currentYear: number): boolean {
  const { least, most } = identifier.format;
  if (value.length < least || value.length > most) return false;
  return valueFaults(identifier, value, 1, currentYear, true).length === 0;
}

function valueFaults(
  { name, format }: Identifier,
  value: string,
  position: number,
  currentYear: number,
  separated: boolean,
): Fault[] {
  const { least, most, components } = format;
  if (value.length < least) return [{ kind: 'too-short', name, given: value.length, least, position }];
  if (value.length > most) {
    return [{ kind: 'too-long', name, given: value.length, most, separated, position: position + most }];
  }
  const faults: Fault[] = [];
  let from = 0;
  for (const component of components) {
    const part = value.slice(from, from + component.most);
    if (part === '' && component.optional) break;
    const place = position + from;
    if (part.length < component.least) {
      faults.push({ kind: 'too-short', name, given: value.length, least: from + component.least, position });
      break;
    }
    const outside = firstOutside(part, component.set);
    if (outside >= 0) {
      const character = String.fromCodePoint(part.codePointAt(outside) ?? 0);
      const allowed = ALLOWED[component.set];
      faults.push({ kind: 'bad-character', name, character, allowed, position: place + outside });
    } else {
      const fault = component.rule && ruleFault(component.rule, component, part, name, currentYear);
      if (fault) faults.push({ ...fault.fault, position: place + fault.at });
    }
    from += part.length;
  }
  return faults;
}

/** What a rule has against the part of a value that has the right length and characters, and where in that part. */
function ruleFault(
  rule: Rule,
  { most }: Component,
  part: string,
  name: string,
  currentYear: number,
): { fault: FaultOf; at: number } | null {
  switch (rule) {
    case 'mod10': {
      const given = part.slice(-1);
      const due = String(gs1CheckDigit(part.slice(0, -1)));
      return given === due ? null : { fault: { kind: 'check-digit', name, given, due }, at: most - 1 };
    }
    case 'date0':
    case 'date':
    case 'hour': {
      const date = readDate(part, currentYear, rule === 'date0');
      if (!date.ok)
        return { fault: { kind: 'no-such-date', name, fault: date.fault }, at: AT[date.fault.part] };
      const hour = part.slice(6);
      return Number(hour) > 23 ? { fault: { kind: 'no-such-time', name, given: hour }, at: 6 } : null;
    }
    case 'time':
      return Number(part.slice(0, 2)) > 23 || Number(part.slice(2)) > 59
        ? { fault: { kind: 'no-such-time', name, given: part }, at: 0 }
        : null;
    case 'minutes':
      return part.length % 2 === 1 || Number(part.slice(0, 2)) > 59 || Number(part.slice(2)) > 59
        ? { fault: { kind: 'no-such-time', name, given: part }, at: 0 }
        : null;
    case 'zero':
      return part === '0' ? null : { fault: { kind: 'not-allowed', name, given: part, due: '0' }, at: 0 };
    case 'yesNo':
      return /[01]/.test(part)
        ? null
        : { fault: { kind: 'not-allowed', name, given: part, due: '0 or 1' }, at: 0 };
    case 'minus':
      return part === '-' ? null : { fault: { kind: 'not-allowed', name, given: part, due: '-' }, at: 0 };
    case 'pieceOfTotal': {
      const [piece, total] = [part.slice(0, 2), part.slice(2)];
      return piece !== '00' && total !== '00' && piece <= total
        ? null
        : { fault: { kind: 'not-allowed', name, given: part, due: 'piece and total, from 0101' }, at: 0 };
    }
  }
}

/** Where the part of a date stands in YYMMDD. */
const AT: Record<DateFault['part'], number> = { month: 2, day: 4, dayOfYear: 2 };

const readDate = (yymmdd: string, currentYear: number, dayMayBeZero: boolean) =>
  dateOf(
    slidingYear(Number(yymmdd.slice(0, 2)), currentYear),
    Number(yymmdd.slice(2, 4)),
    Number(yymmdd.slice(4, 6)),
    dayMayBeZero,
  );

/** A sound value read: dates in full, counts and measures as numbers, all else as it stands. */
function plainOf({ format, meaning, decimals }: Identifier, value: string, currentYear: number): string {
  const rule = format.components[0]?.rule;
  if (rule === 'date0' || rule === 'date' || rule === 'hour') {
    const date = readDate(value, currentYear, rule === 'date0');
    if (!date.ok) return value;
    const rest = value.slice(6);
    return rest === '' || format.components[1]?.rule === 'date'
      ? date.date + (rest === '' ? '' : `/${plainSecondDate(rest, currentYear)}`)
      : `${date.date} ${clockTime(rest)}`;
  }
  if (meaning === 'count') return String(Number(value));
  if (decimals !== null) return decimalOf(value, decimals);
  return value;
}

function plainSecondDate(yymmdd: string, currentYear: number): string {
  const read = readDate(yymmdd, currentYear, false);
  return read.ok ? read.date : yymmdd;
}

const clockTime = (digits: string): string =>
  digits.length === 2 ? `${digits}:00` : digits.replace(/(\d\d)(?=\d)/g, '$1:');

/** `001250` with three decimals is `1.250`. */
function decimalOf(digits: string, decimals: number): string {
  const whole = String(Number(digits.slice(0, digits.length - decimals) || '0'));
  return decimals === 0 ? whole : `${whole}.${digits.slice(-decimals)}`;
}
