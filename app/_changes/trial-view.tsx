import type { SubjectChange, Trial } from '@/lib/changes/trial';
import { lookedSentence, TURN_HEADS } from '@/lib/wording/changes';
import styles from './changes.module.css';
import { PairsView } from './pairs-view';
import { SubjectList } from './subject-list';
import { VersionView } from './version-view';

const TURNS: SubjectChange['turn'][] = ['worse', 'otherwise', 'better'];

/** A trial's result: the version's own warnings, the pairs of the catalogue, then each plan that would stand otherwise. */
export function TrialView({ trial }: { trial: Trial }) {
  const { version, pairs, changed } = trial;
  return (
    <div className={styles.stack}>
      {version ? <VersionView effect={version} /> : null}
      {pairs ? <PairsView pairs={pairs} /> : null}
      <p>{lookedSentence(trial)}</p>
      {TURNS.map((turn) => {
        const own = changed.filter((one) => one.turn === turn);
        return own.length === 0 ? null : (
          <div key={turn}>
            <h3 className={styles.head}>{`${TURN_HEADS[turn]} (${own.length})`}</h3>
            <SubjectList subjects={own} />
          </div>
        );
      })}
    </div>
  );
}
