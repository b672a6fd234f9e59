import { randomUUID } from 'node:crypto';

export const SIGN_IN = '/api/v1/people/sign-in';
export const SCANS = '/api/v1/scans';

/** Somebody who is signed in, and how what they do in that session is marked. */
export interface Acting {
  cookie: string;
  sessionId: string;
  ticket: string;
}

/** Signs a person in at a running server, as their browser would. */
export async function actingAs(address: string, name: string, password: string): Promise<Acting> {
  const answer = await fetch(address + SIGN_IN, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ name, password }),
  });
  const cookie = answer.headers.getSetCookie().find((line) => line.startsWith('__Host-session='));
  if (!answer.ok || !cookie) throw new Error(`sign-in answered ${answer.status}: ${await answer.text()}`);
  const { sessionId, ticket } = (await answer.json()) as Omit<Acting, 'cookie'>;
  return { cookie: cookie.split(';')[0] ?? '', sessionId, ticket };
}

/** A person's cookie at a running server. */
export const signIn = async (address: string, name: string, password: string): Promise<string> =>
  (await actingAs(address, name, password)).cookie;

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

/** A scan as a browser sends it. */
export const scanBody = (scan: Scan): string =>
  JSON.stringify({
    scans: [{ ...scan, how: 'scanner', separators: 'sent', context: { kind: 'none' }, session: null }],
  });

/** Sends a scan over HTTP; resolved when the server acknowledged that it is stored. Throws where it did not. */
export async function sendScan(
  address: string,
  cookie: string,
  scan: Scan,
  signal?: AbortSignal,
): Promise<void> {
  const answer = await fetch(address + SCANS, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Cookie: cookie },
    body: scanBody(scan),
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
