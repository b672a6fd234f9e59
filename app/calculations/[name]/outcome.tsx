'use client';

import { ErrorState } from '@/app/_ui/error-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { AnswerView } from './answer-view';
import { headlinesOf } from './headline';
import type { LiveAnswer } from './use-live-answer';
import styles from './what-if.module.css';

/** How the calculation stands and its main figures, above everything, so that they are seen while one types. */
export function Headline({ name, answer, asking }: { name: string; answer: LiveAnswer; asking: boolean }) {
  const figures = headlinesOf(name, shownOf(answer));
  return (
    <div className={styles.headline} aria-busy={asking}>
      <div className={styles.standing}>
        <Standing answer={answer} asking={asking} />
      </div>
      {figures.length > 0 ? (
        <FigureRow>
          {figures.map((figure) => (
            <Figure key={figure.label} size="medium" {...figure} />
          ))}
        </FigureRow>
      ) : null}
    </div>
  );
}

/** What can be said: the answer, or what is known where there is none. */
function shownOf(answer: LiveAnswer): unknown {
  if (answer.kind !== 'output') return null;
  return answer.output.outcome === 'answered' ? answer.output.answer : answer.output.known;
}

/** What the calculation says: every figure, how it was worked, and what is missing where it cannot say. */
export function Outcome({ answer, asking }: { answer: LiveAnswer; asking: boolean }) {
  return (
    <Section title="What comes out">
      <div className={styles.result} aria-busy={asking}>
        <Result answer={answer} />
      </div>
    </Section>
  );
}

function Standing({ answer, asking }: { answer: LiveAnswer; asking: boolean }) {
  return (
    <span role="status">
      {asking ? (
        <Status tone="neutral">Working</Status>
      ) : answer.kind === 'unreachable' ? (
        <Status tone="stop">No answer</Status>
      ) : answer.kind === 'problem' ? (
        <Status tone="stop">Cannot be worked</Status>
      ) : answer.output.outcome === 'answered' ? (
        <Status tone="good">Answered</Status>
      ) : (
        <Status tone="unknown">Not established</Status>
      )}
    </span>
  );
}

function Result({ answer }: { answer: LiveAnswer }) {
  if (answer.kind === 'unreachable') {
    return (
      <ErrorState title="The server did not answer">
        Nothing is lost: change any value to ask again, or reload this page.
      </ErrorState>
    );
  }
  if (answer.kind === 'problem') {
    return (
      <p>
        {answer.problem.errors
          ? 'Put right what is named above; the answer follows at once.'
          : answer.problem.detail}
      </p>
    );
  }
  const { output } = answer;
  const shown = shownOf(answer);
  return (
    <>
      {output.outcome === 'notEstablished' ? (
        <div className={styles.missing}>
          <p>Without these it cannot be said:</p>
          <ul>
            {output.missing.map(({ path, what }) => (
              <li key={path.join('.')}>{what}</li>
            ))}
          </ul>
          {shown ? <p>What can be said all the same:</p> : null}
        </div>
      ) : null}
      {shown ? <AnswerView answer={shown as Record<string, unknown>} /> : null}
      {output.working.length > 0 ? (
        <ScrollRegion label="Working">
          <table className={styles.table}>
            <caption>Working</caption>
            <thead>
              <tr>
                <th scope="col">Step</th>
                <th scope="col">How</th>
                <th scope="col">Value</th>
              </tr>
            </thead>
            <tbody>
              {output.working.map((step, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: the steps of one answer, drawn whole each time
                <tr key={at}>
                  <th scope="row">{step.label}</th>
                  <td>{step.expression}</td>
                  <td className={styles.value}>{step.value}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      ) : null}
    </>
  );
}
