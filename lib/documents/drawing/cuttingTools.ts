import type { Countersink, DrillBit, GuideWire, Tap } from '../../catalogue/item';
import { compose, type DrawOptions, textHeight, underneath } from './compose';
import { dimensionUpright } from './dimensions';
import { box, drawn, line, polyline, words } from './marks';
import { trace } from './path';
import { breakLines, couplingLength, shankEnd, shownLength } from './rod';
import type { LineClass, Scene, Shape } from './scene';

/** Drill bits, taps, countersinks and wires lie along x with their cutting end at the right. */

export function drawBit(bit: DrillBit, options: DrawOptions = {}): Scene {
  const diameter = bit.diameterUm ?? 2_500;
  const edge: LineClass = bit.diameterUm === null ? 'notStated' : 'outline';
  const length = bit.lengthUm ?? diameter * 40;
  const shown = shownLength(length, diameter);
  const half = diameter / 2;
  const end = shown.lengthUm;
  const shank = couplingLength(bit.coupling, diameter);
  const point = diameter * 0.3;
  const flutesFrom = Math.max(shank, end - diameter * 8);
  const shapes: Shape[] = [
    ...shankEnd(bit.coupling, shank, diameter),
    polyline(
      [
        [shank, -half],
        [end - point, -half],
        [end, 0],
        [end - point, half],
        [shank, half],
      ],
      edge,
      'material',
      true,
    ),
    ...flutes(flutesFrom, end - point * 0.4, half, diameter * 2.1),
    line(-diameter, 0, end + diameter, 0, 'centre'),
  ];
  if (bit.cannulationUm !== null) shapes.push(...bore(0, end - point, bit.cannulationUm));
  if (shown.interrupted) shapes.push(...breakLines((shank + flutesFrom) / 2, Math.max(diameter, diameter)));
  return rodScene(shapes, options, {
    end,
    diameter,
    lengthUm: bit.lengthUm,
    diameterUm: bit.diameterUm,
    interrupted: shown.interrupted,
    more: bit.cannulationUm === null ? [] : [{ name: 'cannulation', um: bit.cannulationUm }],
  });
}

export function drawTap(tap: Tap, options: DrawOptions = {}): Scene {
  const thread = tap.threadUm ?? 3_500;
  const edge: LineClass = tap.threadUm === null ? 'notStated' : 'outline';
  const shown = shownLength(tap.lengthUm ?? thread * 25, thread, 15);
  const end = shown.lengthUm;
  const shank = couplingLength(tap.coupling, thread);
  const cut = Math.max(shank, end - thread * 6);
  const neck = thread * 0.36;
  const teeth: [number, number][] = [];
  const pitch = thread * 0.36;
  for (let x = cut; x < end - thread * 0.8; x += pitch)
    teeth.push(
      [x, -neck],
      [x + pitch * 0.3, -thread / 2],
      [x + pitch * 0.5, -thread / 2],
      [x + pitch * 0.9, -neck],
    );
  const lower = teeth.map(([x, y]) => [x, -y] as [number, number]).reverse();
  const shapes: Shape[] = [
    ...shankEnd(tap.coupling, shank, thread),
    box(shank, -neck, cut - shank, neck * 2, 0, edge),
    polyline(
      [
        [cut, -neck],
        ...teeth,
        [end - thread * 0.3, -neck * 0.8],
        [end, -neck * 0.5],
        [end, neck * 0.5],
        [end - thread * 0.3, neck * 0.8],
        ...lower,
        [cut, neck],
      ],
      edge,
      'material',
      true,
    ),
    box(
      cut + thread * 0.6,
      -neck * 0.35,
      Math.max(thread, end - cut - thread),
      neck * 0.7,
      neck * 0.3,
      'fine',
      'void',
    ),
    line(-thread * 0.6, 0, end + thread * 0.6, 0, 'centre'),
  ];
  if (shown.interrupted) shapes.push(...breakLines((shank + cut) / 2, neck * 2));
  return rodScene(shapes, options, {
    end,
    diameter: thread,
    lengthUm: tap.lengthUm,
    diameterUm: tap.threadUm,
    name: 'thread',
    interrupted: shown.interrupted,
  });
}

