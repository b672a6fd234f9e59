import Link from 'next/link';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { SetOnFile } from '@/db/queries/sets';
import type { ItemId } from '@/lib/identity/ids';
import type { SetStanding } from '@/lib/sets/standing';
import { capitalised } from '@/lib/wording/numbers';
import { CONDITION_WORDS, foreignStops, stopAbout, stopWords } from '@/lib/wording/sets';
import { ClassMark } from '../_parts/class-mark';
import styles from './set.module.css';

/** What is short and what that stops; what lies in the set and does not belong there. */
export function ShortSection({
  set,
  standing,
  name,
  now,
}: {
  set: SetOnFile;
  standing: SetStanding;
  name: (id: ItemId) => string;
  now: string;
}) {
  const short = set.lines
    .filter(({ found, expected }) => found !== null && found < expected)
    .sort(
      (a, b) => a.mustHaveClass - b.mustHaveClass || a.layer - b.layer || a.row - b.row || a.slot - b.slot,
    );
  const over = set.lines.filter(({ found, expected }) => (found ?? 0) > expected);
  if (short.length === 0 && over.length === 0 && set.foreign.length === 0 && standing.unsound === 0)
    return null;
  return (
    <Section
      title="What is short, and what that stops"
      note={short.length === 0 ? 'nothing is short' : undefined}
    >
      {standing.stops.length > 0 ? (
        <ul className={styles.stops}>
          {standing.stops.map((stop) => (
            <li key={stopAbout(stop, now)}>
              <Status tone="stop">{stop.kind === 'case' ? 'stops a case' : 'stops a construct'}</Status>
              <p>
                {stop.kind === 'case' ? (
                  <Link href={`/cases/${stop.caseId}/kit`}>{stopAbout(stop, now)}</Link>
                ) : (
                  <strong>{stopAbout(stop, now)}</strong>
                )}
                : {stopWords(stop, name)}. Other sets of this kind are not counted in.
              </p>
            </li>
          ))}
        </ul>
      ) : short.length > 0 ? (
        <p>What is short stops no promised construct and no booked case.</p>
      ) : null}
      {short.length > 0 ? (
        <ul className={styles.shortList} aria-label="Short lines">
          {short.map((line) => (
            <li key={line.id}>
              <span className={styles.count}>{`${line.expected - (line.found ?? 0)} short`}</span>
              <span>
                {name(line.itemId)}
                <span
                  className={styles.soft}
                >{` (layer ${line.layer}, row ${line.row}, slot ${line.slot})`}</span>
              </span>
              <ClassMark mustHaveClass={line.mustHaveClass} />
              {line.mustHaveClass === 2 ? (
                <span className={styles.soft}>
                  {line.substitutes.length === 0
                    ? 'no substitute named'
                    : `substitutes: ${line.substitutes.map(name).join(', ')}`}
                </span>
              ) : null}
            </li>
          ))}
        </ul>
      ) : null}
      <ul className={styles.shortList} aria-label="Pieces that do not belong, or are put aside">
        {set.foreign.map(({ itemId, quantity, note }) => (
          <li key={`${itemId}${note}`}>
            <Status tone="attention">{`${quantity} foreign`}</Status>
            <span>
              {name(itemId)}
              {note ? <span className={styles.soft}>{` (${note})`}</span> : null}
            </span>
          </li>
        ))}
        {over.map((line) => (
          <li key={line.id}>
            <Status tone="attention">{`${(line.found ?? 0) - line.expected} over`}</Status>
            <span>{name(line.itemId)}</span>
          </li>
        ))}
        {set.lines
          .filter(({ unsound }) => unsound > 0)
          .map((line) => (
            <li key={line.id}>
              <Status tone="attention">{`${line.unsound} put aside`}</Status>
              <span>{`${name(line.itemId)}: ${CONDITION_WORDS[line.condition]}`}</span>
            </li>
          ))}
      </ul>
      {standing.foreign > 0 ? <p>{capitalised(foreignStops(standing.foreign))}</p> : null}
    </Section>
  );
}
