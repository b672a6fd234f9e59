import { setTurnaroundDescription } from '@/lib/wording/set-turnaround';
import { defineCalculation } from '../calculation';
import { checkSetTurnaround } from './check';
import { setTurnaroundOutput } from './output';
import { setTurnaroundInput } from './schema';
import { setTurnaround } from './setTurnaround';

/** 14 January 2026, 00:00 universal time. */
const MIDNIGHT_MS = 1_768_348_800_000;
const at = (hours: number, minutes: number) => MIDNIGHT_MS + (hours * 60 + minutes) * 60_000;
const there = { p50AtMs: at(0, 0), p90AtMs: at(0, 0) };

export const setTurnaroundCalculation = defineCalculation({
  name: 'set-turnaround',
  ...setTurnaroundDescription,
  input: setTurnaroundInput,
  output: setTurnaroundOutput,
  example: {
    // a night: the morning's set is asked for at 02:10
    cases: [
      {
        case: 'emergency',
        startAtMs: at(2, 40),
        endAtMs: at(4, 30),
        leadMinutes: 30,
        urgency: 'now',
        theatre: '2',
        ways: [
          { parts: [{ sets: ['A-05', 'A-07'] }] },
          { parts: [{ sets: ['A-01'] }], pouches: ['torque limiter'], penalty: 1 },
        ],
      },
      {
        case: 'morning',
        startAtMs: at(8, 30),
        endAtMs: at(10, 0),
        leadMinutes: 30,
        theatre: '1',
        ways: [{ parts: [{ sets: ['A-05', 'A-07'] }] }],
      },
    ],
    configurations: [
      {
        configuration: 'A',
        stages: [
          { stage: 'coming back and washing', p50Minutes: 90, p90Minutes: 120 },
          { stage: 'bench and packing', p50Minutes: 60, p90Minutes: 80 },
          { stage: 'steriliser and acceptance', p50Minutes: 75, p90Minutes: 85 },
        ],
      },
    ],
    sets: [
      { set: 'A-01', configuration: 'A', ready: there },
      { set: 'A-05', configuration: 'A', ready: there },
      { set: 'A-07', configuration: 'A', ready: { p50AtMs: at(5, 20), p90AtMs: at(5, 40) } },
    ],
    pouches: [{ pouch: 'torque limiter', quantity: 1 }],
    promises: [{ case: 'morning', set: 'A-05' }],
    repairsFor: ['emergency'],
  },
  check: checkSetTurnaround,
  run: setTurnaround,
});
