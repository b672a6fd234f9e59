'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { newClientId } from '@/app/_outbox/new-id';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import type { CountMoment } from '@/lib/theatreCounts/act';
import { MOMENT_WORDS } from '@/lib/wording/theatre-counts';

/** Begins the first or the final count; a count can be made again, and the later one is the one that counts. */
export function BeginCounts({
  booked,
  hasFirst,
  hasFinal,
}: {
  booked: { id: string; reference: string };
  hasFirst: boolean;
  hasFinal: boolean;
}) {
  const { act, pending, refusal } = useAct();
  const [countId] = useState(() => newClientId('theatreCount'));
  const begin = (moment: CountMoment) => () =>
    act(
      `/api/v1/cases/${booked.id}/theatre-counts`,
      { countId, moment },
      `${MOMENT_WORDS[moment]} begun: count with another person.`,
    );
  return (
    <section className={kitStyles.next} aria-label="Begin a count">
      <p>
        Two people count together, set by set, line by line; each figure is what lies there now. Both prove
        who they are when it is closed. What ought to be there is shown afterwards.
      </p>
      <div className={kitStyles.acts}>
        <Button kind={hasFirst ? 'plain' : 'primary'} size="bench" pending={pending} onClick={begin('first')}>
          {hasFirst ? 'First count again' : 'Begin the first count'}
        </Button>
        {hasFirst ? (
          <Button kind="primary" size="bench" pending={pending} onClick={begin('final')}>
            {hasFinal ? 'Final count again' : 'Begin the final count'}
          </Button>
        ) : null}
      </div>
      {refusal ? <p role="alert">{refusal}</p> : null}
    </section>
  );
}
