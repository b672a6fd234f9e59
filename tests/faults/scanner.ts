import { randomUUID } from 'node:crypto';

/** A person's cookie at a running server, as their browser would have it. */
export async function signIn(address: string, name: string, password: string): Promise<string> {
  const answer = await fetch(`${address}/api/v1/people/sign-in`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ name, password }),
  });
  const cookie = answer.headers.getSetCookie().find((line) => line.startsWith('__Host-session='));
  if (!answer.ok || !cookie) throw new Error(`sign-in answered ${answer.status}: ${await answer.text()}`);
  return cookie.split(';')[0] ?? '';
}

export interface Scan {
  id: string;
  text: string;
  doneAt: string;
}

export const newScan = (text: string): Scan => ({
  id: `scan_${randomUUID()}`,
  text,
  doneAt: new Date().toISOString(),
});

/** Sends a scan over HTTP; resolved when the server acknowledged that it is stored. Throws where it did not. */
export async function sendScan(
  address: string,
  cookie: string,
  scan: Scan,
  signal?: AbortSignal,
): Promise<void> {
  const answer = await fetch(`${address}/api/v1/scans`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Cookie: cookie },
    body: JSON.stringify({
      scans: [{ ...scan, how: 'scanner', separators: 'sent', context: { kind: 'none' }, session: null }],
    }),
    signal,
  });
  const body = (await answer.json()) as {
    answers?: { id: string; ok: boolean; says?: string }[];
    detail?: string;
  };
  const [said] = body.answers ?? [];
  if (!answer.ok || said?.id !== scan.id || !said.ok) {
    throw new Refused(`${answer.status} ${said?.says ?? body.detail ?? ''}`);
  }
}

/** The server answered, and took nothing: a fault of the test itself. */
export class Refused extends Error {}
