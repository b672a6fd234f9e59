import { contains, flatten, stadium } from '../../documents/drawing/path';
import { holeHalfUm, inPlateFrame, plateOutline } from '../../documents/drawing/plateOutline';
import type { Path } from '../../documents/drawing/scene';
import { writeMm } from '../../quantities/length';
import { HAS_PLAIN_ZONE, HAS_THREADED_ZONE, type Hole } from '../hole';
import type { Plate } from '../item';
import { mustBeBelow, mustLieWithin, mustNotExceed, type Note } from './note';

/** Bounds no plate for bone leaves; common practice, no source. Wide on purpose: they catch a wrong unit, not a rare plate. */
const LENGTH = [8_000, 500_000] as const;
const WIDTH = [2_000, 80_000] as const;
const THICKNESS = [300, 12_000] as const;

export function checkPlate(plate: Plate, note: Note): void {
  mustLieWithin(note, { path: ['lengthUm'], um: plate.lengthUm, name: 'A plate length' }, LENGTH);
  mustLieWithin(note, { path: ['widthUm'], um: plate.widthUm, name: 'A plate width' }, WIDTH);
  mustLieWithin(note, { path: ['headWidthUm'], um: plate.headWidthUm, name: 'A head width' }, WIDTH);
  mustLieWithin(note, { path: ['thicknessUm'], um: plate.thicknessUm, name: 'A plate thickness' }, THICKNESS);
  mustBeBelow(
    note,
    { path: ['widthUm'], um: plate.widthUm, name: 'width' },
    { um: plate.lengthUm, name: 'length' },
    'wider-than-long',
  );
  mustBeBelow(
    note,
    { path: ['thicknessUm'], um: plate.thicknessUm, name: 'thickness' },
    { um: plate.widthUm, name: 'width' },
    'thicker-than-wide',
  );
  for (const [index, threadUm] of plate.takesThreadsUm.entries()) {
    mustLieWithin(
      note,
      { path: ['takesThreadsUm', index], um: threadUm, name: 'A screw thread' },
      [1_000, 10_000],
    );
  }
  checkIds(plate.holes, note);
  plate.holes.forEach((hole, index) => {
    checkHole(hole, index, note);
  });
  checkPlaces(plate, note);
  checkOverlaps(plate.holes, note);
}

function checkIds(holes: readonly Hole[], note: Note): void {
  const first = new Map<string, number>();
  holes.forEach(({ id }, index) => {
    const before = first.get(id);
    if (before === undefined) first.set(id, index);
    else
      note(
        ['holes', index, 'id'],
        'duplicate-hole-id',
        `Two holes are called ${id}: give one of them another id.`,
      );
  });
}

function checkHole(hole: Hole, index: number, note: Note): void {
  const at = (field: keyof Hole) => ['holes', index, field];
  const { openingUm, seatUm, slotUm } = hole;
  mustNotExceed(
    note,
    { path: at('openingUm'), um: openingUm, name: `opening of ${hole.id}` },
    { um: seatUm, name: 'seat around it' },
    'opening-beyond-seat',
  );
  mustNotExceed(
    note,
    { path: at('slotUm'), um: seatUm ?? openingUm, name: `width of ${hole.id}` },
    { um: slotUm, name: 'slot’s length' },
    'slot-shorter-than-opening',
  );
  const hasSlot =
    hole.holeClass === 'compressionSlot' ||
    hole.holeClass === 'elongatedSlot' ||
    hole.holeClass === 'twoZone';
  if (slotUm !== null && !hasSlot) {
    note(
      at('slotUm'),
      'round-hole-with-slot',
      `${hole.id} is round: leave its slot length empty, or choose a slot.`,
    );
  }
  if (hole.plainSeat !== null && !HAS_PLAIN_ZONE[hole.holeClass]) {
    note(at('plainSeat'), 'no-plain-zone', `${hole.id} has no plain zone, so it has no seat form.`);
  }
  if (hole.lockingFamily !== null && !HAS_THREADED_ZONE[hole.holeClass]) {
    note(at('lockingFamily'), 'no-threaded-zone', `${hole.id} has no thread, so no locking family.`);
  }
  if (hole.lockingConeDegrees !== null && hole.holeClass !== 'polyaxialThreaded') {
    note(
      at('lockingConeDegrees'),
      'not-polyaxial',
      `${hole.id} is not polyaxial: only those lock at an angle.`,
    );
  }
}

/** The hole's own outer edge, in the plate's frame. */
function edgeOf(hole: Hole): Path {
  const width = holeHalfUm(hole) * 2;
  return stadium(hole.alongUm, hole.acrossUm, hole.slotUm ?? width, width);
}

function checkPlaces(plate: Plate, note: Note): void {
  const outline = plateOutline(plate);
  // a stand-in outline can't put a hole off the plate; a stated length or width still can
  const edge = outline.missing.length === 0 ? flatten(inPlateFrame(outline.path)) : null;
  plate.holes.forEach((hole, index) => {
    if (plate.lengthUm !== null && hole.alongUm > plate.lengthUm) {
      note(
        ['holes', index, 'alongUm'],
        'hole-off-plate',
        `${hole.id} lies ${writeMm(hole.alongUm)} mm along a plate of ${writeMm(plate.lengthUm)} mm: move it onto the plate.`,
      );
      return;
    }
    const widest = Math.max(plate.widthUm ?? 0, plate.headWidthUm ?? 0) * (plate.shape === 'lShaped' ? 2 : 1);
    const acrossKnown =
      plate.widthUm !== null && (outline.headWidthUm === null || plate.headWidthUm !== null);
    if (acrossKnown && Math.abs(hole.acrossUm) > widest / 2) {
      note(
        ['holes', index, 'acrossUm'],
        'hole-off-plate',
        `${hole.id} lies ${writeMm(Math.abs(hole.acrossUm))} mm off the middle, beyond the plate’s edge: move it onto the plate.`,
      );
      return;
    }
    if (edge === null) return;
    if (!contains(edge, { xUm: hole.alongUm, yUm: hole.acrossUm })) {
      note(
        ['holes', index, 'acrossUm'],
        'hole-off-plate',
        `${hole.id} lies off the plate’s outline: move it onto the plate.`,
      );
    } else if (hole.holeClass !== 'wireHole' && flatten(edgeOf(hole)).some((one) => !contains(edge, one))) {
      note(
        ['holes', index, 'acrossUm'],
        'hole-breaks-edge',
        `${hole.id} breaks through the plate’s edge: move it, or check its size.`,
      );
    }
  });
}

function checkOverlaps(holes: readonly Hole[], note: Note): void {
  const edges = holes.map((hole) => flatten(edgeOf(hole)));
  holes.forEach((hole, index) => {
    const other = holes.findIndex((before, beforeIndex) => {
      if (beforeIndex >= index) return false;
      const reach =
        Math.max(before.slotUm ?? 0, holeHalfUm(before) * 2) +
        Math.max(hole.slotUm ?? 0, holeHalfUm(hole) * 2);
      if (Math.hypot(before.alongUm - hole.alongUm, before.acrossUm - hole.acrossUm) > reach / 2 + 1)
        return false;
      const [mine, theirs] = [edges[index] ?? [], edges[beforeIndex] ?? []];
      return mine.some((p) => contains(theirs, p)) || theirs.some((p) => contains(mine, p));
    });
    if (other >= 0) {
      note(
        ['holes', index, 'alongUm'],
        'holes-overlap',
        `${hole.id} runs into ${holes[other]?.id ?? 'another hole'}: move one of them.`,
      );
    }
  });
}
