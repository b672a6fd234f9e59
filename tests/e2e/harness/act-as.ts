import type { BrowserContext, Page } from '@playwright/test';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { type DemoPerson, PEOPLE } from '@/seed/hospital/people';

/** Who acts in a test that says nothing of it. */
export const FIRST_TECHNICIAN: DemoPerson = 'person_wren-adeyemi';

const SESSION = '__Host-session';
const sessions = new Map<string, string>();

let home = '';

/** Acts as somebody of the demo from now on, in every page of this browser window. */
export async function actAs(where: Page | BrowserContext, person: DemoPerson): Promise<void> {
  const context = 'context' in where ? where.context() : where;
  await context.addCookies([await sessionCookie(home, person)]);
}

/** The cookie of a session of this person, signed in once for all tests of a file. Its server is the one `actAs` means. */
export async function sessionCookie(address: string, person: DemoPerson) {
  home = address;
  const key = `${address} ${person}`;
  const token = sessions.get(key) ?? (await signIn(address, person));
  sessions.set(key, token);
  const { hostname } = new URL(address);
  return {
    name: SESSION,
    value: token,
    domain: hostname,
    path: '/',
    expires: -1,
    httpOnly: true,
    secure: true,
    sameSite: 'Lax' as const,
  };
}

/** Signs in as a person would, and waits as a person would when somebody mistyped before. */
async function signIn(address: string, person: DemoPerson): Promise<string> {
  const name = PEOPLE.find(({ id }) => id === person)?.name;
  const answer = await fetch(`${address}/api/v1/people/sign-in`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ name, password: DEMO_PASSWORD }),
  });
  if (answer.status === 429) {
    await new Promise((resolve) => setTimeout(resolve, Number(answer.headers.get('retry-after')) * 1000));
    return signIn(address, person);
  }
  const kept = answer.headers.getSetCookie().find((cookie) => cookie.startsWith(`${SESSION}=`));
  const token = kept?.split(';')[0]?.slice(SESSION.length + 1);
  if (!answer.ok || !token)
    throw new Error(`${person} could not sign in: ${answer.status} ${await answer.text()}`);
  return token;
}
