import { againstContract } from '../../api/contract';
import type { Outcome } from '../target';
import { requireSentence } from '../target';
import type { ApiRequest } from './requests';

export interface ApiAnswer {
  status: number;
  contentType: string;
  text: string;
}

/**
 * Throws unless the answer is one the description has, no fault of the program, and, where it refuses, says why in sentences.
 */
export function judged({ method, address, body, headers }: ApiRequest, answer: ApiAnswer): Outcome {
  const { status, text } = answer;
  if (status >= 500) throw new Error(`answered ${status}: ${text.slice(0, 400)}`);
  const parts = answersOf(answer);
  // what is sent together is answered one by one: parts of it may be refused, and are told why
  const isWhole = parts.every(({ ok }) => ok);
  const wrong = againstContract({ method, address }, answer, isWhole ? asMatched(body, headers) : undefined);
  if (wrong.length > 0) throw new Error(wrong.join('; '));
  if (status < 400) {
    for (const { ok, says, sentence } of parts) if (!ok) requireSentence(sentence ?? says, answer.text);
    return isWhole ? 'taken' : 'refused';
  }
  const problem = JSON.parse(text) as { title?: unknown; detail?: unknown; errors?: { message?: unknown }[] };
  requireSentence(problem.detail ?? problem.title, problem);
  for (const { message } of problem.errors ?? []) requireSentence(message, problem);
  return 'refused';
}

/** The body as it is taken: `If-Match` says which revision was seen, whatever the body says. */
function asMatched(body: unknown, headers: Readonly<Record<string, string>>): unknown {
  const seen = /^"(\d+)"$/.exec(headers['If-Match'] ?? '')?.[1];
  if (seen === undefined || typeof body !== 'object' || body === null || Array.isArray(body)) return body;
  const name = ['baseRevision', 'revision', 'baseVersion'].find((one) => one in body);
  return name === undefined ? body : { ...body, [name]: Number(seen) };
}

/** What each entry of many that were sent at once was answered. */
function answersOf({ contentType, text }: ApiAnswer): Part[] {
  if (!contentType.startsWith('application/json') || text === '') return [];
  const members: unknown[] = Object.values((JSON.parse(text) ?? {}) as object);
  return members.flatMap((member) => (Array.isArray(member) ? member.filter(isPart) : []));
}

interface Part {
  ok: boolean;
  says?: unknown;
  sentence?: unknown;
}

const isPart = (one: unknown): one is Part =>
  typeof one === 'object' && one !== null && 'ok' in one && typeof one.ok === 'boolean';
