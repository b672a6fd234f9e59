import Link from 'next/link';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { LoanOnScreen, LoanTray } from '@/db/queries/loans/loanOnScreen';
import { writeGrams } from '@/lib/quantities/mass';
import { stepWords } from '@/lib/wording/sets';
import styles from '../loans.module.css';

/** The trays: what each weighs against the limits, its tag, and where it is. */
export function Trays({ found }: { found: LoanOnScreen }) {
  const { trays, massLimitsGrams } = found;
  return (
    <Section title="Trays" note={`limits ${massLimitsGrams.map(writeGrams).join(', ')}`}>
      <ul className={styles.plain} aria-label="Trays of the loan">
        {trays.map((tray) => (
          <li key={tray.tray}>
            <strong>{`Tray ${tray.tray}`}</strong>
            <Mass grams={tray.gramsIn} label="as it came" limits={massLimitsGrams} />
            {tray.gramsOut === null ? null : (
              <Mass grams={tray.gramsOut} label="as it goes" limits={massLimitsGrams} />
            )}
            <Where tray={tray} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

function Mass({ grams, label, limits }: { grams: number | null; label: string; limits: readonly number[] }) {
  if (grams === null)
    return (
      <Status tone="unknown" look="plain">
        {`${label}: not weighed`}
      </Status>
    );
  const over = limits.filter((limit) => grams > limit).at(-1);
  return over === undefined ? (
    <span>{`${writeGrams(grams)} ${label}`}</span>
  ) : (
    <Status
      tone="attention"
      look="plain"
    >{`${writeGrams(grams)} ${label}, above ${writeGrams(over)}`}</Status>
  );
}

function Where({ tray }: { tray: LoanTray }) {
  if (tray.set === null) return <span className={styles.soft}>no ownership tag yet</span>;
  const { id, code, step, heldBecause, withdrawn } = tray.set;
  return (
    <>
      <Link href={`/sets/${id}`}>{code}</Link>
      <Status tone={withdrawn ? 'neutral' : step === 'held' ? 'stop' : 'neutral'} look="plain">
        {withdrawn ? 'gone back' : stepWords(step, heldBecause)}
      </Status>
    </>
  );
}
