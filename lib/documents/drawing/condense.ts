import { pathData, stadium, trace } from './path';
import type { FillClass, LineClass, Path, Scene, Shape } from './scene';

/** A drawing small enough to stand in a row of a list: one path for each kind of line, no words. */
export interface Thumb {
  width: number;
  height: number;
  paths: { line: LineClass | null; fill: FillClass | null; d: string }[];
}

/** Lines that would only be grey at the size of a row. */
const TOO_FINE: ReadonlySet<LineClass> = new Set(['centre', 'dimension', 'thread']);

/**
 * The scene as few paths, in units of `unitUm`. Shapes of one ink are drawn together in the order that ink first came,
 * so that holes stay above the plate.
 */
export function condense(scene: Pick<Scene, 'widthUm' | 'heightUm' | 'shapes'>, unitUm = 100): Thumb {
  const inks = new Map<string, Thumb['paths'][number]>();
  for (const shape of scene.shapes) {
    if (shape.kind === 'text' || (shape.line !== null && TOO_FINE.has(shape.line))) continue;
    const d = pathData(pathOf(shape), unitUm).replace(/(\d\.\d)\d+/g, '$1');
    const key = `${shape.line} ${shape.fill}`;
    const ink = inks.get(key);
    if (ink) ink.d += d;
    else inks.set(key, { line: shape.line, fill: shape.fill, d });
  }
  return {
    width: Math.ceil(scene.widthUm / unitUm),
    height: Math.ceil(scene.heightUm / unitUm),
    paths: [...inks.values()],
  };
}

function pathOf(shape: Exclude<Shape, { kind: 'text' }>): Path {
  switch (shape.kind) {
    case 'path':
      return shape;
    case 'line':
      return trace(shape.from.xUm, shape.from.yUm).to(shape.to.xUm, shape.to.yUm).open();
    case 'circle':
      return stadium(shape.centre.xUm, shape.centre.yUm, shape.radiusUm * 2, shape.radiusUm * 2);
    case 'roundedRect': {
      const { xUm: x, yUm: y, widthUm: w, heightUm: h } = shape;
      return trace(x, y)
        .to(x + w, y)
        .to(x + w, y + h)
        .to(x, y + h)
        .close();
    }
  }
}
