import type { Problem } from '@/lib/identity/result';
import { thermalDoseWords as words } from '@/lib/wording/thermal-dose';
import type { Answer, MissingValue, WorkingStep } from '../calculation';
import { type Interval, longestHolding } from './holding';
import { A0, F0_Z_K } from './published';
import type { ThermalDoseInput, ThermalDoseOutput } from './schema';

/**
 * Heat given, from logged temperatures: A0 in seconds, F0 in minutes, and the longest stretch within a band.
 *
 * Nothing is interpolated over a gap: a missing value, or readings further apart than stated, leave that time out, and
 * the sums are then `notEstablished`, with what is known as the least they can be. Times that do not grow make the whole
 * log `notEstablished`: nobody can say in which order it was.
 */
export function thermalDose(input: ThermalDoseInput): Answer<ThermalDoseOutput> {
  const disorder = input.readings.flatMap(({ second }, at): MissingValue[] => {
    const before = input.readings[at - 1];
    return before === undefined || second > before.second
      ? []
      : [{ path: ['readings', at, 'second'], what: words.outOfOrder(at + 1, second, before.second) }];
  });
  if (disorder.length > 0) return { outcome: 'notEstablished', missing: disorder, known: null, working: [] };
  const missing = gapsOf(input);
  const logged = input.readings.flatMap(({ celsius }) => (celsius === null ? [] : [celsius]));
  if (logged.length < 2) {
    return {
      outcome: 'notEstablished',
      missing: missing.length > 0 ? missing : [{ path: ['readings'], what: words.tooFew }],
      known: null,
      working: [],
    };
  }
  const intervals = intervalsOf(input);
  const a0 = sum(intervals, input.rule, (c) => (c < A0.fromC ? 0 : 10 ** ((c - A0.referenceC) / A0.zK)));
  const f0 = sum(intervals, input.rule, (c) => 10 ** ((c - input.f0ReferenceC) / F0_Z_K)) / 60;
  const answer: ThermalDoseOutput = {
    a0Seconds: rounded(a0, 1),
    f0Minutes: rounded(f0, 2),
    f0ReferenceC: input.f0ReferenceC,
    loggedSeconds: rounded(
      intervals.reduce((all, one) => all + (one.ends ? one.seconds : 0), 0),
      3,
    ),
    lowestC: least(logged),
    highestC: -least(logged.map((c) => -c)),
    holding: input.band === null ? null : longestHolding(intervals, input.band),
  };
  const working = workingOf(answer, input);
  return missing.length === 0
    ? { outcome: 'answered', answer, working }
    : { outcome: 'notEstablished', missing, known: answer, working };
}

/** A band whose upper end lies below its lower one is no band. */
export function checkThermalDose({ band }: ThermalDoseInput): Problem[] {
  return band !== null && band.highC !== null && band.highC < band.lowC
    ? [{ path: ['band', 'highC'], code: 'band-upside-down', message: words.bandUpsideDown }]
    : [];
}

function gapsOf({ readings, longestGapSeconds }: ThermalDoseInput): MissingValue[] {
  return readings.flatMap(({ second, celsius }, at): MissingValue[] => {
    const before = readings[at - 1];
    return [
      ...(before && second - before.second > longestGapSeconds
        ? [{ path: ['readings', at, 'second'], what: words.gap(before.second, second) }]
        : []),
      ...(celsius === null ? [{ path: ['readings', at, 'celsius'], what: words.noValue(second) }] : []),
    ];
  });
}

function intervalsOf({ readings, longestGapSeconds }: ThermalDoseInput): Interval[] {
  return readings.slice(1).map(({ second, celsius }, at) => {
    const before = readings[at];
    const from = before?.second ?? second;
    const known =
      before !== undefined &&
      before.celsius !== null &&
      celsius !== null &&
      second - from <= longestGapSeconds;
    return {
      from,
      to: second,
      seconds: second - from,
      ends: known ? [before.celsius as number, celsius as number] : null,
    };
  });
}

function sum(
  intervals: readonly Interval[],
  rule: ThermalDoseInput['rule'],
  rate: (c: number) => number,
): number {
  return intervals.reduce((total, { ends, seconds }) => {
    if (ends === null) return total;
    const perSecond = rule === 'left' ? rate(ends[0]) : (rate(ends[0]) + rate(ends[1])) / 2;
    return total + perSecond * seconds;
  }, 0);
}

// a spread of thirty thousand arguments is too many for some engines
const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function workingOf(
  answer: ThermalDoseOutput,
  { rule, readings, band, f0ReferenceC }: ThermalDoseInput,
): WorkingStep[] {
  const { holding } = answer;
  return [
    {
      label: words.working.logged,
      expression: words.working.readings(readings.length),
      value: `${answer.loggedSeconds} s`,
    },
    { label: 'A0', expression: words.working.a0(rule), value: `${answer.a0Seconds} s` },
    { label: 'F0', expression: words.working.f0(rule, f0ReferenceC), value: `${answer.f0Minutes} min` },
    ...(holding === null || band === null
      ? []
      : [
          {
            label: words.working.holding,
            expression: words.working.band(band),
            value: words.working.longest(holding),
          },
        ]),
  ];
}
