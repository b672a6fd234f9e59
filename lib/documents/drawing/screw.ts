import type { Screw } from '../../catalogue/item';
import { compose, type DrawOptions, textHeight } from './compose';
import { driveMark } from './drive';
import { centreCross, circle, drawn, line, polyline } from './marks';
import { trace } from './path';
import type { LineClass, Path, Scene, Shape } from './scene';
import { type ScrewSizes as Sizes, screwDimensions } from './screwDimensions';

export interface ScrewDrawOptions extends DrawOptions {
  /** The head seen from above, beside the screw; on unless told otherwise. */
  headView?: boolean;
}

function sizesOf(screw: Screw): Sizes {
  const thread = screw.threadUm ?? (screw.coreUm === null ? 3_500 : Math.round(screw.coreUm * 1.4));
  const core = Math.min(screw.coreUm ?? Math.round(thread * 0.7), thread);
  const length = screw.lengthUm ?? 30_000;
  const partial = screw.threadLengthUm !== null && screw.threadLengthUm < length;
  const shaft = partial ? (screw.shaftUm ?? core) : core;
  const head = Math.max(screw.headUm ?? Math.round(thread * 1.7), shaft);
  const stated = screw.threadUm !== null && screw.lengthUm !== null;
  const threaded = screw.threadLengthUm ?? length;
  return { length, thread, core, shaft, head, threaded, edge: stated ? 'outline' : 'notStated' };
}

/** A screw lying down, its head at the left with the top of the head at x = 0; drawn to scale from its dimensions. */
export function drawScrew(screw: Screw, options: ScrewDrawOptions = {}): Scene {
  const sizes = sizesOf(screw);
  const { length, thread, core, head, edge } = sizes;
  const { path: headPath, height } = headProfile(screw, sizes);
  const tip = tipLength(screw, sizes);
  const threadFrom = Math.max(height, length - sizes.threaded);
  const threadTo = length - tip;
  const partial = threadFrom > height + 1;
  const shapes: Shape[] = [];
  if (partial) shapes.push(drawn(tube(height, threadFrom, sizes.shaft), edge, 'material'));
  shapes.push(...threadShapes(screw, sizes, threadFrom, threadTo), ...tipShapes(screw, sizes, threadTo));
  shapes.push(drawn(headPath, screw.head === null || screw.headUm === null ? 'notStated' : edge, 'material'));
  if (screw.head === 'threaded') shapes.push(...headThread(head, height));
  shapes.push(line(-thread * 0.5, 0, length + thread * 0.5, 0, 'centre'));
  if (screw.cannulationUm !== null) {
    const half = screw.cannulationUm / 2;
    shapes.push(line(0, -half, length, -half, 'hidden'), line(0, half, length, half, 'hidden'));
  }
  const textUm = textHeight(shapes, options);
  if (options.headView !== false) shapes.push(...headView(screw, head));
  if (options.dimensions)
    shapes.push(...screwDimensions(screw, sizes, shapes, { height, threadFrom, partial, core }, textUm));
  return compose({ shapes, measures: measuresOf(screw) });
}

function measuresOf(screw: Screw) {
  return [
    { name: 'length', um: screw.lengthUm },
    { name: 'thread', um: screw.threadUm },
    { name: 'core', um: screw.coreUm },
    { name: 'head', um: screw.headUm },
    { name: 'pitch', um: screw.pitchUm },
    ...(screw.threadLengthUm === null ? [] : [{ name: 'thread length', um: screw.threadLengthUm }]),
    ...(screw.shaftUm === null ? [] : [{ name: 'shaft', um: screw.shaftUm }]),
    ...(screw.screwKind === 'cannulated' ? [{ name: 'cannulation', um: screw.cannulationUm }] : []),
  ];
}

function tube(x1: number, x2: number, diameter: number): Path {
  const half = diameter / 2;
  return trace(x1, -half).to(x2, -half).to(x2, half).to(x1, half).close();
}

/** The head from the side, and how far it reaches along the screw: to where its under-surface meets the shank. */
function headProfile(
  screw: Screw,
  { head, shaft, core, threaded, length }: Sizes,
): { path: Path; height: number } {
  const half = head / 2;
  const neck = (threaded < length ? shaft : core) / 2;
  const rim = head * 0.14;
  if (screw.head === 'conicalPlain') {
    const height = rim + (half - neck);
    return {
      height,
      path: trace(0, -half)
        .to(rim, -half)
        .to(height, -neck)
        .to(height, neck)
        .to(rim, half)
        .to(0, half)
        .close(),
    };
  }
  if (screw.head === 'threaded') {
    const height = head * 0.42;
    const narrow = Math.max(neck, half * 0.86);
    return { height, path: trace(0, -half).to(height, -narrow).to(height, narrow).to(0, half).close() };
  }
  // a ball of the head's own diameter, cut off at the top and run into the shank
  const height = rim + Math.sqrt(Math.max(0, half * half - neck * neck));
  const top = half * 0.94;
  return {
    height,
    path: trace(0, -top)
      .curve(rim * 0.05, -half * 0.985, rim * 0.4, -half, rim, -half)
      .arc(height, -neck, half)
      .to(height, neck)
      .arc(rim, half, half)
      .curve(rim * 0.4, half, rim * 0.05, half * 0.985, 0, top)
      .close(),
  };
}

