'use client';

import { useState } from 'react';
import type { FieldProblem } from '@/app/_ui/field-problem';

/** What sending a form answers: what it made, or everything that is wrong with it. */
type Said = { ok: true } | { ok: false; problems: FieldProblem[] };

/**
 * The sending of a form in which a rule or an exception is drafted: which of its acts is under way, and what was wrong with
 * the last one. A server that can't be reached is said like any other problem, and nothing typed is lost.
 */
export function useDrafting<Act extends string>() {
  const [problems, setProblems] = useState<FieldProblem[]>([]);
  const [pending, setPending] = useState<Act | null>(null);

  async function send<T extends Said>(
    act: Act,
    ask: () => Promise<T>,
  ): Promise<Extract<T, { ok: true }> | null> {
    setPending(act);
    try {
      const said = await ask();
      setProblems(said.ok ? [] : said.problems);
      return said.ok ? (said as Extract<T, { ok: true }>) : null;
    } catch {
      setProblems([
        {
          path: '',
          sentence: 'That did not reach the server, so nothing was kept. Check the connection and try again.',
        },
      ]);
      return null;
    } finally {
      setPending(null);
    }
  }

  return { problems, pending, send };
}
