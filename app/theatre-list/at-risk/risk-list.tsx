'use client';

import Link from 'next/link';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import styles from './at-risk.module.css';
import type { RiskRow } from './risk-rows';
import { WaysOut } from './ways-out';

/** The cases at risk, the worst first; what can be done about one is opened below it. */
export function RiskList({ rows }: { rows: RiskRow[] }) {
  const [open, setOpen] = useUrlParam('open');
  return (
    <ol className={styles.list} aria-label="Cases at risk">
      {rows.map((row) => (
        <li key={row.id} className={styles.row} data-stops={row.stops || undefined}>
          <div className={styles.which}>
            <p className={styles.reference}>
              <Link href={`/cases/${row.id}`}>{row.reference}</Link>
            </p>
            <p>
              <strong>{row.when}</strong>
              {`, ${row.theatre}`}
            </p>
            <p
              className={styles.soft}
            >{`${row.what}; ${row.surgeon}. Urgency: ${row.urgency.toLowerCase()}.`}</p>
          </div>
          <div className={styles.why}>
            <Status tone={row.tone}>{row.word}</Status>
            <p>{row.sentence}</p>
            {row.besides.map((sentence) => (
              <p key={sentence} className={styles.soft}>
                {sentence}
              </p>
            ))}
            <p className={styles.needed}>{row.needed}</p>
          </div>
          <div className={styles.acts}>
            {row.hasWaysOut ? (
              <Button
                aria-expanded={open === row.id}
                aria-controls={`ways-out-${row.id}`}
                onClick={() => setOpen(open === row.id ? '' : row.id)}
              >
                Ways out
                <VisuallyHidden>{`for ${row.reference}`}</VisuallyHidden>
              </Button>
            ) : null}
            {row.link === null ? null : (
              <Link href={row.link.href}>
                {row.link.label}
                <VisuallyHidden>{` of ${row.reference}`}</VisuallyHidden>
              </Link>
            )}
          </div>
          {row.hasWaysOut && open === row.id ? (
            <section
              id={`ways-out-${row.id}`}
              className={styles.ways}
              aria-label={`Ways out for ${row.reference}`}
            >
              <WaysOut caseId={row.id} reference={row.reference} onTaken={() => setOpen('')} />
            </section>
          ) : null}
        </li>
      ))}
    </ol>
  );
}
