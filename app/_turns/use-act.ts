'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { showToast } from '../_ui/toast';
import { sendJson } from '../sets/_parts/send-json';

const NOT_REACHED = 'That did not reach the server. Press again: what is sent twice is done once.';

/** One act at a time from a screen: sends it, says what came of it, and shows the page as it then is. */
export function useAct() {
  const router = useRouter();
  const [pending, setPending] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);

  /** Answers the reason where it was refused; a dialog shows that and stays open. */
  async function act<T>(
    address: string,
    body: object,
    done: string | ((value: T) => string),
  ): Promise<string | undefined> {
    if (pending) return 'The act before is still on its way.';
    setPending(true);
    setRefusal(null);
    try {
      const answer = await sendJson<T & { planned?: { sentence: string } | null }>(address, body);
      router.refresh();
      if (answer.ok) {
        showToast({ tone: 'good', word: 'Done', text: typeof done === 'string' ? done : done(answer.value) });
        if (answer.value?.planned)
          showToast({ tone: 'neutral', word: 'Planned anew', text: answer.value.planned.sentence });
        return undefined;
      }
      // who was second sees the page as it then is, and the button that was pressed may be gone from it with its words
      if (answer.status === 409) showToast({ tone: 'attention', word: 'Not done', text: answer.sentence });
      setRefusal(answer.sentence);
      return answer.sentence;
    } catch {
      setRefusal(NOT_REACHED);
      return NOT_REACHED;
    } finally {
      setPending(false);
    }
  }
  return { act, pending, refusal, forget: () => setRefusal(null) };
}
