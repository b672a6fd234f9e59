import type { Problem } from '../../identity/result';
import { writeMm } from '../../quantities/length';

/** What a check writes its problems to. */
export type Note = (path: (string | number)[], code: string, message: string) => void;

/** A list of problems and the pen that adds to it. */
export function noted(): { problems: Problem[]; note: Note } {
  const problems: Problem[] = [];
  return { problems, note: (path, code, message) => void problems.push({ path, code, message }) };
}

/** Notes a problem when both are stated and the first is not below the second. */
export function mustBeBelow(
  note: Note,
  small: { path: (string | number)[]; um: number | null; name: string },
  large: { um: number | null; name: string },
  code: string,
): void {
  if (small.um === null || large.um === null || small.um < large.um) return;
  note(
    small.path,
    code,
    `The ${small.name} (${writeMm(small.um)} mm) must be below the ${large.name} (${writeMm(large.um)} mm).`,
  );
}

/** Notes a problem when both are stated and the first is above the second. */
export function mustNotExceed(
  note: Note,
  small: { path: (string | number)[]; um: number | null; name: string },
  large: { um: number | null; name: string },
  code: string,
): void {
  if (small.um === null || large.um === null || small.um <= large.um) return;
  note(
    small.path,
    code,
    `The ${small.name} (${writeMm(small.um)} mm) is more than the ${large.name} (${writeMm(large.um)} mm).`,
  );
}

/** Notes a problem when the length is stated and outside what such a thing can be. */
export function mustLieWithin(
  note: Note,
  { path, um, name }: { path: (string | number)[]; um: number | null; name: string },
  [fromUm, toUm]: readonly [number, number],
): void {
  if (um === null || (um >= fromUm && um <= toUm)) return;
  note(
    path,
    'out-of-range',
    `${name} of ${writeMm(um)} mm: between ${writeMm(fromUm)} and ${writeMm(toUm)} mm is expected. Check the unit.`,
  );
}
