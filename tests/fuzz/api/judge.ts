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
export function judged({ method, address, body }: ApiRequest, answer: ApiAnswer): Outcome {
  const { status, text } = answer;
  if (status >= 500) throw new Error(`answered ${status}: ${text.slice(0, 400)}`);
  const wrong = againstContract({ method, address }, answer, body);
  if (wrong.length > 0) throw new Error(wrong.join('; '));
  if (status < 400) return 'taken';
  const problem = JSON.parse(text) as { title?: unknown; detail?: unknown; errors?: { message?: unknown }[] };
  requireSentence(problem.detail ?? problem.title, problem);
  for (const { message } of problem.errors ?? []) requireSentence(message, problem);
  return 'refused';
}
