import type { Acting } from './acting-store';

export type SecretAnswer = { ok: true; acting: Acting } | { ok: false; sentence: string };

/** Sends what somebody proved themselves with; a refusal comes back as a sentence. Throws when nothing answers. */
export async function sendSecret(
  address: '/api/v1/people/sign-in' | '/api/v1/people/badge' | '/api/v1/people/first-run',
  body: Record<string, string>,
): Promise<SecretAnswer> {
  const response = await fetch(address, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  const answer = await response.json().catch(() => null);
  if (response.ok) return { ok: true, acting: answer as Acting };
  const detail = (answer as { detail?: string } | null)?.detail;
  return { ok: false, sentence: detail ?? `The server answered ${response.status}.` };
}

export const NOT_REACHED =
  'That did not reach the server, so nothing was changed. Check the connection and try again.';
