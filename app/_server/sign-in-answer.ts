import 'server-only';
import type { SignedIn } from '@/db/operations/people/sign-in';
import { ROLE_WORDS } from '@/lib/people/role';
import { peopleWords } from '@/lib/wording/people';
import type { Answer, Refused } from './answer';
import { jsonAnswer } from './json-answer';
import { rememberBrowser } from './place';
import { problemResponse } from './problem-response';
import { keepSession } from './session';

/** What a page is told of the person who acts in it from now on. */
export interface ActingAnswer {
  person: { id: string; name: string; role: string };
  sessionId: string;
  ticket: string;
}

/** The new session for the browser and the page, or why there is none, with the seconds to wait in `Retry-After`. */
export async function signInAnswer(
  outcome: SignedIn,
  wrong: (waitSeconds: number) => string,
): Promise<Answer<ActingAnswer>> {
  if (!outcome.ok) return refusedAnswer(outcome.check, wrong);
  const { id, token, ticket, person } = outcome.value;
  await keepSession({ token });
  await rememberBrowser(token);
  const answer: ActingAnswer = {
    person: { id: person.id, name: person.name, role: ROLE_WORDS[person.role] },
    sessionId: id,
    ticket,
  };
  return jsonAnswer(answer);
}

/** A secret that was wrong (401), or came too soon after a wrong one and was not looked at (429). */
export function refusedAnswer(
  { tooSoon, waitSeconds }: { tooSoon: boolean; waitSeconds: number },
  wrong: (waitSeconds: number) => string,
): Refused {
  const message = tooSoon ? peopleWords.tooSoon(waitSeconds) : wrong(waitSeconds);
  const answer = problemResponse(
    tooSoon ? 429 : 401,
    tooSoon ? 'Too soon' : 'Not signed in',
    [{ path: ['secret'], code: tooSoon ? 'too-soon' : 'wrong', message }],
    { waitSeconds },
  );
  if (waitSeconds > 0) answer.headers.set('Retry-After', String(waitSeconds));
  return answer;
}
