'use client';

import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import type { SaveState } from './plan-saver';
import styles from './planner.module.css';

const SAID: Record<SaveState['kind'], { tone: Tone; word: string }> = {
  saved: { tone: 'good', word: 'Saved' },
  waiting: { tone: 'neutral', word: 'Not saved yet' },
  saving: { tone: 'neutral', word: 'Saving' },
  unreachable: { tone: 'attention', word: 'Not saved: the server does not answer. Kept in this browser.' },
  refused: { tone: 'stop', word: 'Not saved' },
  conflict: { tone: 'stop', word: 'Not saved: somebody else changed this plan' },
};

/** Whether what is on screen is in the database. */
export function SaveStatus({ state, begun }: { state: SaveState; begun: boolean }) {
  const { tone, word } = SAID[state.kind];
  const nothingYet = state.kind === 'saved' && !begun;
  return (
    <span className={styles.saveStatus} role="status" data-save={nothingYet ? 'empty' : state.kind}>
      <Status tone={nothingYet ? 'neutral' : tone} look="plain">
        {nothingYet ? 'Nothing to save yet' : word}
      </Status>
      {state.kind === 'refused' ? <span>{state.sentences.join(' ')}</span> : null}
    </span>
  );
}
