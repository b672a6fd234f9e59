import type { Element, Reading } from '../reading';
import { isSound, readElement } from './elementValue';
import { firstOutside } from './format';
import { type Identifier, identifierAt } from './identifiers';
import { pairFaults } from './pairs';
import type { Plain } from './separators';

/** More ways than this are not shown: the code is refused with the second. */
const MOST_READINGS = 6;
/** Bounds the search; reaching it counts as not knowing, never as one way only. */
const MOST_STEPS = 600;

export interface Readings {
  readings: Reading[];
  /** Whether these are all there are. */
  complete: boolean;
  /** The elements with which every way begins, those that are not listed too: these are not in doubt. */
  shared: Element[];
}

/**
 * Every way in which a text without separators can be cut into sound elements, the longest values first. Ways in which
 * elements exclude each other, or one identifier has two values, are none.
 */
export function readingsWithout(plain: Plain, currentYear: number): Readings {
  const { text, at } = plain;
  const cuts = soundCuts(text, currentYear);
  const readings: Reading[] = [];
  let steps = 0;
  const walk = (from: number, taken: Element[]): boolean => {
    if (from === text.length) {
      if (pairFaults(taken).length === 0) readings.push({ elements: taken, faults: [] });
      return readings.length < MOST_READINGS;
    }
    const { identifier, ends } = cuts[from] ?? { ends: [] };
    if (!identifier) return true;
    for (const end of ends) {
      steps += 1;
      if (steps > MOST_STEPS) return false;
      const start = from + identifier.code.length;
      const value = text.slice(start, end);
      const twice = taken.some((one) => one.identifier === identifier.code && one.value !== value);
      if (twice) continue;
      const { element } = readElement(identifier, value, at[start] ?? 0, currentYear);
      if (!walk(end, [...taken, element])) return false;
    }
    return true;
  };
  const complete = walk(0, []);
  return {
    readings,
    complete,
    shared: complete ? sharedStart(readings) : onlyStart(plain, cuts, currentYear),
  };
}

/** The elements with which all of these begin. */
function sharedStart(readings: readonly Reading[]): Element[] {
  const [first, ...others] = readings;
  const shared: Element[] = [];
  for (const [at, element] of (first?.elements ?? []).entries()) {
    const same = others.every(({ elements }) => {
      const other = elements[at];
      return other?.identifier === element.identifier && other.value === element.value;
    });
    if (!same) break;
    shared.push(element);
  }
  return shared;
}

/** The elements at the start that can end in one place only: so they stand in ways nobody has listed, too. */
function onlyStart({ text, at }: Plain, cuts: readonly Cut[], currentYear: number): Element[] {
  const elements: Element[] = [];
  for (let from = 0; from < text.length; ) {
    const { identifier, ends } = cuts[from] ?? { ends: [] };
    const [end, ...others] = ends;
    if (!identifier || end === undefined || others.length > 0) break;
    const start = from + identifier.code.length;
    elements.push(readElement(identifier, text.slice(start, end), at[start] ?? 0, currentYear).element);
    from = end;
  }
  return elements;
}

interface Cut {
  identifier?: Identifier;
  ends: number[];
}

/** For each place at which an element can begin: where it can end so that the rest can be read too, farthest first. */
function soundCuts(text: string, currentYear: number): Cut[] {
  const cuts: Cut[] = [];
  for (let from = text.length - 1; from >= 0; from -= 1) {
    const identifier = identifierAt(text, from);
    const ends: number[] = [];
    if (identifier) {
      const start = from + identifier.code.length;
      const { farthest, sure } = reach(identifier, text, start);
      for (let end = farthest; end >= start + identifier.format.least; end -= 1) {
        const goesOn = end === text.length || (cuts[end]?.ends.length ?? 0) > 0;
        if (goesOn && (sure || isSound(identifier, text.slice(start, end), currentYear))) ends.push(end);
      }
    }
    cuts[from] = identifier ? { identifier, ends } : { ends };
  }
  return cuts;
}

/**
 * How far a value that begins there can go. `sure`: every length up to there is sound, as it is where nothing but the
 * characters matters; lots and serials are of that kind, and asking for each length would take long.
 */
function reach({ format }: Identifier, text: string, start: number): { farthest: number; sure: boolean } {
  const farthest = Math.min(start + format.most, text.length);
  const [only, ...others] = format.components;
  if (!only || others.length > 0 || only.rule !== null) return { farthest, sure: false };
  const outside = firstOutside(text.slice(start, farthest), only.set);
  return { farthest: outside < 0 ? farthest : start + outside, sure: true };
}
