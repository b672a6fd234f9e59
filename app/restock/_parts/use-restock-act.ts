'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { showToast } from '@/app/_ui/toast';
import { type SentProblem, sendJson } from '@/app/sets/_parts/send-json';

const NOT_REACHED = 'That did not reach the server, so nothing was saved. Try again.';

/**
 * One act at a time on a proposal, an order or terms: sends it, keeps what is wrong with it at its fields, and shows the page
 * as it then is.
 */
export function useRestockAct() {
  const router = useRouter();
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [pending, setPending] = useState(false);

  /** The answer, or `null` where it was refused. */
  async function send<T>(address: string, body: object, done: (value: T) => string): Promise<T | null> {
    if (pending) return null;
    setPending(true);
    try {
      const answer = await sendJson<T>(address, body);
      if (answer.ok) {
        setProblems([]);
        showToast({ tone: 'good', word: 'Done', text: done(answer.value) });
        router.refresh();
        return answer.value;
      }
      // who was second sees it as it then is
      if (answer.status === 409) router.refresh();
      setProblems(answer.problems.length > 0 ? answer.problems : [{ path: '', sentence: answer.sentence }]);
      return null;
    } catch {
      setProblems([{ path: '', sentence: NOT_REACHED }]);
      return null;
    } finally {
      setPending(false);
    }
  }

  return { send, pending, problems, forget: () => setProblems([]) };
}
