'use client';

import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import styles from './exchange.module.css';
import type { Choices, ExchangeView } from './exchange-view';

/** What looks damaged by an office program: what it suspects and why, to be answered for all cells like it. */
export function Questions({
  view,
  choices,
  pending,
  onChange,
}: {
  view: ExchangeView;
  choices: Choices;
  pending: boolean;
  onChange: (part: Partial<Choices>) => void;
}) {
  if (view.questions.length === 0) return null;
  return (
    <Section title="What looks damaged" note="nothing is repaired by itself">
      {view.questions.map((question) => (
        <div key={question.key} className={styles.question}>
          <h3>
            <Status tone="unknown">{`${question.heading}: ${question.damage.toLowerCase()}`}</Status>
          </h3>
          <p>{question.why}</p>
          <ul className={styles.cells}>
            {question.cells.map(({ row, value, repaired }) => (
              <li key={row}>{`row ${row}: ${value}${repaired === null ? '' : ` → ${repaired}`}`}</li>
            ))}
            {question.more > 0 ? <li>{`and ${question.more} more`}</li> : null}
          </ul>
          <ButtonRow>
            {question.canRepair ? (
              <Button
                pending={pending}
                onClick={() => onChange({ repaired: [...choices.repaired, question.key] })}
              >
                {question.cells.length + question.more === 1
                  ? 'Take it as offered'
                  : 'Take all of these as offered'}
              </Button>
            ) : null}
            {question.canKeep ? (
              <Button pending={pending} onClick={() => onChange({ kept: [...choices.kept, question.key] })}>
                {question.cells.length + question.more === 1
                  ? 'It is right as it stands'
                  : 'They are right as they stand'}
              </Button>
            ) : null}
          </ButtonRow>
        </div>
      ))}
    </Section>
  );
}
