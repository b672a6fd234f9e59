'use client';

import type { ChangedDay } from '@/app/_server/changed-day';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { dayChangesWords as words } from '@/lib/wording/day-changes';
import styles from './report.module.css';

/** Marks the day as it is shown here as seen; what came since the page was made stays news. */
export function MarkSeen({ mark }: { mark: ChangedDay['mark'] }) {
  const { act, pending, refusal } = useAct();
  return (
    <>
      <Button pending={pending} onClick={() => act('/api/v1/reports/looks', mark, words.marked)}>
        {words.mark}
      </Button>
      <span role="status" className={styles.refusal}>
        {refusal}
      </span>
    </>
  );
}
