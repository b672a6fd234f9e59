import type { z } from 'zod';
import { plainMessage } from '../wording/input-problems';

/** An expected failure is a value; only bugs throw. */
export type Result<T, P = Problem[]> = { ok: true; value: T } | { ok: false; problems: P };

/** One thing that is wrong, where it is wrong, and the way out. `path` follows the input's own shape. */
export interface Problem {
  /** Keys and indexes from the root of the input; empty for the input as a whole. */
  path: (string | number)[];
  /** A stable kebab-case name of the fault, for programs. */
  code: string;
  /** One sentence for people, naming the thing and the way out. */
  message: string;
}

export const ok = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });
export const failed = (...problems: Problem[]): { ok: false; problems: Problem[] } => ({
  ok: false,
  problems,
});

/** Every issue of a zod error as a problem, in the order zod found them, in words for people. */
export function problemsFromZod(error: { issues: readonly z.core.$ZodIssue[] }): Problem[] {
  return error.issues.map((issue) => ({
    path: issue.path.map((key) => (typeof key === 'number' ? key : String(key))),
    code: issue.code.replaceAll('_', '-'),
    message: plainMessage(issue),
  }));
}

/** Reached only by a kind nobody handled: the compiler finds it first. */
export function never(value: never): never {
  throw new Error(`unhandled kind: ${JSON.stringify(value)}`);
}
