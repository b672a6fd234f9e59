'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { newClientId } from '@/app/_outbox/new-id';
import { useScans } from '@/app/_scan/use-scans';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { pickWords } from '@/lib/wording/case-life';
import { thingWords } from '@/lib/wording/scans';

/** Before the check: nothing of what was picked is shown, and how it goes is said. */
export function BeginCheck({ booked, again }: { booked: { id: string; reference: string }; again: boolean }) {
  const { act, pending, refusal } = useAct();
  // one id for however many presses: the check is begun once
  const [checkId] = useState(() => newClientId('check'));
  const [said, setSaid] = useState('');
  // what is scanned while the check is being begun must not lead away from here, nor count as seen
  useScans(
    (scan) => {
      if (scan.verdict !== 'understood' && scan.verdict !== 'already' && !scan.another) return 'passed';
      setSaid(pickWords.beginFirst(thingWords(scan.meaning)));
      return 'taken';
    },
    { takes: 'everything' },
  );
  return (
    <section className={kitStyles.next} aria-label="Begin the check">
      <p>
        Scan everything that lies with the kit: every set, every pouch, every sterile pack. You are not shown
        what was picked; where the two of you differ is shown when you have finished.
      </p>
      <Button
        kind="primary"
        size="bench"
        className={kitStyles.have}
        pending={pending}
        onClick={() =>
          act(`/api/v1/cases/${booked.id}/kit/check`, { checkId }, 'Scan what lies with the kit.')
        }
      >
        {again ? 'Check once more' : 'Begin the check'}
      </Button>
      <p role="status" className={kitStyles.said}>
        {said}
      </p>
      {refusal ? <p role="alert">{refusal}</p> : null}
    </section>
  );
}
