import { among, any, is, lists, not, rulesOf, same, standard } from './starter';

export const turns = rulesOf('turns', [
  {
    code: 'driver-drive-form-equal',
    requires: same('driver.driveForm', 'screw.driveForm'),
    sentence: 'A {driver.driveForm} driver does not turn a {screw.driveForm} screw.',
    source: standard('ISO 8319; ISO 10664'),
  },
  {
    code: 'driver-drive-size-equal',
    requires: same('driver.drive', 'screw.drive'),
    sentence:
      'The driver is {driver.drive}, the screw {screw.drive}: even one size apart it slips or strips.',
    source: standard('ISO 8319; ISO 10664'),
  },
  {
    code: 'drive-of-ha-hb-screws',
    severity: 'caution',
    when: among('screw.threadForm', 'HA', 'HB'),
    requires: among('screw.driveForm', 'hexagonSocket', 'hexalobular'),
    sentence:
      'An {screw.threadForm} screw has a hexagon or hexalobular drive; this one is entered with {screw.driveForm}.',
    source: standard('ISO 5835', 'screws with hexagonal drive connection'),
  },
  {
    code: 'drive-of-hc-hd-screws',
    severity: 'caution',
    when: among('screw.threadForm', 'HC', 'HD'),
    requires: among('screw.driveForm', 'crossSlot', 'singleSlot', 'hexalobular'),
    sentence:
      'An {screw.threadForm} screw has a slotted or hexalobular drive; this one is entered with {screw.driveForm}.',
    source: standard('ISO 9268; ISO 8319-2'),
  },
]);

export const joins = rulesOf('joins', [
  {
    code: 'shank-comes-off',
    requires: is('shank.fixedHandle', false),
    sentence: 'Its handle is fixed, so it goes into no other.',
  },
  {
    code: 'socket-takes-shank',
    when: is('shank.fixedHandle', false),
    requires: lists('socket.takes', 'shank.coupling'),
    sentence: 'The socket takes {socket.takes}; this is a {shank.coupling}.',
  },
  {
    code: 'limiter-not-in-limiter',
    when: is('socket.kind', 'torqueLimiter'),
    requires: not(is('shank.kind', 'torqueLimiter')),
    sentence: 'One torque limiter in another gives an unknown torque.',
  },
]);

export const limits = rulesOf('limits', [
  {
    code: 'limiter-for-locking-screws',
    requires: is('screw.locks', true),
    sentence: 'Torque limiters are for locking screws; a plain screw is tightened by hand.',
  },
  {
    code: 'limiter-torque-class-equal',
    when: is('screw.locks', true),
    requires: same('limiter.torqueNmm', 'screw.torqueNmm'),
    sentence: 'The limiter slips at {limiter.torqueNmm}, the screw’s class is {screw.torqueNmm}.',
  },
]);

export const wearsWith = rulesOf('wearsWith', [
  {
    code: 'metals-alike-in-contact',
    severity: 'caution',
    requires: any(
      same('first.metalGroup', 'second.metalGroup'),
      is('first.metalGroup', 'none'),
      is('second.metalGroup', 'none'),
    ),
    sentence: 'Mixed metals in contact: {first.metalGroup} against {second.metalGroup} may corrode.',
  },
]);

export const sides = rulesOf('sides', [
  {
    code: 'plate-side-matches-limb',
    requires: any(is('plate.side', 'either'), same('plate.side', 'limb.side')),
    sentence: 'A {plate.side} plate is planned for a {limb.side} limb.',
  },
]);
