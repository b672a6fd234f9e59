import type { Problem } from '../identity/result';
import type { PlanVersion } from './planVersion';

/** Why a write to a plan was refused. Nothing was saved. */
export interface PlanRefusal {
  because: 'notFound' | 'notPermitted' | 'frozen' | 'conflict' | 'invalid';
  problems: Problem[];
  /** The plan as it stands, so that both values can be shown. */
  current: PlanVersion | null;
}

export type PlanOutcome<T> = { ok: true; value: T } | { ok: false; refusal: PlanRefusal };

/** A refusal with one reason that concerns the request as a whole. */
export function refused(
  because: PlanRefusal['because'],
  message: string,
  current: PlanVersion | null = null,
): { ok: false; refusal: PlanRefusal } {
  const code = because.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  return { ok: false, refusal: { because, problems: [{ path: [], code, message }], current } };
}

export function refusedFor(problems: Problem[]): { ok: false; refusal: PlanRefusal } {
  return { ok: false, refusal: { because: 'invalid', problems, current: null } };
}
