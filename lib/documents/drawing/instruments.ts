import type { ItemOf, Washer } from '../../catalogue/item';
import { compose, type DrawOptions, textHeight, underneath } from './compose';
import { dimensionUpright } from './dimensions';
import { box, centreCross, circle, drawn, line, polyline, words } from './marks';
import { trace } from './path';
import type { LineClass, Scene, Shape } from './scene';

/** Washers and the instruments that have little more than a length: their form is drawn, their length to scale. */

export function drawWasher(washer: Washer, options: DrawOptions = {}): Scene {
  const outer = washer.outerUm ?? (washer.innerUm ?? 4_000) * 2.2;
  const inner = washer.innerUm ?? outer * 0.5;
  const shapes: Shape[] = [
    ...centreCross(0, 0, outer * 0.62),
    circle(0, 0, outer / 2, washer.outerUm === null ? 'notStated' : 'outline', 'material'),
    circle(0, 0, inner / 2, washer.innerUm === null ? 'notStated' : 'outline', 'void'),
  ];
  const textUm = options.textUm ?? textHeight(shapes, options) * 1.4;
  if (options.dimensions) {
    shapes.push(
      ...dimensionUpright(-outer / 2, outer / 2, outer * 0.8, outer / 2, {
        um: washer.outerUm,
        textUm,
        name: 'outer',
      }),
      ...dimensionUpright(-inner / 2, inner / 2, -outer * 0.8, -outer / 2, {
        um: washer.innerUm,
        textUm,
        name: 'inner',
      }),
    );
  }
  return compose({
    shapes,
    measures: [
      { name: 'inner', um: washer.innerUm },
      { name: 'outer', um: washer.outerUm },
    ],
  });
}

/** Two crossed halves about a pivot, finger rings at the left. */
export function drawForceps(forceps: ItemOf<'reductionForceps'>, options: DrawOptions = {}): Scene {
  const length = forceps.lengthUm ?? 160_000;
  const edge: LineClass = forceps.lengthUm === null ? 'notStated' : 'outline';
  const pivot = length * 0.66;
  const ring = length * 0.075;
  const arm = length * 0.02;
  const half = (way: 1 | -1): Shape[] => {
    const limb = trace(ring, way * length * 0.2)
      .curve(length * 0.3, way * length * 0.17, pivot - length * 0.1, way * length * 0.03, pivot, -way * arm)
      .curve(
        pivot + length * 0.12,
        -way * length * 0.12,
        length * 0.92,
        -way * length * 0.12,
        length,
        -way * length * 0.012,
      )
      .to(length - length * 0.02, -way * length * 0.006)
      .curve(
        length * 0.9,
        -way * length * 0.075,
        pivot + length * 0.13,
        -way * length * 0.07,
        pivot,
        way * arm,
      )
      .curve(
        pivot - length * 0.1,
        way * length * 0.07,
        length * 0.3,
        way * length * 0.21,
        ring,
        way * length * 0.235,
      )
      .close();
    return [
      drawn(limb, edge, 'material'),
      circle(ring, way * length * 0.217, ring, edge, 'material'),
      circle(ring, way * length * 0.217, ring * 0.68, 'fine', 'void'),
    ];
  };
  const shapes: Shape[] = [
    ...half(1),
    ...half(-1),
    circle(pivot, 0, arm * 1.3, 'outline', 'material'),
    circle(pivot, 0, arm * 0.5, 'fine'),
  ];
  if (forceps.jaw === 'ballTipped') shapes.push(circle(length, 0, arm * 0.9, 'outline', 'material'));
  if (forceps.jaw === 'serrated' || forceps.jaw === 'toothed') {
    const teeth = forceps.jaw === 'serrated' ? 6 : 3;
    for (let index = 0; index < teeth; index += 1) {
      const x = length * (0.9 + (0.08 * index) / teeth);
      shapes.push(line(x, -arm * 0.6 * (1 - index / teeth), x, arm * 0.6 * (1 - index / teeth), 'fine'));
    }
  }
  return lengthScene(shapes, options, length, forceps.lengthUm);
}

