import { neverStated, type RuleCase } from './case';
import {
  corticalScrew,
  hole,
  lockingScrew,
  plate,
  seats,
  threadedHole,
  twoZoneHole,
  wireHole,
} from './pieces';

const elongated = hole({ holeClass: 'elongatedSlot' });
const conical = hole({ plainSeat: 'conical' });
const hcScrew = corticalScrew({
  threadForm: 'HC',
  head: 'conicalPlain',
  drive: { form: 'crossSlot', sizeUm: 3000 },
});
const headUnknown = corticalScrew({ head: null });
const selfDrilling = lockingScrew({ tip: 'selfDrillingSelfTapping' });
const neutral = { purpose: 'neutral', cortices: 2 } as const;
const offset = { purpose: 'offset', cortices: 2 } as const;
const lag = { purpose: 'lag', cortices: 2 } as const;
const locked = { purpose: 'locked', cortices: 2 } as const;

export const seatCases: RuleCase[] = [
  { rule: 'seat-not-in-wire-hole', says: 'met', why: 'a slot is no wire hole', ask: seats() },
  {
    rule: 'seat-not-in-wire-hole',
    says: 'notMet',
    why: 'wire holes are for wires',
    ask: seats({ hole: wireHole() }),
  },
  {
    rule: 'seat-not-in-wire-hole',
    says: 'missing',
    why: 'the class is not known',
    ask: seats({ hole: hole({ holeClass: neverStated }) }),
  },

  { rule: 'seat-plain-screw-in-plain-zone', says: 'met', why: 'a slot has a plain zone', ask: seats() },
  {
    rule: 'seat-plain-screw-in-plain-zone',
    says: 'met',
    why: 'so has the compression zone of a two-zone hole',
    ask: seats({ hole: twoZoneHole() }),
  },
  {
    rule: 'seat-plain-screw-in-plain-zone',
    says: 'notMet',
    why: 'a plain head has no seat in a threaded hole',
    ask: seats({ hole: threadedHole() }),
  },
  {
    rule: 'seat-plain-screw-in-plain-zone',
    says: 'missing',
    why: 'whether the head is plain is not known',
    ask: seats({ screw: headUnknown, hole: threadedHole() }),
    missing: ['screw.head'],
  },
  {
    rule: 'seat-plain-screw-in-plain-zone',
    says: 'met',
    why: 'a plain zone suits it even if the head proves plain',
    ask: seats({ screw: headUnknown }),
  },
  {
    rule: 'seat-plain-screw-in-plain-zone',
    says: 'silent',
    why: 'locking screws have a rule of their own',
    ask: seats({ screw: lockingScrew() }),
  },

  {
    rule: 'seat-locking-screw-in-threaded-zone',
    says: 'met',
    why: 'a threaded hole locks it',
    ask: seats({ screw: lockingScrew(), hole: threadedHole() }),
  },
  {
    rule: 'seat-locking-screw-in-threaded-zone',
    says: 'met',
    why: 'the threaded zone of a two-zone hole locks it',
    ask: seats({ screw: lockingScrew(), hole: twoZoneHole() }),
  },
  {
    rule: 'seat-locking-screw-in-threaded-zone',
    says: 'met',
    why: 'a polyaxial hole locks it',
    ask: seats({ screw: lockingScrew(), hole: threadedHole({ holeClass: 'polyaxialThreaded' }) }),
  },
  {
    rule: 'seat-locking-screw-in-threaded-zone',
    says: 'notMet',
    why: 'nothing to lock in',
    ask: seats({ screw: lockingScrew() }),
  },
  {
    rule: 'seat-locking-screw-in-threaded-zone',
    says: 'notMet',
    why: 'a round hole has no thread',
    ask: seats({ screw: lockingScrew(), hole: hole({ holeClass: 'round' }) }),
  },
  {
    rule: 'seat-locking-screw-in-threaded-zone',
    says: 'missing',
    why: 'the head may be threaded',
    ask: seats({ screw: headUnknown }),
    missing: ['screw.head'],
  },

  {
    rule: 'seat-elongated-slot-plain-only',
    says: 'met',
    why: 'plain screws let the plate shift',
    ask: seats({ hole: elongated }),
  },
  {
    rule: 'seat-elongated-slot-plain-only',
    says: 'notMet',
    why: 'a locking screw would fix it',
    ask: seats({ screw: lockingScrew(), hole: elongated }),
  },
  {
    rule: 'seat-elongated-slot-plain-only',
    says: 'missing',
    why: 'the head may be threaded',
    ask: seats({ screw: headUnknown, hole: elongated }),
    missing: ['screw.head'],
  },

  {
    rule: 'seat-locking-family-equal',
    says: 'met',
    why: 'both declare Alpha',
    ask: seats({ screw: lockingScrew(), hole: threadedHole() }),
  },
  {
    rule: 'seat-locking-family-equal',
    says: 'notMet',
    why: 'the same diameters, another family',
    ask: seats({ screw: lockingScrew({ lockingFamily: 'Beta' }), hole: threadedHole() }),
  },
  {
    rule: 'seat-locking-family-equal',
    says: 'missing',
    why: 'equal diameters declare nothing',
    ask: seats({ screw: lockingScrew({ lockingFamily: null }), hole: threadedHole() }),
    missing: ['screw.lockingFamily'],
  },
  {
    rule: 'seat-locking-family-equal',
    says: 'missing',
    why: 'two unknown families are not equal',
    ask: seats({ screw: lockingScrew({ lockingFamily: null }), hole: threadedHole({ lockingFamily: null }) }),
    missing: ['screw.lockingFamily', 'hole.lockingFamily'],
  },

  { rule: 'seat-head-form-equal', says: 'met', why: 'spherical in spherical (ISO 5836)', ask: seats() },
  {
    rule: 'seat-head-form-equal',
    says: 'notMet',
    why: 'spherical in conical',
    ask: seats({ hole: conical }),
  },
  {
    rule: 'seat-head-form-equal',
    says: 'notMet',
    why: 'conical in spherical',
    ask: seats({ screw: hcScrew }),
  },
  {
    rule: 'seat-head-form-equal',
    says: 'missing',
    why: 'the seat’s form is not stated',
    ask: seats({ hole: hole({ plainSeat: null }) }),
    missing: ['hole.plainSeat'],
  },

  {
    rule: 'seat-ha-hb-in-spherical-seat',
    says: 'met',
    why: 'HA (ISO 5835) in an ISO 5836 hole',
    ask: seats(),
  },
  {
    rule: 'seat-ha-hb-in-spherical-seat',
    says: 'notMet',
    why: 'HA in an ISO 9269 hole',
    ask: seats({ hole: conical }),
  },
  {
    rule: 'seat-ha-hb-in-spherical-seat',
    says: 'missing',
    why: 'the thread may be HA',
    ask: seats({ screw: corticalScrew({ threadForm: null }), hole: conical }),
    missing: ['screw.threadForm'],
  },
  {
    rule: 'seat-ha-hb-in-spherical-seat',
    says: 'silent',
    why: 'HC has a rule of its own',
    ask: seats({ screw: hcScrew }),
  },

  {
    rule: 'seat-hc-hd-in-conical-seat',
    says: 'met',
    why: 'HC (ISO 9268) in an ISO 9269 hole',
    ask: seats({ screw: hcScrew, hole: conical }),
  },
  {
    rule: 'seat-hc-hd-in-conical-seat',
    says: 'notMet',
    why: 'HC in an ISO 5836 hole',
    ask: seats({ screw: hcScrew }),
  },
  {
    rule: 'seat-hc-hd-in-conical-seat',
    says: 'missing',
    why: 'the seat’s form is not stated',
    ask: seats({ screw: hcScrew, hole: hole({ plainSeat: null }) }),
    missing: ['hole.plainSeat'],
  },

  { rule: 'seat-thread-passes-opening', says: 'met', why: '3.5 passes 4.0', ask: seats() },
  {
    rule: 'seat-thread-passes-opening',
    says: 'met',
    why: '3.5 passes exactly 3.5',
    ask: seats({ hole: hole({ openingUm: 3500 }) }),
  },
  {
    rule: 'seat-thread-passes-opening',
    says: 'notMet',
    why: '3.5 does not pass 3.499',
    ask: seats({ hole: hole({ openingUm: 3499 }) }),
  },
  {
    rule: 'seat-thread-passes-opening',
    says: 'missing',
    why: 'the opening is not stated',
    ask: seats({ hole: hole({ openingUm: null }) }),
    missing: ['hole.openingUm'],
  },

  { rule: 'seat-head-wider-than-opening', says: 'met', why: 'a 6.0 head stays above 4.0', ask: seats() },
  {
    rule: 'seat-head-wider-than-opening',
    says: 'notMet',
    why: 'a head as wide as the opening falls through',
    ask: seats({ hole: hole({ openingUm: 6000 }) }),
  },
  {
    rule: 'seat-head-wider-than-opening',
    says: 'missing',
    why: 'the head is not stated',
    ask: seats({ screw: corticalScrew({ headUm: null }) }),
    missing: ['screw.headUm'],
  },

  { rule: 'seat-head-sinks-in-seat', says: 'met', why: 'a 6.0 head in a 6.5 seat', ask: seats() },
  {
    rule: 'seat-head-sinks-in-seat',
    says: 'notMet',
    why: 'an 8.0 head on a 6.5 seat',
    ask: seats({ screw: corticalScrew({ headUm: 8000 }) }),
  },
  {
    rule: 'seat-head-sinks-in-seat',
    says: 'missing',
    why: 'the seat is not stated',
    ask: seats({ hole: hole({ seatUm: null }) }),
    missing: ['hole.seatUm'],
  },

  { rule: 'seat-plate-takes-thread', says: 'met', why: 'a 3.5 plate', ask: seats({ plate: plate() }) },
  {
    rule: 'seat-plate-takes-thread',
    says: 'notMet',
    why: 'a 4.5 plate',
    ask: seats({ plate: plate({ takesThreadsUm: [4500] }) }),
  },
  {
    rule: 'seat-plate-takes-thread',
    says: 'missing',
    why: 'an empty list says nothing',
    ask: seats({ plate: plate({ takesThreadsUm: [] }) }),
    missing: ['plate.takesThreadsUm'],
  },
  {
    rule: 'seat-plate-takes-thread',
    says: 'silent',
    why: 'the question is about a hole alone',
    ask: seats(),
  },

  {
    rule: 'seat-locked-use-locks',
    says: 'met',
    why: 'locking screw, threaded hole',
    ask: seats({ screw: lockingScrew(), hole: threadedHole(), use: locked }),
  },
  {
    rule: 'seat-locked-use-locks',
    says: 'notMet',
    why: 'a plain screw cannot be locked',
    ask: seats({ use: locked, hole: twoZoneHole() }),
  },
  {
    rule: 'seat-locked-use-locks',
    says: 'missing',
    why: 'the head may be plain',
    ask: seats({ screw: headUnknown, hole: twoZoneHole(), use: locked }),
    missing: ['screw.head'],
  },
  { rule: 'seat-locked-use-locks', says: 'silent', why: 'no use is planned', ask: seats() },

  { rule: 'seat-plain-use-plain-screw', says: 'met', why: 'a plain lag screw', ask: seats({ use: lag }) },
  {
    rule: 'seat-plain-use-plain-screw',
    says: 'notMet',
    why: 'a locking screw pulls nothing together',
    ask: seats({ screw: lockingScrew(), hole: twoZoneHole(), use: lag }),
  },
  {
    rule: 'seat-plain-use-plain-screw',
    says: 'missing',
    why: 'the head may be threaded',
    ask: seats({ screw: headUnknown, use: neutral }),
    missing: ['screw.head'],
  },

  {
    rule: 'seat-offset-in-compression-zone',
    says: 'met',
    why: 'a slot is ramped',
    ask: seats({ use: offset }),
  },
  {
    rule: 'seat-offset-in-compression-zone',
    says: 'met',
    why: 'so is the compression zone',
    ask: seats({ hole: twoZoneHole(), use: offset }),
  },
  {
    rule: 'seat-offset-in-compression-zone',
    says: 'notMet',
    why: 'a round hole has no ramp',
    ask: seats({ hole: hole({ holeClass: 'round' }), use: offset }),
  },
  {
    rule: 'seat-offset-in-compression-zone',
    says: 'missing',
    why: 'the class is not known',
    ask: seats({ hole: hole({ holeClass: neverStated }), use: offset }),
  },

  {
    rule: 'seat-self-drilling-one-cortex',
    says: 'met',
    why: 'one cortex',
    ask: seats({ screw: selfDrilling, hole: threadedHole(), use: { purpose: 'locked', cortices: 1 } }),
  },
  {
    rule: 'seat-self-drilling-one-cortex',
    says: 'notMet',
    why: 'both cortices',
    ask: seats({ screw: selfDrilling, hole: threadedHole(), use: locked }),
  },
  {
    rule: 'seat-self-drilling-one-cortex',
    says: 'missing',
    why: 'the tip may be self-drilling',
    ask: seats({ screw: lockingScrew({ tip: null }), hole: threadedHole(), use: locked }),
    missing: ['screw.tip'],
  },
  {
    rule: 'seat-self-drilling-one-cortex',
    says: 'met',
    why: 'through one cortex any tip will do',
    ask: seats({
      screw: lockingScrew({ tip: null }),
      hole: threadedHole(),
      use: { purpose: 'locked', cortices: 1 },
    }),
  },

  {
    rule: 'seat-self-tapping-through-both',
    says: 'met',
    why: 'a blunt tip has no flutes',
    ask: seats({ screw: corticalScrew({ tip: 'blunt' }), use: neutral }),
  },
  {
    rule: 'seat-self-tapping-through-both',
    says: 'notMet',
    why: 'flutes stand out',
    ask: seats({ use: neutral }),
  },
  {
    rule: 'seat-self-tapping-through-both',
    says: 'missing',
    why: 'the tip is not stated',
    ask: seats({ screw: corticalScrew({ tip: null }), use: neutral }),
    missing: ['screw.tip'],
  },
];
