import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { compareConstructs } from '@/lib/plans/compare';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { PLAN_STATUS_WORDS } from '@/lib/wording/plans';
import { ChangesList } from '../changes-list';
import styles from './case.module.css';

const TONES: Record<PlanVersion['status'], Tone> = {
  draft: 'attention',
  confirmed: 'good',
  superseded: 'neutral',
};

/** Every version with who wrote and confirmed it, and what changed against the one before. */
export function VersionList({
  versions,
  itemName,
  personName,
}: {
  /** The newest first. */
  versions: readonly PlanVersion[];
  itemName: (itemId: string) => string;
  personName: (personId: string) => string;
}) {
  return (
    <ol className={styles.versions} reversed>
      {versions.map((version, index) => {
        const before = versions[index + 1];
        const changes = before ? compareConstructs(before.construct, version.construct) : [];
        return (
          <li key={version.id}>
            <p>
              <strong>{`Version ${version.version}`}</strong>{' '}
              <Status tone={TONES[version.status]}>{PLAN_STATUS_WORDS[version.status]}</Status>
            </p>
            <p className={styles.soft}>
              {`Last written by ${personName(version.writtenBy)}, ${whenWords(version.writtenAt)}`}
              {version.status === 'draft'
                ? ''
                : ` · confirmed by ${personName(version.confirmedBy)}, ${whenWords(version.confirmedAt)}`}
            </p>
            {before ? (
              <Disclosure
                open={index === 0}
                summary={`What changed since version ${before.version}: ${changes.length === 1 ? '1 thing' : `${changes.length} things`}`}
              >
                <ChangesList
                  caption={`Changes from version ${before.version} to version ${version.version}`}
                  changes={changes}
                  itemName={itemName}
                  heads={[`Version ${before.version}`, `Version ${version.version}`]}
                />
              </Disclosure>
            ) : null}
          </li>
        );
      })}
    </ol>
  );
}

function whenWords(instant: string): string {
  const { date, time } = wallClock(instant);
  return `${dayWords(date)} at ${time}`;
}