export function drawBender(bender: ItemOf<'plateBender'>, options: DrawOptions = {}): Scene {
  const width = bender.takesWidthUm ?? 12_000;
  const thickness = bender.takesThicknessUm ?? width * 0.3;
  const slotLine: LineClass =
    bender.takesWidthUm === null || bender.takesThicknessUm === null ? 'notStated' : 'outline';
  const shapes: Shape[] = [];
  if (bender.form === 'bendingPress') {
    shapes.push(
      box(-width * 1.6, width * 0.6, width * 3.2, width * 0.8, width * 0.15),
      box(-width * 1.2, 0, width * 0.6, width * 0.6, width * 0.2),
      box(width * 0.6, 0, width * 0.6, width * 0.6, width * 0.2),
      box(-width * 0.25, -width * 1.4, width * 0.5, width * 1.2, width * 0.2),
      polyline(
        [
          [width * 0.1, -width * 1.1],
          [width * 4.6, -width * 1.9],
          [width * 4.6, -width * 1.55],
          [width * 0.1, -width * 0.8],
        ],
        'outline',
        'material',
        true,
      ),
      box(-width * 1.4, -thickness * 0.1, width * 2.8, thickness, 0, slotLine, 'void'),
    );
  } else {
    const length = width * 14;
    shapes.push(
      box(0, -width * 0.45, length, width * 0.9, width * 0.4),
      box(length, -width, width * 1.8, width * 2, width * 0.3),
      box(length + width * 0.5, -width / 2, thickness, width, thickness * 0.2, slotLine, 'void'),
      line(width, 0, length * 0.5, 0, 'fine'),
    );
    if (bender.form === 'bendingPliers')
      shapes.push(
        box(0, width * 0.7, length * 0.8, width * 0.7, width * 0.3),
        circle(length * 0.86, width * 0.35, width * 0.3, 'fine', 'void'),
      );
  }
  const textUm = textHeight(shapes, options);
  if (options.dimensions) {
    const text =
      slotLine === 'notStated'
        ? 'plates it takes: not all stated'
        : `plates up to ${width / 1000} × ${thickness / 1000} mm`;
    shapes.push(
      words(
        width * 2,
        width * 1.4 + textUm * 1.6,
        text,
        textUm,
        slotLine === 'notStated' ? 'notStated' : 'dimension',
      ),
    );
  }
  return compose({
    shapes,
    measures: [
      { name: 'plate thickness', um: bender.takesThicknessUm },
      { name: 'plate width', um: bender.takesWidthUm },
    ],
  });
}

export function drawHolder(holder: ItemOf<'holder'>, options: DrawOptions = {}): Scene {
  const length = holder.lengthUm ?? 150_000;
  const edge: LineClass = holder.lengthUm === null ? 'notStated' : 'outline';
  const w = length * 0.045;
  const shapes: Shape[] = [
    drawn(
      trace(0, -w)
        .to(length * 0.62, -w * 1.2)
        .curve(length * 0.8, -w * 1.2, length * 0.9, -w * 0.5, length, -w * 0.16)
        .to(length, w * 0.16)
        .curve(length * 0.9, w * 0.5, length * 0.8, w * 1.2, length * 0.62, w * 1.2)
        .to(0, w)
        .arc(0, -w, w)
        .close(),
      edge,
      'material',
    ),
    line(length * 0.1, 0, length, 0, 'fine'),
    ...[0.2, 0.24, 0.28, 0.32, 0.36, 0.4].map((part) =>
      line(length * part, -w * 0.9, length * part, w * 0.9, 'fine'),
    ),
  ];
  if (holder.holds === 'plate' || holder.holds === 'bone')
    shapes.push(
      polyline(
        [
          [length, -w * 0.16],
          [length + w, -w * 1.1],
          [length + w * 1.3, -w * 0.9],
          [length + w * 0.4, 0],
          [length + w * 1.3, w * 0.9],
          [length + w, w * 1.1],
          [length, w * 0.16],
        ],
        edge,
        'material',
        true,
      ),
    );
  return lengthScene(shapes, options, length, holder.lengthUm);
}

/** An outline that stands for an instrument whose form nobody has described. */
export function drawGeneral(
  item: ItemOf<'generalInstrument'> | ItemOf<'consumable'>,
  options: DrawOptions = {},
): Scene {
  const lengthUm = item.kind === 'generalInstrument' ? item.lengthUm : null;
  if (item.kind === 'consumable') {
    const shapes = [
      box(0, 0, 60_000, 40_000, 3_000, 'notStated'),
      line(0, 8_000, 60_000, 8_000, 'fine'),
      line(0, 32_000, 60_000, 32_000, 'fine'),
    ];
    return compose({ shapes, measures: [] });
  }
  const length = lengthUm ?? 180_000;
  const w = length * 0.05;
  const edge: LineClass = lengthUm === null ? 'notStated' : 'outline';
  const shapes: Shape[] = [
    box(0, -w * 0.8, length * 0.45, w * 1.6, w * 0.6, edge),
    box(length * 0.45, -w * 0.35, length * 0.4, w * 0.7, 0, edge),
    drawn(
      trace(length * 0.85, -w * 0.35)
        .to(length * 0.96, -w * 0.6)
        .curve(length, -w * 0.5, length, w * 0.5, length * 0.96, w * 0.6)
        .to(length * 0.85, w * 0.35)
        .close(),
      edge,
      'material',
    ),
    line(-w, 0, length + w, 0, 'centre'),
  ];
  return lengthScene(shapes, options, length, lengthUm);
}

function lengthScene(shapes: Shape[], options: DrawOptions, length: number, lengthUm: number | null): Scene {
  const textUm = textHeight(shapes, options);
  const all = options.dimensions
    ? [...shapes, ...underneath(shapes, 0, length, { um: lengthUm, textUm })]
    : shapes;
  return compose({ shapes: all, measures: [{ name: 'length', um: lengthUm }] });
}