export function drawCountersink(countersink: Countersink, options: DrawOptions = {}): Scene {
  const head = countersink.headUm ?? 6_000;
  const pin = countersink.pinUm ?? head * 0.4;
  const edge: LineClass = countersink.headUm === null ? 'notStated' : 'outline';
  const shank = couplingLength(countersink.coupling, head * 0.6);
  const neckTo = shank + head * 2.4;
  const coneTo = neckTo + head * 0.25 + (head - pin) / 2;
  const end = coneTo + pin * 1.6;
  const shapes: Shape[] = [
    ...shankEnd(countersink.coupling, shank, head * 0.6),
    box(shank, -head * 0.28, neckTo - shank, head * 0.56, 0, edge),
    polyline(
      [
        [neckTo, -head / 2],
        [neckTo + head * 0.25, -head / 2],
        [coneTo, -pin / 2],
        [coneTo, pin / 2],
        [neckTo + head * 0.25, head / 2],
        [neckTo, head / 2],
      ],
      edge,
      'material',
      true,
    ),
    ...[-0.3, 0, 0.3].map((part) =>
      line(neckTo + head * 0.1, head * part, coneTo - head * 0.05, head * part * 0.55, 'fine'),
    ),
    box(coneTo, -pin / 2, end - coneTo, pin, pin * 0.2, countersink.pinUm === null ? 'notStated' : edge),
    line(-head * 0.4, 0, end + head * 0.4, 0, 'centre'),
  ];
  const textUm = textHeight(shapes, options);
  if (options.dimensions) {
    shapes.push(
      ...dimensionUpright(-pin / 2, pin / 2, end + textUm, end, {
        um: countersink.pinUm,
        textUm,
        name: 'pin',
      }),
      words(
        neckTo,
        -head / 2 - textUm,
        countersink.headUm === null ? 'head not stated' : `head ${countersink.headUm / 1000} mm`,
        textUm,
        countersink.headUm === null ? 'notStated' : 'dimension',
      ),
    );
  }
  return compose({
    shapes,
    measures: [
      { name: 'head', um: countersink.headUm },
      { name: 'pin', um: countersink.pinUm },
    ],
  });
}

export function drawWire(wire: GuideWire, options: DrawOptions = {}): Scene {
  const diameter = wire.diameterUm ?? 1_600;
  const edge: LineClass = wire.diameterUm === null ? 'notStated' : 'outline';
  const shown = shownLength(wire.lengthUm ?? diameter * 90, diameter, 22);
  const half = diameter / 2;
  const end = shown.lengthUm;
  const shapes: Shape[] = [
    polyline(
      [
        [half, -half],
        [end - diameter * 1.6, -half],
        [end, 0],
        [end - diameter * 1.6, half],
        [half, half],
        [0, half * 0.5],
        [0, -half * 0.5],
      ],
      edge,
      'material',
      true,
    ),
    line(end - diameter * 1.6, -half, end - diameter * 0.5, half * 0.3, 'fine'),
    line(-diameter, 0, end + diameter, 0, 'centre'),
  ];
  if (wire.threadedTip) {
    for (let x = end - diameter * 7; x < end - diameter * 1.8; x += diameter * 0.5)
      shapes.push(line(x, -half, x + diameter * 0.25, half, 'thread'));
  }
  if (shown.interrupted) shapes.push(...breakLines(end * 0.4, diameter));
  return rodScene(shapes, options, {
    end,
    diameter,
    lengthUm: wire.lengthUm,
    diameterUm: wire.diameterUm,
    interrupted: shown.interrupted,
  });
}

/** Two helical edges across the cutting part of a bit. */
function flutes(from: number, to: number, half: number, pitch: number): Shape[] {
  const shapes: Shape[] = [];
  for (let x = from; x < to - pitch * 0.2; x += pitch / 2) {
    const end = Math.min(to, x + pitch * 0.62);
    const part = (end - x) / (pitch * 0.62);
    shapes.push(
      drawn(
        trace(x, -half)
          .curve(
            x + (end - x) * 0.35,
            -half * 0.9,
            x + (end - x) * 0.65,
            half * 0.9 * part,
            end,
            half * (2 * part - 1),
          )
          .open(),
        'fine',
      ),
    );
  }
  return shapes;
}

function bore(from: number, to: number, diameterUm: number): Shape[] {
  const half = diameterUm / 2;
  return [line(from, -half, to, -half, 'hidden'), line(from, half, to, half, 'hidden')];
}

function rodScene(
  shapes: Shape[],
  options: DrawOptions,
  {
    end,
    diameter,
    lengthUm,
    diameterUm,
    name = 'diameter',
    interrupted,
    more = [],
  }: {
    end: number;
    diameter: number;
    lengthUm: number | null;
    diameterUm: number | null;
    name?: string;
    interrupted: boolean;
    more?: { name: string; um: number | null }[];
  },
): Scene {
  const textUm = textHeight(shapes, options);
  const all = [...shapes];
  if (options.dimensions) {
    all.push(
      ...dimensionUpright(-diameter / 2, diameter / 2, end + diameter + textUm, end, {
        um: diameterUm,
        textUm,
      }),
    );
    all.push(...underneath(all, 0, end, { um: lengthUm, textUm }));
  }
  return compose({
    shapes: all,
    interrupted,
    measures: [{ name, um: diameterUm }, { name: 'length', um: lengthUm }, ...more],
  });
}
