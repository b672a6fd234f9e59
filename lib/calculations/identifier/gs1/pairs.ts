import type { Element, Fault } from '../reading';
import { EXCLUDED_PAIRS } from './identifiers';

/** Elements that must not stand together, and identifiers that are there twice with different values. */
export function pairFaults(elements: readonly Element[]): Fault[] {
  const first = new Map<string, Element>();
  const faults: Fault[] = [];
  for (const element of elements) {
    const { identifier, name, value, position } = element;
    if (identifier === null) continue;
    const before = first.get(identifier);
    if (!before) first.set(identifier, element);
    else if (before.value !== value) faults.push({ kind: 'repeated-identifier', identifier, name, position });
  }
  for (const [one, two] of EXCLUDED_PAIRS) {
    const [a, b] = [first.get(one), first.get(two)];
    if (!a || !b) continue;
    const later = a.position > b.position ? a : b;
    const other = later === a ? two : one;
    faults.push({
      kind: 'excluded-pair',
      identifier: later === a ? one : two,
      other,
      position: later.position,
    });
  }
  return faults;
}
