import type { DrillSleeve, SleeveEnd } from '../../catalogue/item';
import { compose, type DrawOptions, extentOf, textHeight, underneath } from './compose';
import { dimensionText } from './dimensions';
import { arrowHead, box, drawn, line, polyline, words } from './marks';
import { trace } from './path';
import type { LineClass, Scene, Shape } from './scene';

/** A drill sleeve lying along x, its first end at the right; the bore is seen through the wall. */
export function drawSleeve(sleeve: DrillSleeve, options: DrawOptions = {}): Scene {
  const [first, second] = sleeve.ends;
  const widest = Math.max(...sleeve.ends.map(outerOf));
  const length = sleeve.lengthUm ?? widest * 6;
  const joint = second ? length / 2 : 0;
  const shapes: Shape[] = [];
  if (second) shapes.push(...half(second, joint, 0, widest));
  shapes.push(...half(first as SleeveEnd, joint, length, widest));
  if (second) shapes.push(...bracket(joint, widest));
  else
    shapes.push(
      box(0, -widest * 0.75, widest * 0.5, widest * 1.5, widest * 0.1),
      ...boreLines(first as SleeveEnd, 0, widest * 0.5),
    );
  shapes.push(line(-widest * 0.5, 0, length + widest * 0.5, 0, 'centre'));
  const textUm = textHeight(shapes, options);
  if (options.dimensions) {
    shapes.push(...endWords(first as SleeveEnd, length, length - (length - joint) * 0.4, widest, textUm));
    if (second) shapes.push(...endWords(second, 0, joint * 0.4, widest, textUm));
    shapes.push(...underneath(shapes, 0, length, { um: sleeve.lengthUm, textUm }));
  }
  return compose({
    shapes,
    measures: [
      ...sleeve.ends.flatMap((end, index) => [
        { name: sleeve.ends.length > 1 ? `bore of end ${index + 1}` : 'bore', um: end.boreUm },
        { name: sleeve.ends.length > 1 ? `outside of end ${index + 1}` : 'outside', um: end.outerUm },
      ]),
      { name: 'length', um: sleeve.lengthUm },
    ],
  });
}

function outerOf(end: SleeveEnd): number {
  return end.outerUm ?? (end.boreUm ?? 2_500) * 1.7;
}

/** One end, from the joint out to its tip. */
function half(end: SleeveEnd, joint: number, tip: number, widest: number): Shape[] {
  const way = Math.sign(tip - joint);
  const outer = outerOf(end) / 2;
  const edge: LineClass = end.outerUm === null ? 'notStated' : 'outline';
  const nose = Math.min(Math.abs(tip - joint) * 0.3, widest * 0.7);
  const shapes: Shape[] = [];
  const body = (to: number) =>
    polyline(
      [
        [joint, -outer],
        [to, -outer],
        [to, outer],
        [joint, outer],
      ],
      edge,
      'material',
      true,
    );
  if (end.outerForm === 'threaded') {
    shapes.push(body(tip - way * nose), ...threadedNose(tip, way, nose, outer * 0.86, edge));
  } else if (end.outerForm === 'spherical') {
    shapes.push(
      drawn(
        trace(joint, -outer)
          .to(tip - way * outer * 0.8, -outer)
          .arc(tip - way * outer * 0.8, outer, outer, way > 0)
          .to(joint, outer)
          .close(),
        edge,
        'material',
      ),
    );
  } else if (end.outerForm === 'pronged') {
    shapes.push(
      polyline(
        [
          [joint, -outer],
          [tip, -outer],
          [tip - way * nose * 0.6, -outer * 0.45],
          [tip - way * nose * 0.15, 0],
          [tip - way * nose * 0.6, outer * 0.45],
          [tip, outer],
          [joint, outer],
        ],
        edge,
        'material',
        true,
      ),
    );
  } else {
    shapes.push(body(tip));
    if (end.outerForm === null)
      shapes.push(line(tip - way * nose, -outer, tip - way * nose, outer, 'notStated'));
  }
  shapes.push(...boreLines(end, joint, tip));
  if (end.positions?.includes('offset')) {
    const size = outer * 0.7;
    const x = tip - way * nose * 1.9;
    shapes.push(
      line(x - size, -outer * 0.62, x + size, -outer * 0.62, 'fine'),
      arrowHead(x + way * size, -outer * 0.62, way, 0, size * 0.7),
    );
  }
  return shapes;
}

function threadedNose(tip: number, way: number, length: number, outer: number, edge: LineClass): Shape[] {
  const turns = 5;
  const step = length / turns;
  const upper: [number, number][] = [];
  for (let turn = 0; turn < turns; turn += 1) {
    const x = tip - way * (length - step * turn);
    upper.push([x, -outer * 0.9], [x + way * step * 0.5, -outer], [x + way * step, -outer * 0.9]);
  }
  const lower = upper.map(([x, y]) => [x, -y] as [number, number]).reverse();
  const flights = Array.from({ length: turns }, (_, turn) => {
    const x = tip - way * (length - step * (turn + 0.5));
    return line(x, -outer, x + (way * step) / 2, outer, 'thread');
  });
  return [polyline([...upper, ...lower], edge, 'material', true), ...flights];
}

function boreLines(end: SleeveEnd, from: number, to: number): Shape[] {
  const bore = (end.boreUm ?? 2_500) / 2;
  const kind: LineClass = end.boreUm === null ? 'notStated' : 'hidden';
  return [line(from, -bore, to, -bore, kind), line(from, bore, to, bore, kind)];
}

/** The grip between the two ends of a double sleeve. */
function bracket(x: number, widest: number): Shape[] {
  return [
    box(x - widest * 0.45, -widest * 0.75, widest * 0.9, widest * 1.5, widest * 0.15),
    box(x - widest * 0.2, widest * 0.75, widest * 0.4, widest * 1.3, widest * 0.1),
  ];
}

function endWords(end: SleeveEnd, tip: number, x: number, widest: number, textUm: number): Shape[] {
  const text = dimensionText(end.boreUm, 'bore');
  const y = -widest * 0.75 - textUm * 1.3;
  const bore = (end.boreUm ?? 2_500) / 2;
  const { left } = extentOf([line(tip, 0, x, 0, 'fine')]);
  return [
    line(x, -bore, x, y + textUm * 0.7, 'dimension'),
    words(Math.max(left, x), y, text, textUm, end.boreUm === null ? 'notStated' : 'dimension'),
  ];
}
