import { setTimeout as sleep } from 'node:timers/promises';
import { ledgerWatchNow } from '@/app/_server/ledger-head';
import { Status } from '@/app/_ui/status';
import { printedHead } from '@/lib/ledger/heads';
import { wallClock } from '@/lib/theatre/localTime';
import { instantWords, standingFault } from '@/lib/wording/ledger';
import styles from './ledger.module.css';

const WAIT_MS = 100;

/** How far the chain was checked, what was found, and where its head was written outside. */
export async function ChainState() {
  const watch = ledgerWatchNow();
  if (watch === null) return null;
  // a long ledger that was just opened is not waited for
  await Promise.race([watch.look().catch(() => undefined), sleep(WAIT_MS)]);
  const standing = watch.standing();
  if (standing.checked === null) return <p className={styles.chain}>The chain is being verified.</p>;
  const { checked, fault, written, problem, head } = standing;
  return (
    <div className={styles.chain}>
      <p>
        {fault === null ? (
          <Status tone="good">verified up to entry {checked.seq.toLocaleString('en-GB')}</Status>
        ) : (
          <Status tone="stop">{standingFault(fault)}</Status>
        )}{' '}
        at {wallClock(checked.at).time}
      </p>
      {head === null ? null : (
        <p>
          Head of the ledger <span className={styles.hash}>{printedHead(head)}</span>
        </p>
      )}
      <p>
        {problem !== null ? (
          <Status tone="attention">the head could not be written to the second place: {problem}</Status>
        ) : written === null ? (
          'No head was written to the second place yet.'
        ) : (
          `Last written to the second place: entry ${written.seq.toLocaleString('en-GB')}, ${instantWords(written.at)}.`
        )}
      </p>
    </div>
  );
}
