import type { Need } from '../turns/needs';
import type { NextAct, QueueLine } from '../turns/queue';
import type { StageTime } from '../turns/stageTimes';
import { capitalised } from './numbers';
import { momentWords, TURN_STEP_WORDS } from './sets';

/** What is done next with a set, as the button says it. */
export const NEXT_ACT_WORDS: Record<NextAct, string> = {
  receive: 'Receive',
  beginWash: 'Put into washing',
  endWash: 'Take out of washing',
  count: 'Inspect and count',
  pack: 'Pack',
  decideShort: 'Decide on what is short',
  load: 'Put in a load',
  unload: 'End its load',
  accept: 'Decide on its load',
  liftHold: 'Look at the hold',
};

/** `1 h 35 min`, `40 min`, `2 days 3 h`. */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  const [days, hours, rest] = [Math.floor(whole / 1440), Math.floor((whole % 1440) / 60), whole % 60];
  if (days > 0) return `${days === 1 ? '1 day' : `${days} days`}${hours > 0 ? ` ${hours} h` : ''}`;
  if (hours > 0) return `${hours} h${rest > 0 ? ` ${rest} min` : ''}`;
  return `${rest} min`;
}

/** Why a set is needed for a case. */
export function needWords({ reference, why }: Need): string {
  switch (why.kind) {
    case 'promised':
      return `promised to ${reference}`;
    case 'holdsPlate':
      return `holds a plate of ${reference}`;
    case 'standsInFor':
      return `stands in for ${why.code}, which can’t go to ${reference}`;
  }
}

/** When the next act must be begun, or that it is late already. */
export function beginWords({ beginBy, needBy, lateMinutes, readyAt }: QueueLine, now: string): string {
  if (beginBy === null || needBy === null) return 'No booked case waits for it.';
  if (lateMinutes > 0) {
    const ready = readyAt === null ? 'when nobody can say yet' : momentWords(readyAt, now);
    return `Late by ${minutesWords(lateMinutes)} at the least: needed ${momentWords(needBy, now)}, ready ${ready}.`;
  }
  return `Begin by ${momentWords(beginBy, now)}, needed ${momentWords(needBy, now)}.`;
}

/** `Washing 92 min, the median of its last 6 turns`. */
export function stageWords({ stage, minutes, fromTurns }: StageTime): string {
  const from =
    fromTurns === null
      ? 'the usual time set here: too few turns of its own'
      : `the median of ${fromTurns} turns of its kind`;
  return `${capitalised(TURN_STEP_WORDS[stage])}: ${minutesWords(minutes)}, ${from}.`;
}
