import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { VersionEffect, WholeMass } from '@/lib/changes/trial';
import { writeGrams } from '@/lib/quantities/mass';
import { WARNING_WORDS, warningTone } from '@/lib/wording/changes';
import styles from './changes.module.css';

/** What a version asks less of, what a whole set would weigh, and what each of its sets would lack and have over. */
export function VersionView({ effect }: { effect: VersionEffect }) {
  const { warnings, mass, sets, replaces, version } = effect;
  return (
    <>
      <h3 className={styles.head}>What it asks less of, or otherwise</h3>
      {replaces === null ? (
        <p>It is the first version: there is nothing it asks less of.</p>
      ) : warnings.length === 0 ? (
        <p>
          No must-have, no back-up and no class changes between version {replaces} and version {version}.
        </p>
      ) : (
        <ul className={styles.rows}>
          {warnings.map(({ kind, itemId, name, before, after }) => (
            <li key={`${kind} ${itemId}`}>
              <span className={styles.grow}>
                <Status tone={warningTone(kind)}>{WARNING_WORDS[kind]}</Status>{' '}
                <Link href={`/catalogue/${itemId}`}>{name}</Link>
              </span>
              <span>{`${before} → ${after}`}</span>
            </li>
          ))}
        </ul>
      )}
      <h3 className={styles.head}>Mass of a whole set</h3>
      <p>
        {mass.before ? `${massWords(mass.before)} → ` : ''}
        {massWords(mass.after)}
      </p>
      <h3 className={styles.head}>{`Sets that follow the configuration (${sets.length})`}</h3>
      {sets.length === 0 ? <p>None yet.</p> : null}
      <ul className={styles.subjects}>
        {sets.map(({ setId, code, follows, lacks, over, notCounted }) => (
          <li key={setId}>
            <div className={styles.subject}>
              <span className={styles.grow}>
                <Link href={`/sets/${setId}`}>{code}</Link>
                <span className={styles.small}>
                  {` follows version ${follows}${notCounted > 0 ? `; ${notCounted} of its lines are not counted and are taken as empty` : ''}`}
                </span>
              </span>
              <span>{`would lack ${piecesOf(lacks)}, have ${piecesOf(over)} over`}</span>
            </div>
            {lacks.length + over.length > 0 ? (
              <Disclosure summary="Which">
                <ul className={styles.rows}>
                  {lacks.map(({ itemId, name, pieces }) => (
                    <li key={`lacks ${itemId}`}>{`lacks ${pieces} × ${name}`}</li>
                  ))}
                  {over.map(({ itemId, name, pieces }) => (
                    <li key={`over ${itemId}`}>{`${pieces} × ${name} over`}</li>
                  ))}
                </ul>
              </Disclosure>
            ) : null}
          </li>
        ))}
      </ul>
    </>
  );
}

const piecesOf = (list: VersionEffect['sets'][number]['lacks']): string => {
  const count = list.reduce((sum, { pieces }) => sum + pieces, 0);
  return count === 0 ? 'nothing' : count === 1 ? '1 piece' : `${count} pieces`;
};

const LIMIT_WORDS = { under: 'under', near: 'near', over: 'over', notEstablished: 'not established against' };

function massWords({ grams, exact, limits }: WholeMass): string {
  const against = limits.map(({ limitGrams, state }) => `${LIMIT_WORDS[state]} ${writeGrams(limitGrams)}`);
  return `${exact ? '' : 'at least '}${writeGrams(grams)} (${against.join(', ')})`;
}
