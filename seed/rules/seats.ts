import { all, among, atMost, below, is, lists, not, of, rulesOf, same, standard } from './starter';

const PLAIN_IN_PLAIN_ZONE = all(is('screw.locks', false), is('hole.hasPlainZone', true));
const LOCKING_IN_THREADED_ZONE = all(is('screw.locks', true), is('hole.hasThreadedZone', true));

/** Screw in hole. */
export const seats = rulesOf('seats', [
  {
    code: 'seat-not-in-wire-hole',
    requires: not(is('hole.holeClass', 'wireHole')),
    sentence: 'A wire hole takes a temporary wire, no screw.',
  },
  {
    code: 'seat-plain-screw-in-plain-zone',
    when: is('screw.locks', false),
    requires: is('hole.hasPlainZone', true),
    sentence:
      'A screw with a plain head has nothing to press on in a {hole.holeClass}: it needs a plain zone.',
  },
  {
    code: 'seat-locking-screw-in-threaded-zone',
    when: is('screw.locks', true),
    requires: is('hole.hasThreadedZone', true),
    sentence: 'A locking screw cannot lock in a {hole.holeClass}: it needs a threaded zone.',
  },
  {
    code: 'seat-elongated-slot-plain-only',
    when: is('hole.holeClass', 'elongatedSlot'),
    requires: is('screw.locks', false),
    sentence: 'An elongated slot is for shifting the plate and takes plain screws only.',
  },
  {
    code: 'seat-locking-family-equal',
    when: LOCKING_IN_THREADED_ZONE,
    requires: same('screw.lockingFamily', 'hole.lockingFamily'),
    sentence:
      'The screw is of locking family {screw.lockingFamily}, the hole of {hole.lockingFamily}: families are declared, never inferred from diameters.',
  },
  {
    code: 'seat-head-form-equal',
    when: PLAIN_IN_PLAIN_ZONE,
    requires: same('screw.underHead', 'hole.plainSeat'),
    sentence: 'A {screw.underHead} under-head does not bed in a {hole.plainSeat} seat.',
    source: standard('ISO 5836; ISO 9269', 'holes for spherical and for conical under-heads'),
  },
  {
    code: 'seat-ha-hb-in-spherical-seat',
    when: all(among('screw.threadForm', 'HA', 'HB'), is('hole.hasPlainZone', true)),
    requires: is('hole.plainSeat', 'spherical'),
    sentence: 'An {screw.threadForm} screw belongs in a spherical seat, not in a {hole.plainSeat} one.',
    source: standard('ISO 5835; ISO 5836'),
  },
  {
    code: 'seat-hc-hd-in-conical-seat',
    when: all(among('screw.threadForm', 'HC', 'HD'), is('hole.hasPlainZone', true)),
    requires: is('hole.plainSeat', 'conical'),
    sentence: 'An {screw.threadForm} screw belongs in a conical seat, not in a {hole.plainSeat} one.',
    source: standard('ISO 9268; ISO 9269'),
  },
  {
    code: 'seat-thread-passes-opening',
    when: PLAIN_IN_PLAIN_ZONE,
    requires: atMost(of('screw.threadUm'), of('hole.openingUm')),
    sentence: 'The {screw.threadUm} thread does not pass the {hole.openingUm} opening.',
    source: standard('ISO 5836; ISO 9269', 'hole diameters'),
  },
  {
    code: 'seat-head-wider-than-opening',
    when: PLAIN_IN_PLAIN_ZONE,
    requires: below(of('hole.openingUm'), of('screw.headUm')),
    sentence: 'The {screw.headUm} head falls through the {hole.openingUm} opening.',
    source: standard('ISO 5836; ISO 9269', 'hole diameters'),
  },
  {
    code: 'seat-head-sinks-in-seat',
    severity: 'caution',
    when: PLAIN_IN_PLAIN_ZONE,
    requires: atMost(of('screw.headUm'), of('hole.seatUm')),
    sentence: 'The {screw.headUm} head is wider than the {hole.seatUm} seat and stands proud of the plate.',
  },
  {
    code: 'seat-plate-takes-thread',
    requires: lists('plate.takesThreadsUm', 'screw.threadUm'),
    sentence: 'The plate is made for {plate.takesThreadsUm} screws, not for {screw.threadUm}.',
  },
  {
    code: 'seat-locked-use-locks',
    when: is('use.purpose', 'locked'),
    requires: all(is('screw.locks', true), is('hole.hasThreadedZone', true)),
    sentence: 'To be locked, a screw with a threaded head has to meet a threaded zone.',
  },
  {
    code: 'seat-plain-use-plain-screw',
    when: among('use.purpose', 'neutral', 'offset', 'lag'),
    requires: is('screw.locks', false),
    sentence:
      'A locking screw neither presses the plate on nor pulls fragments together; the use planned is {use.purpose}.',
  },
  {
    code: 'seat-offset-in-compression-zone',
    when: is('use.purpose', 'offset'),
    requires: among('hole.holeClass', 'compressionSlot', 'twoZone'),
    sentence: 'Offset drilling needs a compression slot or zone; this is a {hole.holeClass}.',
  },
  {
    code: 'seat-self-drilling-one-cortex',
    when: is('screw.tip', 'selfDrillingSelfTapping'),
    requires: is('use.cortices', 1),
    sentence: 'A self-drilling screw goes through one cortex only; the plan says {use.cortices}.',
  },
  {
    code: 'seat-self-tapping-through-both',
    severity: 'note',
    when: is('use.cortices', 2),
    requires: not(is('screw.tip', 'selfTapping')),
    sentence: 'The cutting flutes of a self-tapping screw have to stand out beyond the far cortex.',
  },
]);
