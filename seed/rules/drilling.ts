import { all, among, atMost, below, is, not, of, rulesOf, same, standard } from './starter';

/** Bit for a screw's thread hole. */
export const pilots = rulesOf('pilots', [
  {
    code: 'pilot-not-below-core',
    requires: atMost(of('screw.coreUm'), of('bit.diameterUm')),
    sentence:
      'A {bit.diameterUm} hole is narrower than the {screw.coreUm} core: the screw would jam or split the bone.',
    source: standard('ISO 5835; ISO 9268', 'core diameters'),
  },
  {
    code: 'pilot-below-thread',
    requires: below(of('bit.diameterUm'), of('screw.threadUm')),
    sentence: 'A {bit.diameterUm} hole leaves the {screw.threadUm} thread nothing to hold.',
    source: standard('ISO 5835; ISO 9268', 'thread diameters'),
  },
  {
    code: 'pilot-leaves-half-the-thread',
    severity: 'caution',
    requires: atMost(
      { plus: [of('bit.diameterUm'), of('bit.diameterUm')] },
      { plus: [of('screw.coreUm'), of('screw.threadUm')] },
    ),
    sentence:
      'A {bit.diameterUm} hole is past the middle between core {screw.coreUm} and thread {screw.threadUm}: less than half the thread’s depth holds.',
  },
  {
    code: 'pilot-needless-when-self-drilling',
    severity: 'note',
    requires: not(is('screw.tip', 'selfDrillingSelfTapping')),
    sentence: 'A self-drilling screw makes its own hole.',
  },
]);

/** Bit for a screw's gliding hole. */
export const glides = rulesOf('glides', [
  {
    code: 'glide-plain-screws-only',
    requires: is('screw.locks', false),
    sentence: 'A locking screw is never used as a lag screw, so it has no gliding hole.',
  },
  {
    code: 'glide-equals-thread-when-fully-threaded',
    when: among('screw.screwKind', 'cortical', 'cancellousFull'),
    requires: same('bit.diameterUm', 'screw.threadUm'),
    sentence:
      'The gliding hole of this screw is {screw.threadUm} wide, its thread; the bit is {bit.diameterUm}.',
  },
  {
    code: 'glide-equals-shaft-when-partly-threaded',
    when: among('screw.screwKind', 'cancellousPartial', 'cannulated'),
    requires: same('bit.diameterUm', 'screw.shaftUm'),
    sentence:
      'The gliding hole of this screw is {screw.shaftUm} wide, its smooth shaft; the bit is {bit.diameterUm}.',
  },
]);

export const taps = rulesOf('taps', [
  {
    code: 'tap-thread-form-equal',
    requires: same('tap.threadForm', 'screw.threadForm'),
    sentence: 'The tap cuts an {tap.threadForm} thread, the screw has {screw.threadForm}.',
    source: standard('ISO 5835; ISO 9268', 'thread forms'),
  },
  {
    code: 'tap-thread-diameter-equal',
    requires: same('tap.threadUm', 'screw.threadUm'),
    sentence: 'The tap cuts {tap.threadUm}, the screw’s thread is {screw.threadUm}.',
    source: standard('ISO 5835; ISO 9268', 'thread diameters'),
  },
  {
    code: 'tap-needless-when-self-tapping',
    severity: 'note',
    requires: is('screw.tip', 'blunt'),
    sentence: 'A {screw.tip} screw cuts its own thread.',
  },
]);

export const countersinks = rulesOf('countersinks', [
  {
    code: 'countersink-plain-heads-only',
    requires: is('screw.locks', false),
    sentence: 'A threaded head is never sunk into bone.',
  },
  {
    code: 'countersink-makes-room-for-head',
    requires: atMost(of('screw.headUm'), of('countersink.headUm')),
    sentence: 'The {countersink.headUm} countersink is too narrow for the {screw.headUm} head.',
  },
  {
    code: 'countersink-cut-for-this-head',
    severity: 'caution',
    requires: atMost(of('countersink.headUm'), of('screw.headUm')),
    sentence: 'The {countersink.headUm} countersink takes more bone than the {screw.headUm} head needs.',
  },
  {
    code: 'countersink-pin-follows-hole',
    requires: atMost(of('countersink.pinUm'), of('screw.threadUm')),
    sentence: 'The {countersink.pinUm} pin does not enter a hole drilled for a {screw.threadUm} screw.',
  },
]);

export const measures = rulesOf('measures', [
  {
    code: 'gauge-covers-length',
    requires: all(
      atMost(of('gauge.fromUm'), of('screw.lengthUm')),
      atMost(of('screw.lengthUm'), of('gauge.toUm')),
    ),
    sentence: 'The gauge reads {gauge.fromUm} to {gauge.toUm}; the screw is {screw.lengthUm} long.',
  },
  {
    code: 'gauge-made-for-thread',
    requires: { lists: [of('gauge.forThreadsUm'), of('screw.threadUm')] },
    sentence: 'The gauge’s scale is made for {gauge.forThreadsUm} screws, not for {screw.threadUm}.',
  },
  {
    code: 'gauge-not-for-self-drilling',
    requires: not(is('screw.tip', 'selfDrillingSelfTapping')),
    sentence: 'A self-drilling screw is not measured for: there is no drilled hole.',
  },
  {
    code: 'gauge-hook-passes-hole',
    severity: 'caution',
    requires: atMost(of('gauge.hookUm'), of('screw.coreUm')),
    sentence: 'The {gauge.hookUm} hook may not pass a hole drilled near the {screw.coreUm} core.',
  },
]);
