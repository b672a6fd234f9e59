import { Status } from '@/app/_ui/status';
import type { SetTurn } from '@/db/queries/turns/setTurn';
import type { TurnStep } from '@/lib/sets/setState';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords, TURN_STEP_WORDS } from '@/lib/wording/sets';
import styles from './turn-line.module.css';

/** The steps of a turn in their order, from theatre to theatre. */
const ROUND: readonly TurnStep[] = [
  'comingBack',
  'washing',
  'onBench',
  'packed',
  'inSteriliser',
  'awaitingAcceptance',
  'inSterileStore',
  'inTheatre',
];

/** A turn drawn as a line: what is done stands filled with its time and person, where the set is now is marked, the rest is hollow. */
export function TurnLine({
  turn,
  step,
  heldFrom,
  now,
}: {
  turn: NonNullable<SetTurn['turn']>;
  step: TurnStep;
  heldFrom: TurnStep | null;
  now: string;
}) {
  const aside = step === 'held' || step === 'shortAwaitingDecision';
  const at = ROUND.indexOf(
    step === 'held' ? (heldFrom ?? 'onBench') : step === 'shortAwaitingDecision' ? 'onBench' : step,
  );
  return (
    <ol className={styles.line} aria-label={`Turn ${turn.number}, step by step`}>
      {ROUND.map((name, index) => {
        const taken = turn.steps.filter((one) => one.step === name).at(-1);
        // a step taken before the set went back to an earlier one is to be taken again
        const done = taken !== undefined && index < at;
        const here = index === at;
        const state = here ? (aside ? 'stopped' : 'here') : done ? 'done' : 'open';
        return (
          <li key={name} className={styles.step} data-state={state} aria-current={here ? 'step' : undefined}>
            <span className={styles.mark} aria-hidden="true" />
            <span className={styles.name}>{capitalised(TURN_STEP_WORDS[name])}</span>
            {(done || here) && taken ? (
              <span className={styles.when}>
                {momentWords(taken.doneAt, now)}
                {taken.by === null ? null : <span className={styles.by}>{taken.by}</span>}
              </span>
            ) : null}
            {here && aside ? (
              <Status tone={step === 'held' ? 'stop' : 'attention'} look="plain">
                {step === 'held' ? 'held here' : TURN_STEP_WORDS[step]}
              </Status>
            ) : null}
          </li>
        );
      })}
    </ol>
  );
}
