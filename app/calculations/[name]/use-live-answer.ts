'use client';

import { useEffect, useState } from 'react';
import type { ProblemDetails } from '@/lib/calculations/problemDetails';
import type { CalculationOutput } from '@/lib/calculations/registry';

export type LiveAnswer =
  | { kind: 'output'; output: CalculationOutput }
  | { kind: 'problem'; problem: ProblemDetails }
  /** The server could not be reached or did not answer as it should. */
  | { kind: 'unreachable' };

const PAUSE_MS = 250;

/**
 * The answer to an input, asked again after each pause in typing. The last answer stays until the next one is there;
 * `asking` says that it is out of date.
 */
export function useLiveAnswer(
  name: string,
  input: unknown,
  first: LiveAnswer,
): { answer: LiveAnswer; asking: boolean } {
  const text = JSON.stringify(input);
  const [state, setState] = useState({ answer: first, for: text });

  useEffect(() => {
    if (state.for === text) return;
    const stop = new AbortController();
    const timer = setTimeout(async () => {
      const answer = await ask(name, text, stop.signal);
      if (!stop.signal.aborted) setState({ answer, for: text });
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [name, text, state.for]);

  return { answer: state.answer, asking: state.for !== text };
}

async function ask(name: string, text: string, signal: AbortSignal): Promise<LiveAnswer> {
  try {
    const response = await fetch(`/api/v1/calculations/${encodeURIComponent(name)}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: text,
      signal,
    });
    const body = await response.json();
    return response.ok ? { kind: 'output', output: body } : { kind: 'problem', problem: body };
  } catch {
    return { kind: 'unreachable' };
  }
}
