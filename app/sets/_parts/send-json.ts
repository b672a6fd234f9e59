/** One problem of a refused write, as the API says it. */
export interface SentProblem {
  path: string;
  sentence: string;
}

export type Sent<T, C = unknown> =
  | { ok: true; value: T }
  | { ok: false; status: number; sentence: string; problems: SentProblem[]; current: C | null };

/**
 * Sends a write as JSON and reads its answer, a refusal (RFC 9457) in words included. Throws when the server can't be reached.
 */
export async function sendJson<T = unknown, C = unknown>(
  address: string,
  body: unknown,
  method = 'POST',
): Promise<Sent<T, C>> {
  const response = await fetch(address, {
    method,
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  const answer = (await response.json().catch(() => null)) as
    | (T & {
        detail?: string;
        errors?: { path: (string | number)[] | string; message?: string; detail?: string }[];
        current?: C;
      })
    | null;
  if (response.ok) return { ok: true, value: answer as T };
  const problems = (answer?.errors ?? []).map(({ path, message, detail }) => ({
    path: Array.isArray(path) ? path.join('.') : path,
    sentence: message ?? detail ?? '',
  }));
  return {
    ok: false,
    status: response.status,
    sentence: answer?.detail ?? `The server answered ${response.status}.`,
    problems,
    current: answer?.current ?? null,
  };
}
