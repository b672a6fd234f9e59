import 'server-only';
import { createHash } from 'node:crypto';
import { answeredOnce, type KeyedWrite } from '@/db/answeredOnce';
import { settleAnswer } from '@/db/operations/api/settle-answer';
import { keptAnswer } from '@/db/queries/api/keptAnswer';
import { apiWords } from '@/lib/wording/api';
import { now } from './clock';
import { database } from './database';
import { jsonAnswer } from './json-answer';
import { problemResponse } from './problem-response';
import type { Access } from './session';

/** Writes that are being done now, by sender and key: the same one sent again waits for the first. */
const doing = new Map<string, Promise<unknown>>();

/**
 * Does a write that came with an `Idempotency-Key` (draft-ietf-httpapi-idempotency-key-header) once: sent again by the same
 * sender within a day, it is answered as it was; the same key with anything else asked is refused (422).
 */
export async function keyedWrite(
  access: Access,
  { key, request, body, status }: { key: string; request: Request; body: Uint8Array; status: number },
  handle: (access: Access) => Promise<Response>,
): Promise<Response> {
  if (!/^[\x21-\x7e]{1,255}$/.test(key)) return refused(400, 'key-form', apiWords.keyForm);
  const { pathname, search } = new URL(request.url);
  const write: KeyedWrite = {
    sender: access.token?.id ?? access.person.id,
    keyHash: digest(key),
    requestHash: digest(`${request.method} ${pathname}${search}\n`, body),
    at: now(),
    status,
  };
  const name = `${write.sender} ${write.keyHash}`;
  // one at a time: whoever waited looks again, since the first may have been refused
  for (let first = doing.get(name); first !== undefined; first = doing.get(name)) await first;
  const work = once(access, write, handle);
  const over = work.then(
    () => doing.delete(name),
    () => doing.delete(name),
  );
  doing.set(name, over);
  return work;
}

async function once(
  access: Access,
  write: KeyedWrite,
  handle: (access: Access) => Promise<Response>,
): Promise<Response> {
  const db = database();
  const kept = await keptAnswer(db, write);
  if (kept !== null) {
    if (kept.requestHash !== write.requestHash) return refused(422, 'key-used', apiWords.keyUsed);
    return again(kept);
  }
  const answer = await handle({ ...access, db: answeredOnce(access.db, write) });
  const done = answer.status >= 200 && answer.status < 300;
  const body = done && answer.status !== 204 ? await answer.clone().json() : null;
  await settleAnswer({ db, write, answer: done ? { status: answer.status, body } : null });
  return answer;
}

function again({ status, body }: { status: number; body: unknown }): Response {
  const answer: Response = status === 204 ? new Response(null, { status }) : jsonAnswer(body, { status });
  answer.headers.set('Idempotency-Replayed', 'true');
  return answer;
}

const refused = (status: number, code: string, message: string): Response =>
  problemResponse(status, 'Not done', [{ path: [], code, message }]);

const digest = (text: string, bytes: Uint8Array = new Uint8Array()): string =>
  createHash('sha256').update(text).update(bytes).digest('hex');
