import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { extentOf } from '@/lib/documents/drawing/compose';
import { drawItem } from '@/lib/documents/drawing/item';
import { contains, flatten, pathData, roundedPolygon, stadium } from '@/lib/documents/drawing/path';
import { drawPlate } from '@/lib/documents/drawing/plate';
import { plateOutline } from '@/lib/documents/drawing/plateOutline';
import type { LineClass, Scene, Shape } from '@/lib/documents/drawing/scene';
import { drawScrew } from '@/lib/documents/drawing/screw';
import { drawingInWords } from '@/lib/wording/drawing';
import { bitFor, holeFor, plateFor, screwFor, sleeveFor } from '../../fixtures/catalogueItems';

const textsOf = (scene: Scene) =>
  scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
const lined = (scene: Scene, line: LineClass) =>
  scene.shapes.filter(
    (shape): shape is Exclude<Shape, { kind: 'text' }> => shape.kind !== 'text' && shape.line === line,
  );
const width = (shapes: Shape[]) => {
  const { left, right } = extentOf(shapes);
  return right - left;
};
const height = (shapes: Shape[]) => {
  const { top, bottom } = extentOf(shapes);
  return bottom - top;
};

describe('a plate', () => {
  it('is as long and as wide as its dimensions say, and its holes lie as far apart', () => {
    const scene = drawPlate(plateFor());
    const [outline] = lined(scene, 'outline');
    expect(width(outline ? [outline] : [])).toBeCloseTo(97_000, -1);
    expect(height(outline ? [outline] : [])).toBeCloseTo(11_000, -1);
    const xs = scene.holes.map(({ centre }) => centre.xUm);
    expect(xs.slice(1).map((x, index) => Math.round(x - (xs[index] ?? 0)))).toEqual(Array(7).fill(12_000));
    expect(scene.holes[0]?.centre.xUm).toBeCloseTo(scene.originXUm + 6_500, 0);
  });

  it('has its left edge up: a hole 9 mm to the left is drawn 9 mm above the middle', () => {
    const head = holeFor({ id: 'H1', segment: 'head', alongUm: 90_000, acrossUm: 9_000 });
    const scene = drawPlate(plateFor({ shape: 'tRightAngled', headWidthUm: 30_000, holes: [head] }));
    expect(scene.originYUm - (scene.holes[0]?.centre.yUm ?? 0)).toBeCloseTo(9_000, 0);
  });

  it.each(['tRightAngled', 'tOblique', 'lShaped', 'cloverleaf', 'buttress', 'anatomic'] as const)(
    'with a head (%s) has its stated length and head width over all',
    (shape) => {
      const { path } = plateOutline(plateFor({ shape, headWidthUm: 30_000, side: 'left', holes: [] }));
      const points = flatten(path);
      expect(Math.max(...points.map(({ xUm }) => xUm))).toBeCloseTo(97_000, -2);
      const ys = points.map(({ yUm }) => yUm);
      expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(30_000, -2);
    },
  );

  it('leans to the other side for the other limb', () => {
    const reach = (side: 'left' | 'right') => {
      const ys = flatten(
        plateOutline(plateFor({ shape: 'lShaped', headWidthUm: 30_000, side, holes: [] })).path,
      ).map(({ yUm }) => yUm);
      return Math.max(...ys) + Math.min(...ys);
    };
    expect(reach('left')).toBeCloseTo(-reach('right'), 0);
    expect(reach('left')).not.toBeCloseTo(0, 0);
  });

  it('draws each hole class from different shapes', () => {
    const classes = [
      'round',
      'compressionSlot',
      'threaded',
      'polyaxialThreaded',
      'twoZone',
      'elongatedSlot',
      'wireHole',
    ] as const;
    const drawn = classes.map((holeClass) => {
      const scene = drawPlate(
        plateFor({
          holes: [holeFor({ holeClass, alongUm: 40_000, slotUm: holeClass === 'round' ? null : 12_000 })],
        }),
      );
      return scene.shapes
        .slice(1)
        .map((shape) => (shape.kind === 'text' ? 'text' : `${shape.kind} ${shape.line}`))
        .join(', ');
    });
    expect(new Set(drawn).size).toBe(classes.length);
  });

  it('draws a slot as long and as wide as stated', () => {
    const [hole] = drawPlate(
      plateFor({ holes: [holeFor({ holeClass: 'elongatedSlot', slotUm: 14_000, alongUm: 40_000 })] }),
    ).holes;
    const points = hole ? flatten(hole.outline) : [];
    const xs = points.map(({ xUm }) => xUm);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(14_000, -1);
    expect(hole).toMatchObject({ widthUm: 14_000, heightUm: 6_500 });
  });

  it('says what is not stated, and draws it dashed instead of guessing in silence', () => {
    const plate = plateFor({ lengthUm: null, thicknessUm: null });
    const scene = drawPlate(plate, { dimensions: true });
    expect(textsOf(scene)).toContain('not stated');
    expect(textsOf(scene)).toContain('thickness not stated');
    expect(lined(scene, 'notStated').length).toBeGreaterThan(0);
    expect(drawingInWords(plate, scene)).toContain('Not stated: length, thickness.');
  });

  it('writes its dimensions in millimetres', () => {
    const texts = textsOf(drawPlate(plateFor(), { dimensions: true }));
    expect(texts).toEqual(expect.arrayContaining(['97 mm', '11 mm', '12 mm', '3.3 mm thick', '20 mm']));
  });

  it('marks a zone from where it begins to where it ends, and the chosen holes', () => {
    const scene = drawPlate(plateFor(), { zone: { fromUm: 40_000, toUm: 52_000 }, highlight: ['S4'] });
    const band = scene.shapes.find((shape) => shape.kind === 'roundedRect' && shape.fill === 'zone');
    expect(band).toMatchObject({ widthUm: 12_000 });
    expect(band?.kind === 'roundedRect' ? band.xUm - scene.originXUm : null).toBeCloseTo(40_000, 0);
    expect(lined(scene, 'accent')).toHaveLength(1);
  });

  it('labels every hole once, wherever it lies', () => {
    const scene = drawPlate(plateFor(), { showIds: true });
    expect(textsOf(scene)).toEqual(['S1', 'S2', 'S3', 'S4', 'S5', 'S6', 'S7', 'S8']);
  });
});

