import type { ItemId } from '../identity/ids';
import { never } from '../identity/result';
import type { UsePhase } from '../kits/kit';
import type { ChainKind, LengthBasis, Needs, PieceNeed, SlotName, StepKey } from '../kits/need';
import { writeMm } from '../quantities/length';
import { wallClock } from '../theatre/localTime';
import { listWords } from './numbers';
import { MONTHS } from './sets';

/** How items are called on the screen or sheet at hand. */
export type ItemName = (itemId: ItemId) => string;

export const SLOT_WORDS: Record<SlotName | PieceNeed['what'], string> = {
  pilotBit: 'pilot bit',
  sleeve: 'sleeve',
  glidingBit: 'gliding bit',
  glidingSleeve: 'gliding sleeve',
  insertSleeve: 'insert sleeve',
  tap: 'tap',
  countersink: 'countersink',
  gauge: 'depth gauge',
  driver: 'driver',
  torqueLimiter: 'torque limiter',
  handle: 'handle or coupling',
  glidingHandle: 'handle or coupling for the gliding bit',
  wireDriver: 'wire driver',
  plate: 'plate',
  screw: 'screw',
  washer: 'washer',
  wire: 'temporary wire',
};

export const CHAIN_WORDS: Record<ChainKind, string> = {
  drilling: 'Drilling',
  lagDrilling: 'Drilling for a lag screw',
  tapping: 'Tapping',
  countersinking: 'Countersinking',
  measuring: 'Measuring the length',
  driving: 'Driving the screw',
  wiring: 'Placing the wire',
};

export const PHASE_WORDS: Record<UsePhase, string> = {
  plate: 'The plate',
  temporaryWires: 'Temporary wires',
  plainScrews: 'Plain screws, which draw the plate to bone',
  offsetScrews: 'Offset screws',
  lagScrews: 'Lag screws',
  lockingScrews: 'Locking screws',
};

/** `P1/S3 → 'S3'` where there is one plate; `'P2 S3'` where there are more; `L1` and `P1` as they are. */
export function stepWord(key: StepKey, needs: Pick<Needs, 'steps'>): string {
  const step = needs.steps.find((one) => one.key === key);
  if (!step || step.kind === 'freeScrew') return key;
  if (step.kind === 'plate') return severalPlates(needs) ? `plate ${key}` : 'the plate';
  return severalPlates(needs) ? `${step.plateKey} ${step.holeId}` : (step.holeId ?? key);
}

function severalPlates({ steps }: Pick<Needs, 'steps'>): boolean {
  return steps.filter((step) => step.kind === 'plate').length > 1;
}

/** Many steps in short: holes that follow each other are drawn together, `S1–S3, S6 and L1`. */
export function stepsWords(keys: readonly StepKey[], needs: Pick<Needs, 'steps'>): string {
  const order = needs.steps.map((step) => step.key).filter((key) => keys.includes(key));
  const words: string[] = [];
  for (let at = 0; at < order.length; ) {
    let end = at;
    while (end + 1 < order.length && follows(order[end] as string, order[end + 1] as string)) end += 1;
    const first = stepWord(order[at] as string, needs);
    if (end - at >= 2) words.push(`${first}–${(order[end] as string).split('/')[1]}`);
    else for (let one = at; one <= end; one += 1) words.push(stepWord(order[one] as string, needs));
    at = end + 1;
  }
  return listWords(words);
}

function follows(a: StepKey, b: StepKey): boolean {
  const parts = (key: StepKey) => /^(.*?)(\d+)$/.exec(key);
  const [one, other] = [parts(a), parts(b)];
  return (
    a.includes('/') &&
    one !== null &&
    other !== null &&
    one[1] === other[1] &&
    Number(other[2]) === Number(one[2]) + 1
  );
}

/** `05:40 on 14 Jan`: the month as a word, since figures alone are read in two orders. */
export function readyWords(at: string): string {
  const { time, date } = wallClock(at);
  const [, month, day] = date.split('-');
  return `${time} on ${Number(day)} ${MONTHS[Number(month) - 1]}`;
}

/** Where the length of a piece comes from. */
export function basisWords(basis: LengthBasis): string {
  switch (basis.kind) {
    case 'exact':
      return `stated as ${writeMm(basis.askedUm)} mm${longerWords(basis.acceptLongerUm)}`;
    case 'spread':
      return `stated as ${writeMm(basis.meanUm)} ± ${writeMm(basis.sdUm)} mm, ${
        basis.rounding === 'up' ? 'rounded up for both cortices' : 'rounded to the nearest'
      }${basis.expectedUm === null ? '' : `: ${writeMm(basis.expectedUm)} mm`}${longerWords(basis.acceptLongerUm)}`;
    case 'notStated':
      return 'length not stated';
    default:
      return never(basis);
  }
}

const longerWords = (um: number) => (um > 0 ? `, up to ${writeMm(um)} mm longer accepted` : '');