function headThread(head: number, height: number): Shape[] {
  const narrow = 0.86;
  return [0.2, 0.42, 0.64, 0.86].map((part) => {
    const half = (head / 2) * (1 - (1 - narrow) * part);
    return line(height * (part - 0.1), -half, height * (part + 0.08), half, 'thread');
  });
}

function tipLength(screw: Screw, { thread, core }: Sizes): number {
  if (screw.tip === 'selfDrillingSelfTapping') return core * 0.9;
  if (screw.tip === 'selfTapping') return core * 0.55;
  return Math.min(core * 0.35, thread * 0.3);
}

/**
 * The thread with its crests at the stated pitch, half a turn apart above and below the axis; without a pitch, the plain
 * form of ISO 6410: outer diameter in a full line, core in a fine one.
 */
function threadShapes(screw: Screw, { thread, core, edge }: Sizes, from: number, to: number): Shape[] {
  const pitch = screw.pitchUm;
  const outer = thread / 2;
  const root = core / 2;
  const turns = pitch === null ? 0 : Math.floor((to - from) / pitch);
  if (pitch === null || turns < 2 || turns > 160) {
    return [
      drawn(tube(from, to, thread), edge, 'material'),
      line(from, -root, to, -root, 'thread'),
      line(from, root, to, root, 'thread'),
    ];
  }
  // shallow and deep bone threads lean: the flank away from the tip is the steep one
  const leans = screw.threadForm === 'HA' || screw.threadForm === 'HB';
  const [rise, fall] = leans ? [0.16, 0.52] : [0.34, 0.34];
  const crest = 0.08;
  const upper: [number, number][] = [[from, -root]];
  const lower: [number, number][] = [[from, root]];
  const flights: Shape[] = [];
  for (let turn = 0; turn < turns; turn += 1) {
    const x = from + pitch * (turn + 0.35);
    upper.push(...crestPoints(x, -1));
    if (x + pitch * (0.5 + crest + fall) <= to) lower.push(...crestPoints(x + pitch / 2, 1));
    flights.push(
      line(x + (pitch * crest) / 2, -outer, Math.min(to, x + pitch * (0.5 + crest / 2)), outer, 'thread'),
    );
  }
  upper.push([to, -root]);
  lower.push([to, root]);
  return [polyline([...upper, ...lower.reverse()], edge, 'material', true), ...flights];

  function crestPoints(x: number, way: 1 | -1): [number, number][] {
    const p = pitch ?? 0;
    return [
      [x - p * rise, way * root],
      [x, way * outer],
      [x + p * crest, way * outer],
      [Math.min(to, x + p * (crest + fall)), way * root],
    ];
  }
}

function tipShapes(screw: Screw, { length, core, thread, edge }: Sizes, from: number): Shape[] {
  const root = core / 2;
  const flute = (reach: number) =>
    drawn(
      trace(length - (length - from) * 0.25, -root * 0.35)
        .curve(from, -root * 0.5, from - reach * 0.6, root * 0.1, from - reach, -root * 0.9)
        .open(),
      'fine',
    );
  switch (screw.tip) {
    case 'selfDrillingSelfTapping':
      return [
        polyline(
          [
            [from, -root],
            [length - core * 0.42, -root * 0.82],
            [length, 0],
            [length - core * 0.42, root * 0.82],
            [from, root],
          ],
          edge,
          'material',
          true,
        ),
        flute(thread * 1.5),
      ];
    case 'selfTapping':
      return [
        polyline(
          [
            [from, -root],
            [length - core * 0.12, -root * 0.6],
            [length, -root * 0.42],
            [length, root * 0.42],
            [length - core * 0.12, root * 0.6],
            [from, root],
          ],
          edge,
          'material',
          true,
        ),
        flute(thread * 1.3),
      ];
    default: {
      const path = trace(from, -root)
        .curve((from + length) / 2, -root, length, -root * 0.75, length, 0)
        .curve(length, root * 0.75, (from + length) / 2, root, from, root)
        .close();
      return [drawn(path, screw.tip === null ? 'notStated' : edge, 'material')];
    }
  }
}

/** The head from above, with its drive, to the left of the screw. */
function headView(screw: Screw, head: number): Shape[] {
  const x = -head * 1.25;
  const edge: LineClass = screw.headUm === null ? 'notStated' : 'outline';
  const shapes = [...centreCross(x, 0, head * 0.62), circle(x, 0, head / 2, edge, 'material')];
  if (screw.head === 'threaded') shapes.push(circle(x, 0, head * 0.45, 'thread'));
  shapes.push(...driveMark(screw.drive, x, 0, head));
  if (screw.cannulationUm !== null) shapes.push(circle(x, 0, screw.cannulationUm / 2, 'fine', 'void'));
  return shapes;
}
