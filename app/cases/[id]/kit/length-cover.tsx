import { enter } from '@/app/_server/enter';
import { highsSolver } from '@/app/_server/solver/highs';
import { Status } from '@/app/_ui/status';
import { Working } from '@/app/_ui/working';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { writeMm } from '@/lib/quantities/length';
import { calculationWords } from '@/lib/wording/calculations';
import { coverWords, topUpSentence } from '@/lib/wording/kit';
import { percentWord } from '@/lib/wording/numbers';
import styles from './kit.module.css';

/** The joint length cover with its top-up. Comes after the rest of the page: the top-up can take some tenths of a second. */
export async function LengthCover({ caseId }: { caseId: string }) {
  const { db } = await enter('/cases/[id]/kit');
  const loaded = await loadKitOfCase(db, caseId, { solver: highsSolver, lengthCover: 'withTopUp' });
  const figure = loaded.kind === 'kit' ? loaded.answer.kit.lengthCover : null;
  if (!figure) return <p>The plan has no screw whose length could vary.</p>;
  const words = calculationWords['length-cover'];
  const reached = figure.cover !== null && figure.cover >= figure.target;
  return (
    <div className={styles.cover}>
      <p className={styles.coverFigure}>
        {figure.cover === null ? (
          <Status tone="unknown">Not established: a length is not stated</Status>
        ) : (
          coverWords(figure)
        )}
      </p>
      <div>
        {figure.cover === null ? null : (
          <p>
            <Status tone={reached ? 'good' : 'attention'} look="plain">
              {reached
                ? `At or above the target of ${percentWord(figure.target, 0)}`
                : `Below the target of ${percentWord(figure.target, 0)}`}
            </Status>
          </p>
        )}
        {reached ? null : <p>{topUpSentence(figure)}</p>}
        {figure.limitedBy.length > 0 && !reached ? (
          <p className={styles.aside}>
            Limited by{' '}
            {figure.limitedBy
              .slice(0, 3)
              .map(({ family, lengthUm }) => `${family}, ${writeMm(lengthUm)} mm`)
              .join('; ')}
            .
          </p>
        ) : null}
        <Working
          working={{
            calculation: 'length-cover',
            inputs: [
              { label: 'Target', value: percentWord(figure.target, 0) },
              { label: 'Method', value: figure.method || 'none' },
            ],
            formula: words.formula.join(' '),
            assumptions: words.assumptions,
            sources: words.sources.map((source) => source.text),
            input: figure.input,
          }}
        />
      </div>
    </div>
  );
}
