import type { Item } from '@/lib/catalogue/item';
import { neverStated, type RuleCase } from './case';
import { corticalScrew, driver, handle, limiter, lockingScrew, plate } from './pieces';

const turns = (one = driver(), screw = corticalScrew()) => ({
  relation: 'turns' as const,
  driver: one,
  screw,
});
const hexalobular = (number: number) => ({ form: 'hexalobular' as const, number });
const joins = (
  shank = driver(),
  socket: ReturnType<typeof handle> | ReturnType<typeof limiter> = handle(),
) => ({ relation: 'joins' as const, shank, socket });
const limits = (one = limiter(), screw = lockingScrew()) => ({
  relation: 'limits' as const,
  limiter: one,
  screw,
});
const wears = (first: Item, second: Item) => ({ relation: 'wearsWith' as const, first, second });
const sides = (side: 'left' | 'right' | 'either' | null, limb: 'left' | 'right') => ({
  relation: 'sides' as const,
  plate: plate({ side }),
  limb,
});
const crossSlot = { form: 'crossSlot' as const, sizeUm: 3000 };

export const drivingCases: RuleCase[] = [
  { rule: 'driver-drive-form-equal', says: 'met', why: 'hexagon in hexagon', ask: turns() },
  {
    rule: 'driver-drive-form-equal',
    says: 'notMet',
    why: 'hexalobular in hexagon',
    ask: turns(driver({ drive: hexalobular(15) })),
  },
  {
    rule: 'driver-drive-form-equal',
    says: 'missing',
    why: 'the screw’s drive is not stated',
    ask: turns(driver(), corticalScrew({ drive: null })),
  },

  { rule: 'driver-drive-size-equal', says: 'met', why: '2.5 in 2.5', ask: turns() },
  {
    rule: 'driver-drive-size-equal',
    says: 'met',
    why: '15 in 15',
    ask: turns(driver({ drive: hexalobular(15) }), lockingScrew()),
  },
  {
    rule: 'driver-drive-size-equal',
    says: 'notMet',
    why: '3.5 in 2.5',
    ask: turns(driver({ drive: { form: 'hexagonSocket', acrossFlatsUm: 3500 } })),
  },
  {
    rule: 'driver-drive-size-equal',
    says: 'notMet',
    why: '10 in 15',
    ask: turns(driver({ drive: hexalobular(10) }), lockingScrew()),
  },
  {
    rule: 'driver-drive-size-equal',
    says: 'missing',
    why: 'the driver’s tip is not stated',
    ask: turns(driver({ drive: null })),
    missing: ['driver.drive'],
  },

  { rule: 'drive-of-ha-hb-screws', says: 'met', why: 'HA with a hexagon (ISO 5835)', ask: turns() },
  {
    rule: 'drive-of-ha-hb-screws',
    says: 'notMet',
    why: 'HA with a cross slot',
    ask: turns(driver({ drive: crossSlot }), corticalScrew({ drive: crossSlot })),
  },
  {
    rule: 'drive-of-ha-hb-screws',
    says: 'missing',
    why: 'the thread form is not stated',
    ask: turns(driver({ drive: crossSlot }), corticalScrew({ threadForm: null, drive: crossSlot })),
    missing: ['screw.threadForm'],
  },

  {
    rule: 'drive-of-hc-hd-screws',
    says: 'met',
    why: 'HC with a cross slot',
    ask: turns(driver({ drive: crossSlot }), corticalScrew({ threadForm: 'HC', drive: crossSlot })),
  },
  {
    rule: 'drive-of-hc-hd-screws',
    says: 'notMet',
    why: 'HC with a hexagon',
    ask: turns(driver(), corticalScrew({ threadForm: 'HC' })),
  },
  {
    rule: 'drive-of-hc-hd-screws',
    says: 'missing',
    why: 'the drive is not stated',
    ask: turns(driver(), corticalScrew({ threadForm: 'HD', drive: null })),
  },

  { rule: 'shank-comes-off', says: 'met', why: 'a shaft for handles', ask: joins() },
  {
    rule: 'shank-comes-off',
    says: 'notMet',
    why: 'a fixed handle',
    ask: joins(driver({ fixedHandle: true, coupling: null })),
  },
  {
    rule: 'shank-comes-off',
    says: 'missing',
    why: 'whether it comes off is not known',
    ask: joins({ ...driver(), fixedHandle: neverStated }),
  },

  { rule: 'socket-takes-shank', says: 'met', why: 'hexagonal 6.3 in a socket for it', ask: joins() },
  {
    rule: 'socket-takes-shank',
    says: 'notMet',
    why: 'another size',
    ask: joins(driver({ coupling: { form: 'hexShank', sizeUm: 4500 } })),
  },
  {
    rule: 'socket-takes-shank',
    says: 'notMet',
    why: 'another form',
    ask: joins(driver({ coupling: { form: 'grooveShank', sizeUm: 6300 } })),
  },
  {
    rule: 'socket-takes-shank',
    says: 'missing',
    why: 'the socket is not stated',
    ask: joins(driver(), handle({ takes: null })),
    missing: ['socket.takes'],
  },

  {
    rule: 'limiter-not-in-limiter',
    says: 'met',
    why: 'a driver in a limiter',
    ask: joins(driver(), limiter()),
  },
  {
    rule: 'limiter-not-in-limiter',
    says: 'notMet',
    why: 'a limiter in a limiter',
    ask: { relation: 'joins', shank: limiter(), socket: limiter() },
  },
  {
    rule: 'limiter-not-in-limiter',
    says: 'missing',
    why: 'what it is, is not known',
    ask: { relation: 'joins', shank: { ...limiter(), kind: neverStated }, socket: limiter() },
  },

  { rule: 'limiter-for-locking-screws', says: 'met', why: 'a locking screw', ask: limits() },
  {
    rule: 'limiter-for-locking-screws',
    says: 'notMet',
    why: 'a plain screw',
    ask: limits(limiter(), corticalScrew()),
  },
  {
    rule: 'limiter-for-locking-screws',
    says: 'missing',
    why: 'the head may be plain',
    ask: limits(limiter(), corticalScrew({ head: null })),
    missing: ['screw.head'],
  },

  { rule: 'limiter-torque-class-equal', says: 'met', why: '1.5 N·m for 1.5', ask: limits() },
  {
    rule: 'limiter-torque-class-equal',
    says: 'notMet',
    why: '4 N·m for 1.5',
    ask: limits(limiter({ torqueNmm: 4000 })),
  },
  {
    rule: 'limiter-torque-class-equal',
    says: 'missing',
    why: 'the screw’s class is not stated',
    ask: limits(limiter(), lockingScrew({ torqueNmm: null })),
    missing: ['screw.torqueNmm'],
  },

  {
    rule: 'metals-alike-in-contact',
    says: 'met',
    why: 'two steels of different parts',
    ask: wears(plate({ material: 'iso5832-1' }), corticalScrew({ material: 'iso5832-9' })),
  },
  {
    rule: 'metals-alike-in-contact',
    says: 'met',
    why: 'a polymer is no metal',
    ask: wears(plate({ material: 'polymer' }), corticalScrew()),
  },
  {
    rule: 'metals-alike-in-contact',
    says: 'notMet',
    why: 'steel screw in a titanium plate (worked example B1)',
    ask: wears(plate({ material: 'iso5832-3' }), corticalScrew()),
  },
  {
    rule: 'metals-alike-in-contact',
    says: 'missing',
    why: 'one material is not stated',
    ask: wears(plate({ material: null }), corticalScrew()),
    missing: ['first.material'],
  },

  { rule: 'plate-side-matches-limb', says: 'met', why: 'left on left', ask: sides('left', 'left') },
  { rule: 'plate-side-matches-limb', says: 'met', why: 'either side', ask: sides('either', 'right') },
  {
    rule: 'plate-side-matches-limb',
    says: 'notMet',
    why: 'a left plate for a right limb (worked example B1)',
    ask: sides('left', 'right'),
  },
  {
    rule: 'plate-side-matches-limb',
    says: 'missing',
    why: 'the plate’s side is not stated',
    ask: sides(null, 'left'),
    missing: ['plate.side'],
  },
];
