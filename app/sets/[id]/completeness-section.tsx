import { Figure, FigureRow } from '@/app/_ui/figure';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { WorkingView } from '@/app/_ui/working';
import type { ItemId } from '@/lib/identity/ids';
import { writeGrams } from '@/lib/quantities/mass';
import type { SetStanding } from '@/lib/sets/standing';
import { calculationWords } from '@/lib/wording/calculations';
import { percentOf } from '@/lib/wording/numbers';
import {
  BUILDABLE_NOW_TONES,
  BUILDABLE_NOW_WORDS,
  buildableSentence,
  maySendWords,
  ofWords,
  unmetWords,
} from '@/lib/wording/sets';
import styles from './set.module.css';

/** The three senses of completeness, each explained, and who may send the set as it is. */
export function CompletenessSection({
  standing,
  setId,
  name,
}: {
  standing: SetStanding;
  setId: string;
  name: (id: ItemId) => string;
}) {
  const { figures, uncounted, promises } = standing;
  const { pieces, mustHaves, mass } = figures;
  const send = maySendWords(standing);
  const built = promises.filter(({ outcome }) => outcome === 'yes').length;
  const unknown =
    uncounted > 0 ? <Status tone="unknown">{`${uncounted} lines not counted`}</Status> : undefined;
  return (
    <Section title="How complete it is" id={`complete-${setId}`}>
      <FigureRow>
        <Figure
          size="medium"
          label="Pieces"
          value={ofWords(pieces.found, pieces.expected)}
          status={unknown}
          note={uncounted > 0 ? `at least ${percentOf(pieces.percent)}` : percentOf(pieces.percent)}
          working={workingOf(standing, 'Pieces', setId)}
        />
        <Figure
          size="medium"
          label="Must-haves"
          value={ofWords(mustHaves.met, mustHaves.of)}
          note="lines of class 1 and 2 at or above their minimum, or carried"
          working={workingOf(standing, 'Must-haves', setId)}
        />
        <Figure
          size="medium"
          label="Buildable"
          value={promises.length === 0 ? 'none promised' : ofWords(built, promises.length)}
          note={
            promises.length === 0
              ? 'its configuration promises no construct'
              : 'constructs it is meant to allow'
          }
        />
        <Figure
          size="medium"
          label="Mass"
          value={mass.exact ? writeGrams(mass.foundGrams) : `≥ ${writeGrams(mass.foundGrams)}`}
          note={mass.limits
            .map(({ limitGrams, state }) => `${LIMIT_WORDS[state]} ${writeGrams(limitGrams)}`)
            .join(' · ')}
          working={workingOf(standing, 'Mass found', setId)}
        />
      </FigureRow>
      <div className={styles.send}>
        <Status tone={send.tone} look="strong">
          {send.who}
        </Status>
        <p>{send.because}</p>
        <p className={styles.soft}>{send.next}</p>
      </div>
      {promises.length > 0 ? (
        <ul className={styles.promises} aria-label="Promised constructs">
          {promises.map((promise) => (
            <li key={promise.name}>
              <Status tone={BUILDABLE_NOW_TONES[promise.outcome]}>
                {BUILDABLE_NOW_WORDS[promise.outcome]}
              </Status>
              <div>
                <strong>{promise.name}</strong>
                <p>{buildableSentence(promise, name)}</p>
              </div>
            </li>
          ))}
        </ul>
      ) : null}
      {mustHaves.lines.some(({ state }) => state !== 'notCounted') ? (
        <ul className={styles.unmet}>
          {unmetWords(mustHaves.lines).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : null}
    </Section>
  );
}

const LIMIT_WORDS = {
  under: 'under',
  near: 'near',
  over: 'over',
  notEstablished: 'not established against',
} as const;

function workingOf({ answer, input, figures }: SetStanding, label: string, subject: string): WorkingView {
  const step = answer.working.find((one) => one.label === label);
  const words = calculationWords.completeness;
  return {
    calculation: 'completeness',
    inputs: [
      { label: 'Lines', value: input.lines.length },
      { label: 'Expected', value: figures.pieces.expected, unit: 'pieces' },
      {
        label: 'Not counted',
        value: input.lines.filter(({ found }) => found === null).length,
        unit: 'lines',
      },
      {
        label: 'Basket and container',
        value: input.containerGrams ?? 'not stated',
        ...(input.containerGrams === null ? {} : { unit: 'g' }),
      },
    ],
    formula: step?.expression ?? '',
    steps: step ? [`${step.label}: ${step.value}`] : [],
    assumptions: words.assumptions,
    sources: words.sources.map(({ text }) => text),
    input,
    subject,
  };
}
