import type { Problem } from './result';

/** Why a write was refused. Nothing was saved. `current` is the thing as it stands, so that both values can be shown. */
export interface Refusal<Current> {
  because: 'notFound' | 'notPermitted' | 'frozen' | 'conflict' | 'invalid';
  problems: Problem[];
  current: Current | null;
  /** The revision it has now, where another was seen. */
  present?: number;
}

/** What a write answers: what was written, or why nothing was. */
export type Outcome<T, Current = T> = { ok: true; value: T } | { ok: false; refusal: Refusal<Current> };

/** A refusal with one reason that concerns the request as a whole. */
export function refused<Current = never>(
  because: Refusal<Current>['because'],
  message: string,
  current: Current | null = null,
): { ok: false; refusal: Refusal<Current> } {
  const code = because.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  return { ok: false, refusal: { because, problems: [{ path: [], code, message }], current } };
}

/** A refusal because somebody else saved meanwhile: `present` is the revision (or version) the thing has now. */
export function changedTo(message: string, present: number): { ok: false; refusal: Refusal<never> } {
  const { refusal } = refused('conflict', message);
  return { ok: false, refusal: { ...refusal, present } };
}

/** A refusal for all that is wrong with the input, at once. */
export function refusedFor(problems: Problem[]): { ok: false; refusal: Refusal<never> } {
  return { ok: false, refusal: { because: 'invalid', problems, current: null } };
}
