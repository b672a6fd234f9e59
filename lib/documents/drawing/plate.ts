import type { Hole } from '../../catalogue/hole';
import type { Plate } from '../../catalogue/item';
import { writeMm } from '../../quantities/length';
import { compose, type DrawOptions, extentOf, textHeight, underneath } from './compose';
import { dimensionUpright } from './dimensions';
import { box, circle, drawn, line, textWidthUm, words } from './marks';
import { contains, flatten, mapPath, point, trace } from './path';
import { drawHole, tiltArrow } from './plateHole';
import { type PlateOutline, plateOutline } from './plateOutline';
import type { Scene, SceneHole, Shape } from './scene';

export interface PlateDrawOptions extends DrawOptions {
  /** Each hole's id beside it. */
  showIds?: boolean;
  /** A stretch of the plate marked as the fracture zone, in micrometres from the shaft end. */
  zone?: { fromUm: number; toUm: number } | null;
  /** Ids of holes drawn in the accent. */
  highlight?: readonly string[];
}

/** A plate seen from above, its shaft end at the left, its left edge up; drawn to scale from its dimensions. */
export function drawPlate(plate: Plate, options: PlateDrawOptions = {}): Scene {
  const outline = plateOutline(plate);
  const stated = outline.missing.length === 0;
  const body: Shape[] = [
    drawn(outline.path, stated ? 'outline' : 'notStated', 'material'),
    ...shapeMarks(plate, outline),
  ];
  const textUm = textHeight(body, options);
  const placed = plate.holes.map((hole) => placeHole(hole, plate, outline));
  const shapes = [...body];
  if (options.zone)
    shapes.push(...zoneBand(options.zone, body), drawn(outline.path, stated ? 'outline' : 'notStated'));
  for (const { hole, marks, scene } of placed) {
    shapes.push(...marks);
    if (options.highlight?.includes(hole.id)) shapes.push(drawn(scene.outline, 'accent', null));
  }
  const holes = placed.map(({ scene }) => scene);
  if (options.showIds) shapes.push(...holeLabels(holes, plate.holes, outline, textUm));
  if (options.dimensions) shapes.push(...plateDimensions(plate, outline, shapes, textUm));
  return compose({
    shapes,
    holes,
    measures: [
      { name: 'length', um: plate.lengthUm },
      { name: 'width', um: plate.widthUm },
      ...(outline.headWidthUm === null ? [] : [{ name: 'head width', um: plate.headWidthUm }]),
      { name: 'thickness', um: plate.thicknessUm },
    ],
  });
}

function placeHole(hole: Hole, plate: Plate, outline: PlateOutline) {
  const takes = plate.takesThreadsUm.length === 0 ? null : Math.max(...plate.takesThreadsUm);
  const outward = hole.alongUm > outline.lengthUm / 2 ? 1 : -1;
  const { shapes, outline: edge, widthUm, heightUm } = drawHole(hole, { outward, takesThreadUm: takes });
  const x = hole.alongUm;
  const y = -hole.acrossUm;
  const move = (p: { xUm: number; yUm: number }) => point(p.xUm + x, p.yUm + y);
  const marks = [...shapes, ...tiltArrow(hole, heightUm * 0.62)].map((shape) => movedBy(shape, move));
  const scene: SceneHole = {
    id: hole.id,
    holeClass: hole.holeClass,
    centre: point(x, y),
    outline: mapPath(edge, move),
    widthUm,
    heightUm,
  };
  return { hole, marks, scene };
}

function movedBy(
  shape: Shape,
  move: (p: { xUm: number; yUm: number }) => { xUm: number; yUm: number },
): Shape {
  if (shape.kind === 'path') return { ...shape, ...mapPath(shape, move) };
  if (shape.kind === 'line') return { ...shape, from: move(shape.from), to: move(shape.to) };
  if (shape.kind === 'circle') return { ...shape, centre: move(shape.centre) };
  if (shape.kind === 'text') return { ...shape, at: move(shape.at) };
  return { ...shape, ...move(shape) };
}

/** Lines that tell plate shapes apart within the outline. */
function shapeMarks(plate: Plate, { lengthUm, widthUm }: PlateOutline): Shape[] {
  if (plate.shape !== 'oneThirdTubular') return [];
  const inset = widthUm * 0.42;
  return [0.36, 0.43].flatMap((part) => [
    line(inset, -widthUm * part, lengthUm - inset, -widthUm * part, 'fine'),
    line(inset, widthUm * part, lengthUm - inset, widthUm * part, 'fine'),
  ]);
}

function zoneBand({ fromUm, toUm }: { fromUm: number; toUm: number }, body: readonly Shape[]): Shape[] {
  const { top, bottom } = extentOf(body);
  const over = (bottom - top) * 0.22;
  const edge = (x: number) => line(x, top - over, x, bottom + over, 'zone');
  return [
    box(fromUm, top - over, Math.max(toUm - fromUm, 1), bottom - top + over * 2, 0, null, 'zone'),
    edge(fromUm),
    edge(toUm),
  ];
}

/**
 * Each id beside its hole: at the first of a few places where it covers neither another hole nor the plate's edge.
 * Shaft holes are tried from below, outside the plate, first.
 */
