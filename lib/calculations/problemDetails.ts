import type { Problem } from '@/lib/identity/result';

/** A problem as RFC 9457 (Problem Details for HTTP APIs) writes it, with every fault of the input in `errors`. */
export interface ProblemDetails {
  type: string;
  title: string;
  status: number;
  detail: string;
  errors?: ProblemError[];
}

export interface ProblemError {
  path: (string | number)[];
  /** The same place as a JSON Pointer (RFC 6901) into the input. */
  pointer: string;
  code: string;
  message: string;
}

/** `['holes', 3, 'meanMm'] → '/holes/3/meanMm'`; `~` and `/` inside a key are escaped (RFC 6901 §3). */
export function jsonPointer(path: readonly (string | number)[]): string {
  return path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** Problems with what was sent, as one answer that lists them all. */
export function problemDetails(
  head: { title: string; status: number; detail: string },
  problems: readonly Problem[] = [],
): ProblemDetails {
  return {
    type: 'about:blank',
    ...head,
    ...(problems.length > 0 && {
      errors: problems.map((problem) => ({
        path: problem.path,
        pointer: jsonPointer(problem.path),
        code: problem.code,
        message: problem.message,
      })),
    }),
  };
}
