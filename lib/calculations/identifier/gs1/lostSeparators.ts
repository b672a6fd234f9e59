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
  return { readings, complete };
}

/** For each place at which an element can begin: where it can end so that the rest can be read too, farthest first. */
function soundCuts(text: string, currentYear: number): { identifier?: Identifier; ends: number[] }[] {
  const cuts: { identifier?: Identifier; ends: number[] }[] = [];
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
