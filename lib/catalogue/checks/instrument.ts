import type {
  DepthGauge,
  DrillBit,
  DrillSleeve,
  Driver,
  GuideWire,
  Item,
  ItemOf,
  TorqueLimiter,
  Washer,
} from '../item';
import { mustBeBelow, mustLieWithin, type Note } from './note';

/** Bounds that catch a wrong unit; common practice, no source. */
const BIT = [500, 20_000] as const;
const TOOL_LENGTH = [10_000, 600_000] as const;

export function checkBit(bit: DrillBit | GuideWire, note: Note): void {
  mustLieWithin(note, { path: ['diameterUm'], um: bit.diameterUm, name: 'A diameter' }, BIT);
  mustLieWithin(note, { path: ['lengthUm'], um: bit.lengthUm, name: 'A length' }, TOOL_LENGTH);
  mustBeBelow(
    note,
    { path: ['diameterUm'], um: bit.diameterUm, name: 'diameter' },
    { um: bit.lengthUm, name: 'length' },
    'wider-than-long',
  );
  if (bit.kind === 'drillBit') {
    mustBeBelow(
      note,
      { path: ['cannulationUm'], um: bit.cannulationUm, name: 'cannulation' },
      { um: bit.diameterUm, name: 'diameter' },
      'cannulation-not-below-diameter',
    );
  }
}

export function checkSleeve(sleeve: DrillSleeve, note: Note): void {
  sleeve.ends.forEach((end, index) => {
    mustLieWithin(note, { path: ['ends', index, 'boreUm'], um: end.boreUm, name: 'A bore' }, BIT);
    mustBeBelow(
      note,
      { path: ['ends', index, 'boreUm'], um: end.boreUm, name: 'bore' },
      { um: end.outerUm, name: 'outside diameter' },
      'bore-not-below-outside',
    );
    if (end.lockingFamily !== null && end.outerForm !== null && end.outerForm !== 'threaded') {
      note(
        ['ends', index, 'lockingFamily'],
        'family-without-thread',
        'Only a threaded end has a locking family.',
      );
    }
  });
  if (
    sleeve.form === 'threaded' &&
    !sleeve.ends.some((end) => end.outerForm === 'threaded' || end.outerForm === null)
  ) {
    note(['ends', 0, 'outerForm'], 'threaded-sleeve-without-thread', 'A threaded sleeve has a threaded end.');
  }
  if (sleeve.form === 'doubleEnded' && sleeve.ends.length !== 2) {
    note(['ends'], 'double-sleeve-with-one-end', 'A double-ended sleeve has two ends: describe both.');
  }
  const positions = sleeve.ends.flatMap((end) => end.positions ?? []);
  const unsaid = sleeve.ends.some((end) => end.positions === null);
  if (sleeve.form === 'dualPosition' && !unsaid && !positions.includes('offset')) {
    note(
      ['ends', 0, 'positions'],
      'no-offset-position',
      'A neutral-and-offset sleeve drills in the offset position with one of its ends.',
    );
  }
}

export function checkWasher(washer: Washer, note: Note): void {
  mustBeBelow(
    note,
    { path: ['innerUm'], um: washer.innerUm, name: 'inner diameter' },
    { um: washer.outerUm, name: 'outer diameter' },
    'inner-not-below-outer',
  );
}

export function checkGauge(gauge: DepthGauge, note: Note): void {
  mustBeBelow(
    note,
    { path: ['fromUm'], um: gauge.fromUm, name: 'shortest it measures' },
    { um: gauge.toUm, name: 'longest it measures' },
    'range-backwards',
  );
  mustLieWithin(note, { path: ['toUm'], um: gauge.toUm, name: 'A measuring range' }, [5_000, 300_000]);
  mustLieWithin(note, { path: ['hookUm'], um: gauge.hookUm, name: 'A hook' }, [300, 10_000]);
}

/** A tool has a fixed handle or a shank, never both. */
export function checkHolding(tool: Driver | TorqueLimiter, note: Note): void {
  if (tool.fixedHandle && tool.coupling !== null) {
    note(
      ['coupling', 'form'],
      'handle-and-shank',
      'It has a fixed handle, so no shank: leave the shank empty or take the handle off.',
    );
  }
  if (tool.kind === 'driver')
    mustLieWithin(note, { path: ['lengthUm'], um: tool.lengthUm, name: 'A driver length' }, TOOL_LENGTH);
}

export function checkCountersink(countersink: ItemOf<'countersink'>, note: Note): void {
  mustBeBelow(
    note,
    { path: ['pinUm'], um: countersink.pinUm, name: 'pin' },
    { um: countersink.headUm, name: 'head it makes room for' },
    'pin-not-below-head',
  );
}

/** Sides are for what is shaped for one: a screw or a bit has none. */
export function checkSide(item: Item, note: Note): void {
  if (item.side === null || item.side === 'either') return;
  if (
    item.kind !== 'plate' &&
    item.kind !== 'plateBender' &&
    item.kind !== 'generalInstrument' &&
    item.kind !== 'drillSleeve'
  ) {
    note(
      ['side'],
      'side-of-sideless',
      'Such an item suits both sides: choose “either side” or leave it not stated.',
    );
  }
  if (item.kind === 'plate' && ['straightNarrow', 'straightBroad', 'oneThirdTubular'].includes(item.shape)) {
    note(
      ['side'],
      'side-of-symmetrical-plate',
      'A straight plate has no side: choose “either side”, or check its shape.',
    );
  }
}
