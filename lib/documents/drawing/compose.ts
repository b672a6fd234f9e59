import { dimensionAcross, scaleBar } from './dimensions';
import { textWidthUm } from './marks';
import { flatten, mapPath } from './path';
import type { Point, Scene, SceneHole, SceneMeasure, Shape } from './scene';

/** What every drawing can be asked for. */
export interface DrawOptions {
  /** Dimension lines with values in mm, and a scale bar. */
  dimensions?: boolean;
  /** Height of the type in micrometres of the thing drawn; a fortieth of the drawing's length unless told. */
  textUm?: number;
}

interface Extent {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** The smallest box around the shapes, type included. */
export function extentOf(shapes: readonly Shape[]): Extent {
  const extent: Extent = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  const take = ({ xUm, yUm }: Point, reach = 0, reachY = reach) => {
    extent.left = Math.min(extent.left, xUm - reach);
    extent.right = Math.max(extent.right, xUm + reach);
    extent.top = Math.min(extent.top, yUm - reachY);
    extent.bottom = Math.max(extent.bottom, yUm + reachY);
  };
  for (const shape of shapes) {
    if (shape.kind === 'line') for (const end of [shape.from, shape.to]) take(end);
    else if (shape.kind === 'circle') take(shape.centre, shape.radiusUm);
    else if (shape.kind === 'path') for (const end of flatten(shape)) take(end);
    else if (shape.kind === 'roundedRect') {
      take({ xUm: shape.xUm, yUm: shape.yUm });
      take({ xUm: shape.xUm + shape.widthUm, yUm: shape.yUm + shape.heightUm });
    } else {
      const width = textWidthUm(shape.text, shape.heightUm);
      const back = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? width / 2 : width;
      const { xUm, yUm } = shape.at;
      const half = shape.heightUm * 0.6;
      if (shape.upright) {
        take({ xUm, yUm: yUm + back }, half, 0);
        take({ xUm, yUm: yUm + back - width }, half, 0);
      } else {
        take({ xUm: xUm - back, yUm }, 0, half);
        take({ xUm: xUm - back + width, yUm }, 0, half);
      }
    }
  }
  return Number.isFinite(extent.left) ? extent : { left: 0, top: 0, right: 1_000, bottom: 1_000 };
}

/** The type's height for a drawing of this size: legible when the drawing fills its place. */
export function textHeight(shapes: readonly Shape[], { textUm }: DrawOptions): number {
  if (textUm !== undefined) return textUm;
  const { left, right, top, bottom } = extentOf(shapes);
  return Math.round(Math.max(right - left, (bottom - top) * 1.6, 4_000) / 42);
}

/** The shapes moved so that their box begins at 0, 0 with a margin all round. */
export function compose({
  shapes,
  holes = [],
  measures = [],
  interrupted = false,
  marginUm,
}: {
  shapes: Shape[];
  holes?: SceneHole[];
  measures?: SceneMeasure[];
  interrupted?: boolean;
  marginUm?: number;
}): Scene {
  const extent = extentOf(shapes);
  const margin =
    marginUm ?? Math.round(Math.max(extent.right - extent.left, extent.bottom - extent.top) * 0.015 + 100);
  const dx = margin - extent.left;
  const dy = margin - extent.top;
  const move = ({ xUm, yUm }: Point): Point => ({ xUm: round(xUm + dx), yUm: round(yUm + dy) });
  return {
    widthUm: Math.ceil(extent.right - extent.left + 2 * margin),
    heightUm: Math.ceil(extent.bottom - extent.top + 2 * margin),
    shapes: shapes.map((shape) => moveShape(shape, move)),
    holes: holes.map((hole) => ({
      ...hole,
      centre: move(hole.centre),
      outline: mapPath(hole.outline, move),
    })),
    originXUm: round(dx),
    originYUm: round(dy),
    measures,
    interrupted,
  };
}

function round(um: number): number {
  return Math.round(um * 100) / 100;
}

function moveShape(shape: Shape, move: (p: Point) => Point): Shape {
  switch (shape.kind) {
    case 'path':
      return { ...shape, ...mapPath(shape, move) };
    case 'line':
      return { ...shape, from: move(shape.from), to: move(shape.to) };
    case 'circle':
      return { ...shape, centre: move(shape.centre) };
    case 'roundedRect':
      return { ...shape, ...move(shape) };
    case 'text':
      return { ...shape, at: move(shape.at) };
  }
}

/** Below the body: its length and, under that, the scale bar. */
export function underneath(
  body: readonly Shape[],
  x1: number,
  x2: number,
  { um, name, textUm }: { um: number | null; name?: string; textUm: number },
): Shape[] {
  const { bottom, left, right } = extentOf(body);
  const y = bottom + textUm * 2.2;
  return [
    ...dimensionAcross(x1, x2, y, bottom, { um, textUm, ...(name === undefined ? {} : { name }) }),
    ...scaleBar(left, y + textUm * 2.2, right - left, textUm * 0.85),
  ];
}
