'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { linesOf } from '@/app/_ui/json-lines';
import type { ProposedChange } from '@/lib/theatre/planning/proposedChanges';

/** A plan that is worked out and not kept yet. */
export interface Proposal {
  id: string;
  changes: ProposedChange[];
  served: number;
  of: number;
  /** References of the cases that get no set. */
  unserved: string[];
  proven: boolean;
  /** Cases it serves more than taking what has been free longest would. */
  more: number;
}

export interface Progress {
  done: number;
  of: number;
  label: string;
}

type Line = Progress | { proposal: Proposal } | { problem: string };

const NOT_REACHED = 'The server can’t be reached; nothing was changed.';
const NOT_TO_THE_END = 'It was not planned to the end; nothing was changed. Try it again.';

/** Works out who would get which set, tells how far that is, can be stopped, and keeps the answer when told to. */
export function useProposal() {
  const router = useRouter();
  const { act, pending: keeping, refusal } = useAct();
  const [progress, setProgress] = useState<Progress | null>(null);
  const [proposal, setProposal] = useState<Proposal | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const stop = useRef<AbortController | null>(null);
  useEffect(() => () => stop.current?.abort(), []);

  async function work() {
    stop.current?.abort();
    const ours = new AbortController();
    stop.current = ours;
    setWrong(null);
    setProposal(null);
    setProgress({ done: 0, of: 1, label: 'the list' });
    try {
      setWrong(await ask(ours.signal, setProgress, setProposal));
    } catch {
      if (!ours.signal.aborted) setWrong(NOT_REACHED);
    } finally {
      if (stop.current === ours) setProgress(null);
    }
  }
  function cancel() {
    stop.current?.abort();
    stop.current = null;
    setProgress(null);
    setWrong('Stopped. Nothing was changed.');
  }
  async function keep() {
    if (proposal === null) return;
    const count = proposal.changes.length;
    const done = `The plan is kept: ${count} ${count === 1 ? 'case' : 'cases'} changed. What people chose stays.`;
    if ((await act('/api/v1/theatre-list/proposals/keep', { id: proposal.id }, done)) === undefined)
      setProposal(null);
    router.refresh();
  }
  const leave = () => setProposal(null);
  return { work, cancel, keep, leave, progress, proposal, keeping, wrong: wrong ?? refusal };
}

/** The reason where it came to nothing. */
async function ask(
  signal: AbortSignal,
  onProgress: (progress: Progress) => void,
  onProposal: (proposal: Proposal) => void,
): Promise<string | null> {
  const response = await fetch('/api/v1/theatre-list/proposals', { method: 'POST', signal });
  if (!response.ok || !response.body) {
    const answer = (await response.json().catch(() => null)) as { detail?: string } | null;
    return answer?.detail ?? `The server answered ${response.status}.`;
  }
  let wrong: string | null = NOT_TO_THE_END;
  for await (const line of linesOf<Line>(response.body)) {
    if (signal.aborted) return null;
    if ('done' in line) onProgress(line);
    else if ('problem' in line) return line.problem;
    else {
      onProposal(line.proposal);
      wrong = null;
    }
  }
  return wrong;
}