function holeLabels(
  holes: readonly SceneHole[],
  designs: readonly Hole[],
  outline: PlateOutline,
  textUm: number,
): Shape[] {
  const size = textUm * 0.9;
  const taken = holes.map(({ centre, widthUm, heightUm }) => ({
    centre,
    reachX: widthUm / 2,
    reachY: heightUm / 2,
  }));
  const edge = flatten(outline.path);
  return holes.map((hole, index) => {
    const half = textWidthUm(hole.id, size) / 2;
    const { xUm, yUm } = hole.centre;
    const down = hole.heightUm / 2 + size * 0.62;
    const over = hole.widthUm / 2 + half + size * 0.2;
    const outside = outline.widthUm / 2 + size * 0.8;
    const beside = [
      point(xUm, yUm + down),
      point(xUm, yUm - down),
      point(xUm + over, yUm),
      point(xUm - over, yUm),
    ];
    const places =
      designs[index]?.segment === 'head' ? beside : [point(xUm, outside), point(xUm, -outside), ...beside];
    const free = places.find((place) => {
      const corners = [-1, 1].flatMap((a) =>
        [-1, 1].map((b) => point(place.xUm + a * half, place.yUm + b * size * 0.5)),
      );
      const inside = corners.filter((corner) => contains(edge, corner)).length;
      const clear = taken.every(
        (other) =>
          Math.abs(other.centre.xUm - place.xUm) > other.reachX + half ||
          Math.abs(other.centre.yUm - place.yUm) > other.reachY + size * 0.5,
      );
      return clear && (inside === 0 || inside === corners.length);
    });
    const place = free ?? places[0] ?? hole.centre;
    taken.push({ centre: place, reachX: half, reachY: size * 0.5 });
    return words(place.xUm, place.yUm, hole.id, size);
  });
}

function plateDimensions(
  plate: Plate,
  outline: PlateOutline,
  drawnSoFar: readonly Shape[],
  textUm: number,
): Shape[] {
  const { left, right } = extentOf(drawnSoFar);
  const half = outline.widthUm / 2;
  const shapes: Shape[] = [...spacing(plate, outline, drawnSoFar, textUm)];
  shapes.push(...section(plate, outline, left - textUm * 3, textUm));
  if (outline.headWidthUm !== null) {
    const edge = extentOf([drawn(outline.path, null)]);
    shapes.push(
      ...dimensionUpright(edge.top, edge.bottom, right + textUm * 1.6, right, {
        um: plate.headWidthUm,
        textUm,
      }),
    );
  }
  shapes.push(
    ...dimensionUpright(-half, half, left - textUm * 1.2, Math.min(0, left), {
      um: plate.widthUm,
      textUm,
    }).map((shape) =>
      // the value stands above the line, clear of the section drawn beside it
      shape.kind === 'text'
        ? { ...shape, at: point(left - textUm * 1.2, -half - textUm), anchor: 'middle' as const }
        : shape,
    ),
  );
  const all = [...drawnSoFar, ...shapes];
  return [...shapes, ...underneath(all, 0, outline.lengthUm, { um: plate.lengthUm, textUm })];
}

/** From one shaft hole to the next, where all are equally far apart. */
function spacing(plate: Plate, outline: PlateOutline, drawnSoFar: readonly Shape[], textUm: number): Shape[] {
  const along = plate.holes
    .filter((hole) => hole.segment === 'shaft')
    .map((hole) => hole.alongUm)
    .sort((a, b) => a - b);
  const [first, second] = along;
  if (first === undefined || second === undefined || second === first) return [];
  const { top } = extentOf(drawnSoFar.filter((shape) => shape.kind !== 'text'));
  const y = Math.min(top, -outline.widthUm / 2) - textUm * 1.8;
  const shapes = [
    line(first, -outline.widthUm / 2, first, y - textUm * 0.4, 'dimension'),
    line(second, -outline.widthUm / 2, second, y - textUm * 0.4, 'dimension'),
    line(first, y, second, y, 'dimension'),
    words((first + second) / 2, y - textUm * 0.75, `${writeMm(second - first)} mm`, textUm, 'dimension'),
  ];
  return shapes;
}

/** The shaft cut across, turned into the page: width and thickness to scale. */
function section(plate: Plate, { widthUm }: PlateOutline, right: number, textUm: number): Shape[] {
  const half = widthUm / 2;
  const thickness = plate.thicknessUm ?? widthUm * 0.25;
  const edge = plate.thicknessUm === null ? 'notStated' : 'outline';
  const x = right - thickness;
  const cut =
    plate.shape === 'oneThirdTubular'
      ? drawn(
          trace(right, -half)
            .arc(right, half, widthUm * 0.58, false)
            .to(right - thickness * 0.5, half)
            .arc(right - thickness * 0.5, -half, widthUm * 0.58 + thickness * 0.5, true)
            .close(),
          edge,
          'material',
        )
      : box(x, -half, thickness, widthUm, thickness * 0.3, edge, 'material');
  const name = plate.thicknessUm === null ? 'thickness not stated' : `${writeMm(plate.thicknessUm)} mm thick`;
  const middle = extentOf([cut]);
  return [
    cut,
    circle((middle.left + middle.right) / 2, 0, 1, null, null),
    words(
      (middle.left + middle.right) / 2,
      half + textUm * 1.1,
      name,
      textUm * 0.9,
      plate.thicknessUm === null ? 'notStated' : 'dimension',
      'end',
    ),
  ];
}
