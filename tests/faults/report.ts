import type { Found } from './suite';

/** One line of the table: a suite, what it found, and how long it took. */
export interface Reported extends Found {
  name: string;
  unit: string;
  seconds: number;
}

type Outcome = 'passed' | 'FAULTS' | 'not tried here' | 'passed in part';

/** Nothing tried is nothing passed, and what could not be tried on this machine is never counted as passed. */
export function outcomeOf({
  tried,
  faults,
  notTried,
}: Pick<Found, 'tried' | 'faults' | 'notTried'>): Outcome {
  if (faults.length > 0) return 'FAULTS';
  if (tried === 0) return notTried.length > 0 ? 'not tried here' : 'FAULTS';
  return notTried.length > 0 ? 'passed in part' : 'passed';
}

/** 1 where anything was found that must not be. */
export const exitOf = (all: readonly Reported[]): 0 | 1 =>
  all.length > 0 && all.every((one) => outcomeOf(one) !== 'FAULTS') ? 0 : 1;

const figure = (count: number | null) => (count === null ? '–' : count.toLocaleString('en-GB'));

/** What was tried, acknowledged, lost and found, with the time; then what was seen and what is wrong, in sentences. */
export function tableOf(all: readonly Reported[]): string[] {
  const rows = [
    ['suite', 'tried', 'acknowledged', 'lost', 'faults', 'time', 'outcome'],
    ...all.map((one) => [
      one.name,
      `${figure(one.tried)} ${one.unit}`,
      figure(one.acknowledged),
      figure(one.lost),
      figure(one.faults.length),
      `${one.seconds.toFixed(0)} s`,
      outcomeOf(one),
    ]),
  ];
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
  return [
    ...rows.map((row) =>
      row
        .map((text, at) => text.padEnd(widths[at] ?? 0))
        .join('  ')
        .trimEnd(),
    ),
    '',
    ...all.flatMap(({ name, seen, faults, notTried }) => [
      ...seen.map((line) => `${name}: ${line}`),
      ...notTried.map((line) => `${name}: not tried here, because ${line}`),
      ...faults.map((line) => `${name}: FAULT: ${line}`),
    ]),
  ];
}
