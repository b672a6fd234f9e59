import type { Service } from '@/lib/turnaround/plan';
import { waysOf } from '@/lib/turnaround/problem';
import type { Numbered } from './problemOf';

const MINUTE_MS = 60_000;

/** A slip or a lack counts by minutes begun. */
export const minutesUp = (ms: number): number => Math.ceil(ms / MINUTE_MS);
/** A margin counts by whole minutes. */
export const minutesDown = (ms: number): number => Math.floor(ms / MINUTE_MS);

/** Numbers said by their names. */
export function names({ problem, cases, sets, pouches }: Numbered) {
  const setsOf = (numbers: readonly number[]) => numbers.map((set) => sets[set] as string);
  return {
    caseOf: (one: number) => cases[one] as string,
    setOf: (set: number) => sets[set] as string,
    setsOf,
    pouchOf: (pouch: number) => pouches[pouch] as string,
    serviceOf: (one: number, { way, sets: given }: Service) => ({
      way,
      sets: setsOf(given),
      pouches: (waysOf(problem, one)[way]?.pouches ?? []).map((pouch) => pouches[pouch] as string),
    }),
  };
}
