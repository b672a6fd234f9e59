import { enter } from '@/app/_server/enter';
import { recordToGive } from '@/app/_server/use-record';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { standingOfUse } from '@/db/queries/usage/standing';
import { NO_REASON, reasonWords } from '@/lib/wording/reasons';
import { DELAY_STEP_WORDS, delayMinutes, outcomeWords } from '@/lib/wording/usage';
import styles from './case.module.css';

/** What held the case up and what was wasted in it, by the hospital's own reasons. */
export async function UseReasons({ caseId, recordHref }: { caseId: string; recordHref: string | null }) {
  const { db } = await enter('/cases/[id]');
  // most cases have no record of use, and none is worked out for them
  const { entries } = await standingOfUse(db, caseId);
  const given = entries === 0 ? null : await recordToGive(db, caseId);
  const wasted = (given?.lines ?? []).filter(({ waste, takenBack }) => waste && takenBack === null);
  const delays = given?.delays ?? [];
  if (delays.length === 0 && wasted.length === 0 && recordHref === null) return null;
  return (
    <Section
      title="Delay and waste"
      note={delays.length + wasted.length === 0 ? 'none is recorded' : 'by their reasons'}
      actions={recordHref === null ? null : <LinkButton href={recordHref}>Record a delay</LinkButton>}
    >
      {delays.length + wasted.length === 0 ? null : (
        <ul className={styles.said} aria-label="Delay and waste">
          {delays.map((delay) => (
            <li key={delay.entryId}>
              {[
                `Delay, ${delayMinutes(delay.minutes)}`,
                ...(delay.step === null ? [] : [DELAY_STEP_WORDS[delay.step]]),
                ...(delay.about === null ? [] : [delay.about]),
                `reason ${delay.reason ? reasonWords(delay.reason) : NO_REASON}`,
                ...(delay.note === null ? [] : [`“${delay.note}”`]),
              ].join(', ')}
            </li>
          ))}
          {wasted.map((line) => (
            <li key={line.entryId}>
              {`${line.quantity > 1 ? `${line.quantity} × ` : ''}${line.itemName}, ${outcomeWords(line.outcome, line.lostAt).toLowerCase()}, reason ${line.reason ? reasonWords(line.reason) : NO_REASON}`}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
