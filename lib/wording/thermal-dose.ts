import type { Holding, HoldingBand } from '../calculations/thermalDose/schema';

/** `3 min`, `3 min 20 s`, `45 s`. */
export function durationWords(seconds: number): string {
  const whole = Math.floor(seconds);
  const [minutes, rest] = [Math.floor(whole / 60), whole % 60];
  if (minutes === 0) return `${rest} s`;
  return rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
}

/** `134–137 °C for 3 min`. */
export function bandWords({ lowC, highC, holdSeconds }: HoldingBand): string {
  const range = highC === null ? `${lowC} °C or more` : `${lowC}–${highC} °C`;
  return `${range} for ${durationWords(holdSeconds)}`;
}

export const HOLDING_WORDS: Record<Holding['outcome'], string> = {
  held: 'held',
  notHeld: 'not held',
  notEstablished: 'not established',
};

export const thermalDoseWords = {
  outOfOrder: (place: number, second: number, before: number) =>
    `the order of the readings: reading ${place} is at ${second} s, the one before it at ${before} s`,
  gap: (from: number, to: number) => `temperatures between ${from} s and ${to} s`,
  noValue: (second: number) => `the temperature at ${second} s`,
  tooFew: 'at least two temperatures',
  bandUpsideDown: 'The upper end of the band lies below its lower end.',
  working: {
    logged: 'Time logged without a gap',
    readings: (count: number) => `${count} readings`,
    a0: (rule: 'trapezoid' | 'left') => `Σ 10^((T − 80) ÷ 10) Δt from 65 °C, ${ruleWords[rule]}`,
    f0: (rule: 'trapezoid' | 'left', reference: number) =>
      `Σ 10^((T − ${reference}) ÷ 10) Δt ÷ 60, ${ruleWords[rule]}`,
    holding: 'Longest in the band',
    band: bandWords,
    longest: ({ longestSeconds, outcome }: Holding) =>
      `${durationWords(longestSeconds)}: ${HOLDING_WORDS[outcome]}`,
  },
};

const ruleWords = { trapezoid: 'mean of both ends', left: 'the earlier end' } as const;