describe('a screw', () => {
  const bodyOf = (scene: Scene, line: LineClass = 'outline') =>
    lined(scene, line).filter((shape) => shape.kind === 'path');

  it('is as long as stated, head included, and its crests stand at the pitch', () => {
    const scene = drawScrew(screwFor(), { headView: false });
    expect(width(bodyOf(scene))).toBeCloseTo(32_000, -1);
    const thread = bodyOf(scene).find((shape) => shape.kind === 'path' && shape.segments.length > 40);
    const crests = (thread ? flatten(thread as never) : []).filter(
      ({ yUm }) => Math.abs(scene.originYUm - yUm - 1_750) < 1,
    );
    const starts = crests.filter((_, index) => index % 2 === 0).map(({ xUm }) => xUm);
    expect(starts.length).toBeGreaterThan(15);
    for (const [index, x] of starts.slice(1).entries())
      expect(x - (starts[index] ?? 0)).toBeCloseTo(1_250, -1);
  });

  it('has a head and a thread of the stated diameters', () => {
    const shapes = bodyOf(drawScrew(screwFor(), { headView: false }));
    expect(height(shapes)).toBeCloseTo(6_000, -1);
    const thread = shapes.filter((shape) => shape.kind === 'path' && shape.segments.length > 40);
    expect(height(thread)).toBeCloseTo(3_500, -1);
  });

  it('without a pitch shows its thread in the plain form, as ISO 6410 has it', () => {
    // ISO 6410-1 (from memory): crests in a continuous line, roots in a thin one
    expect(lined(drawScrew(screwFor({ pitchUm: null }), { headView: false }), 'thread')).toHaveLength(2);
  });

  it('shows a cannulation through its whole length in hidden lines', () => {
    const hidden = lined(drawScrew(screwFor({ screwKind: 'cannulated', cannulationUm: 1_200 })), 'hidden');
    expect(hidden).toHaveLength(2);
    expect(height(hidden)).toBeCloseTo(1_200, 0);
  });

  it('tells the tips apart', () => {
    const count = (tip: 'blunt' | 'selfTapping' | 'selfDrillingSelfTapping') =>
      pathsOf(drawScrew(screwFor({ tip }), { headView: false }));
    expect(new Set([count('blunt'), count('selfTapping'), count('selfDrillingSelfTapping')]).size).toBe(3);
  });
});

function pathsOf(scene: Scene): string {
  return scene.shapes.flatMap((shape) => (shape.kind === 'path' ? [pathData(shape)] : [])).join('|');
}

describe('instruments', () => {
  it('leave the middle of a long bit out, and say so', () => {
    const bit = bitFor();
    const scene = drawItem(bit, { dimensions: true });
    expect(scene.interrupted).toBe(true);
    expect(textsOf(scene)).toContain('110 mm');
    expect(drawingInWords(bit, scene)).toContain('left out between two break lines');
  });

  it('show a sleeve’s bores to scale in hidden lines', () => {
    const hidden = lined(drawItem(sleeveFor()), 'hidden');
    expect(height(hidden)).toBeCloseTo(3_500, 0);
  });
});

describe('paths', () => {
  it('a slot contains its middle and nothing beyond its ends', () => {
    const slot = stadium(0, 0, 12_000, 4_000);
    expect(contains(flatten(slot), { xUm: 0, yUm: 0 })).toBe(true);
    expect(contains(flatten(slot), { xUm: 6_001, yUm: 0 })).toBe(false);
    expect(contains(flatten(slot), { xUm: 5_900, yUm: 1_900 })).toBe(false);
  });

  it('a rounded polygon stays within its corners and meets its edges', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2_000, max: 90_000 }),
        fc.integer({ min: 2_000, max: 90_000 }),
        fc.nat(60_000),
        (w, h, radiusUm) => {
          const path = roundedPolygon(
            [
              [0, 0],
              [w, 0],
              [w, h],
              [0, h],
            ].map(([xUm = 0, yUm = 0]) => ({ xUm, yUm, radiusUm })),
          );
          const points = flatten(path);
          const xs = points.map(({ xUm }) => xUm);
          const ys = points.map(({ yUm }) => yUm);
          expect(Math.min(...xs)).toBeGreaterThanOrEqual(-1);
          expect(Math.max(...xs)).toBeCloseTo(w, -1);
          expect(Math.max(...ys)).toBeCloseTo(h, -1);
          expect(contains(flatten(path), { xUm: w / 2, yUm: h / 2 })).toBe(true);
        },
      ),
    );
  });

  it('writes path data a painter can read', () => {
    expect(pathData(stadium(0, 0, 2_000, 1_000), 100)).toBe(
      'M-5 -5L5 -5A5 5 0 0 1 5 5L-5 5A5 5 0 0 1 -5 -5Z',
    );
  });
});
