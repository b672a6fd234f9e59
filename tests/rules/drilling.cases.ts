import type { RuleCase } from './case';
import { bit, corticalScrew, countersink, gauge, lockingScrew, partlyThreadedScrew, tap } from './pieces';

const pilots = (diameterUm: number | null, screw = corticalScrew()) => ({
  relation: 'pilots' as const,
  bit: bit(diameterUm),
  screw,
});
const glides = (diameterUm: number | null, screw = corticalScrew()) => ({
  relation: 'glides' as const,
  bit: bit(diameterUm),
  screw,
});
const taps = (one = tap(), screw = corticalScrew({ tip: 'blunt' })) => ({
  relation: 'taps' as const,
  tap: one,
  screw,
});
const sinks = (one = countersink(), screw = corticalScrew()) => ({
  relation: 'countersinks' as const,
  countersink: one,
  screw,
});
const measures = (one = gauge(), screw = corticalScrew()) => ({
  relation: 'measures' as const,
  gauge: one,
  screw,
  use: null,
});
const selfDrilling = lockingScrew({ tip: 'selfDrillingSelfTapping' });

export const drillingCases: RuleCase[] = [
  { rule: 'pilot-not-below-core', says: 'met', why: '2.5 for a core of 2.4', ask: pilots(2500) },
  { rule: 'pilot-not-below-core', says: 'met', why: 'exactly the core', ask: pilots(2400) },
  { rule: 'pilot-not-below-core', says: 'notMet', why: '2.0 jams on a core of 2.4', ask: pilots(2000) },
  {
    rule: 'pilot-not-below-core',
    says: 'missing',
    why: 'the core is not stated',
    ask: pilots(2500, corticalScrew({ coreUm: null })),
    missing: ['screw.coreUm'],
  },

  { rule: 'pilot-below-thread', says: 'met', why: '2.5 leaves thread', ask: pilots(2500) },
  { rule: 'pilot-below-thread', says: 'notMet', why: '3.5 is the gliding hole', ask: pilots(3500) },
  {
    rule: 'pilot-below-thread',
    says: 'missing',
    why: 'the bit is not stated',
    ask: pilots(null),
    missing: ['bit.diameterUm'],
  },

  {
    rule: 'pilot-leaves-half-the-thread',
    says: 'met',
    why: '2.5 is below the middle of 2.4 and 3.5, 2.95',
    ask: pilots(2500),
  },
  { rule: 'pilot-leaves-half-the-thread', says: 'notMet', why: '3.2 is above 2.95', ask: pilots(3200) },
  {
    rule: 'pilot-leaves-half-the-thread',
    says: 'missing',
    why: 'the thread is not stated',
    ask: pilots(2500, corticalScrew({ threadUm: null })),
    missing: ['screw.threadUm'],
  },

  {
    rule: 'pilot-needless-when-self-drilling',
    says: 'met',
    why: 'a self-tapping screw needs a hole',
    ask: pilots(2500),
  },
  {
    rule: 'pilot-needless-when-self-drilling',
    says: 'notMet',
    why: 'it drills its own',
    ask: pilots(2800, selfDrilling),
  },
  {
    rule: 'pilot-needless-when-self-drilling',
    says: 'missing',
    why: 'the tip is not stated',
    ask: pilots(2500, corticalScrew({ tip: null })),
    missing: ['screw.tip'],
  },

  { rule: 'glide-plain-screws-only', says: 'met', why: 'a cortical screw can lag', ask: glides(3500) },
  {
    rule: 'glide-plain-screws-only',
    says: 'notMet',
    why: 'a locking screw cannot',
    ask: glides(3500, lockingScrew()),
  },
  {
    rule: 'glide-plain-screws-only',
    says: 'missing',
    why: 'the head may be threaded',
    ask: glides(3500, corticalScrew({ head: null })),
    missing: ['screw.head'],
  },

  {
    rule: 'glide-equals-thread-when-fully-threaded',
    says: 'met',
    why: '3.5 for a 3.5 thread',
    ask: glides(3500),
  },
  {
    rule: 'glide-equals-thread-when-fully-threaded',
    says: 'notMet',
    why: '4.5 for a 3.5 thread',
    ask: glides(4500),
  },
  {
    rule: 'glide-equals-thread-when-fully-threaded',
    says: 'notMet',
    why: 'the pilot would grip',
    ask: glides(2500),
  },
  {
    rule: 'glide-equals-thread-when-fully-threaded',
    says: 'missing',
    why: 'the bit is not stated',
    ask: glides(null),
    missing: ['bit.diameterUm'],
  },

  {
    rule: 'glide-equals-shaft-when-partly-threaded',
    says: 'met',
    why: '4.5 for the 4.5 shaft of HB 6.5',
    ask: glides(4500, partlyThreadedScrew()),
  },
  {
    rule: 'glide-equals-shaft-when-partly-threaded',
    says: 'notMet',
    why: '6.5 is its thread',
    ask: glides(6500, partlyThreadedScrew()),
  },
  {
    rule: 'glide-equals-shaft-when-partly-threaded',
    says: 'missing',
    why: 'the shaft is not stated',
    ask: glides(4500, partlyThreadedScrew({ shaftUm: null })),
    missing: ['screw.shaftUm'],
  },
  {
    rule: 'glide-equals-shaft-when-partly-threaded',
    says: 'silent',
    why: 'fully threaded',
    ask: glides(3500),
  },

  { rule: 'tap-thread-form-equal', says: 'met', why: 'HA for HA', ask: taps() },
  { rule: 'tap-thread-form-equal', says: 'notMet', why: 'HB for HA', ask: taps(tap({ threadForm: 'HB' })) },
  {
    rule: 'tap-thread-form-equal',
    says: 'missing',
    why: 'the tap’s form is not stated',
    ask: taps(tap({ threadForm: null })),
    missing: ['tap.threadForm'],
  },

  { rule: 'tap-thread-diameter-equal', says: 'met', why: '3.5 for 3.5', ask: taps() },
  {
    rule: 'tap-thread-diameter-equal',
    says: 'notMet',
    why: '4.5 for 3.5',
    ask: taps(tap({ threadUm: 4500 })),
  },
  {
    rule: 'tap-thread-diameter-equal',
    says: 'missing',
    why: 'the tap’s diameter is not stated',
    ask: taps(tap({ threadUm: null })),
    missing: ['tap.threadUm'],
  },

  { rule: 'tap-needless-when-self-tapping', says: 'met', why: 'a blunt screw needs a tap', ask: taps() },
  {
    rule: 'tap-needless-when-self-tapping',
    says: 'notMet',
    why: 'it cuts its own thread',
    ask: taps(tap(), corticalScrew()),
  },
  {
    rule: 'tap-needless-when-self-tapping',
    says: 'missing',
    why: 'the tip is not stated',
    ask: taps(tap(), corticalScrew({ tip: null })),
    missing: ['screw.tip'],
  },

  { rule: 'countersink-plain-heads-only', says: 'met', why: 'a spherical head', ask: sinks() },
  {
    rule: 'countersink-plain-heads-only',
    says: 'notMet',
    why: 'a threaded head',
    ask: sinks(countersink(), lockingScrew()),
  },
  {
    rule: 'countersink-plain-heads-only',
    says: 'missing',
    why: 'the head may be threaded',
    ask: sinks(countersink(), corticalScrew({ head: null })),
    missing: ['screw.head'],
  },

  { rule: 'countersink-makes-room-for-head', says: 'met', why: '6.0 for 6.0', ask: sinks() },
  {
    rule: 'countersink-makes-room-for-head',
    says: 'notMet',
    why: '4.0 for 6.0',
    ask: sinks(countersink({ headUm: 4000 })),
  },
  {
    rule: 'countersink-makes-room-for-head',
    says: 'missing',
    why: 'the head is not stated',
    ask: sinks(countersink(), corticalScrew({ headUm: null })),
    missing: ['screw.headUm'],
  },

  { rule: 'countersink-cut-for-this-head', says: 'met', why: '6.0 for 6.0', ask: sinks() },
  {
    rule: 'countersink-cut-for-this-head',
    says: 'notMet',
    why: '8.0 for 6.0',
    ask: sinks(countersink({ headUm: 8000 })),
  },
  {
    rule: 'countersink-cut-for-this-head',
    says: 'missing',
    why: 'the countersink is not stated',
    ask: sinks(countersink({ headUm: null })),
    missing: ['countersink.headUm'],
  },

  { rule: 'countersink-pin-follows-hole', says: 'met', why: '2.5 enters', ask: sinks() },
  {
    rule: 'countersink-pin-follows-hole',
    says: 'notMet',
    why: '4.5 does not enter a 3.5 hole',
    ask: sinks(countersink({ pinUm: 4500 })),
  },
  {
    rule: 'countersink-pin-follows-hole',
    says: 'missing',
    why: 'the pin is not stated',
    ask: sinks(countersink({ pinUm: null })),
    missing: ['countersink.pinUm'],
  },

  { rule: 'gauge-covers-length', says: 'met', why: '16 within 6 to 60', ask: measures() },
  {
    rule: 'gauge-covers-length',
    says: 'met',
    why: 'exactly the longest reading',
    ask: measures(gauge(), corticalScrew({ lengthUm: 60000 })),
  },
  {
    rule: 'gauge-covers-length',
    says: 'notMet',
    why: '80 is beyond 60',
    ask: measures(gauge(), corticalScrew({ lengthUm: 80000 })),
  },
  {
    rule: 'gauge-covers-length',
    says: 'missing',
    why: 'the longest reading is not stated',
    ask: measures(gauge({ toUm: null })),
    missing: ['gauge.toUm'],
  },
  {
    rule: 'gauge-covers-length',
    says: 'notMet',
    why: 'too short already, whatever the longest reading',
    ask: measures(gauge({ fromUm: 20000, toUm: null })),
  },

  { rule: 'gauge-made-for-thread', says: 'met', why: 'made for 2.7 and 3.5', ask: measures() },
  {
    rule: 'gauge-made-for-thread',
    says: 'notMet',
    why: 'not for 4.5',
    ask: measures(gauge(), corticalScrew({ threadUm: 4500 })),
  },
  {
    rule: 'gauge-made-for-thread',
    says: 'missing',
    why: 'nobody has said',
    ask: measures(gauge({ forThreadsUm: null })),
    missing: ['gauge.forThreadsUm'],
  },

  { rule: 'gauge-not-for-self-drilling', says: 'met', why: 'there is a drilled hole', ask: measures() },
  {
    rule: 'gauge-not-for-self-drilling',
    says: 'notMet',
    why: 'there is none',
    ask: measures(gauge(), selfDrilling),
  },
  {
    rule: 'gauge-not-for-self-drilling',
    says: 'missing',
    why: 'the tip is not stated',
    ask: measures(gauge(), corticalScrew({ tip: null })),
    missing: ['screw.tip'],
  },

  { rule: 'gauge-hook-passes-hole', says: 'met', why: 'a 2.0 hook, holes of at least 2.4', ask: measures() },
  {
    rule: 'gauge-hook-passes-hole',
    says: 'notMet',
    why: 'a 2.5 hook',
    ask: measures(gauge({ hookUm: 2500 })),
  },
  {
    rule: 'gauge-hook-passes-hole',
    says: 'missing',
    why: 'the hook is not stated',
    ask: measures(gauge({ hookUm: null })),
    missing: ['gauge.hookUm'],
  },
];
