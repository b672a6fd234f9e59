'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { showToast } from '../_ui/toast';
import { type SentProblem, sendJson } from '../sets/_parts/send-json';

const NOT_REACHED = 'That did not reach the server, so nothing was saved. Try again.';

/** The loan an act is about, as it was seen. */
export interface SeenLoan {
  id: string;
  number: string;
  revision: number;
}

/**
 * One act on a loan at a time: sends it, keeps what is wrong with it at its fields, and shows the page as it then is.
 *
 * @param onDone closes the dialog the form stands in
 */
export function useLoanAct({ id, number, revision }: SeenLoan, onDone?: () => void) {
  const router = useRouter();
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);

  /** The answer, or `null` where it was refused. `done` is said once it is; `null` says nothing and stays. */
  async function send<T = unknown>(asked: object, done: string | null): Promise<T | null> {
    if (pending) return null;
    setPending(true);
    try {
      const answer = await sendJson<T>(`/api/v1/loans/${id}`, { baseRevision: revision, asked });
      if (answer.ok) {
        setProblems([]);
        if (done !== null) {
          showToast({ tone: 'good', word: 'Done', text: `${number}: ${done}` });
          onDone?.();
          router.refresh();
        }
        return answer.value;
      }
      // who was second sees the loan as it then is, and the form that was sent may be gone from it with its words
      if (answer.status === 409) {
        showToast({ tone: 'attention', word: 'Not done', text: answer.sentence });
        router.refresh();
      }
      setProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
      return null;
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
      return null;
    } finally {
      setPending(false);
    }
  }

  /** As `ProofDialog` wants it: the reason where it was refused, with the dialog left open. */
  async function sendProven(asked: object, done: string): Promise<string | undefined> {
    const answer = await sendJson(`/api/v1/loans/${id}`, { baseRevision: revision, asked });
    if (!answer.ok) return answer.sentence;
    showToast({ tone: 'good', word: 'Done', text: `${number}: ${done}` });
    router.refresh();
    return undefined;
  }

  return { send, sendProven, pending, problems, forget: () => setProblems([]) };
}
