import {
  type FillClass,
  LINE_STYLES,
  type LineClass,
  type Scene,
  type Shape,
} from '@/lib/documents/drawing/scene';
import { CAP_HEIGHT, FONTS } from './fonts';
import { INK, mm } from './paper';
import { pathOperators } from './pathOperators';
import type { Pen } from './pen';

/** Micrometres of the thing to points of paper. */
const pointsOf = (um: number, denominator: number): number => mm(um / 1000 / denominator);

/** Lines that only make a small drawing dark. */
const TOO_FINE: ReadonlySet<LineClass> = new Set(['thread', 'centre', 'dimension', 'hidden']);
/** From this reduction on, a drawing is small. */
const SMALL_FROM = 2.5;
/** Lines of small drawings are this much lighter. */
const SMALL_WEIGHT = 0.6;
/** No line is thinner than this many points: a copier would lose it. */
const THINNEST = 0.34;

export function sceneSize(scene: Pick<Scene, 'widthUm' | 'heightUm'>, denominator: number) {
  return { width: pointsOf(scene.widthUm, denominator), height: pointsOf(scene.heightUm, denominator) };
}

/**
 * Draws a scene at 1 : `denominator` with its top left corner at `x`, `y`. Black lines on white only: material and
 * openings are both white, so that what lies on top hides what lies below, and no grey has to survive a copier.
 */
export function paintScene(pen: Pen, scene: Scene, x: number, y: number, denominator: number): void {
  const small = denominator >= SMALL_FROM;
  const scale = pointsOf(1, denominator);
  const weight = small ? SMALL_WEIGHT : 1;
  // round caps and joins (ISO 32000-1, 8.4.3), black lines
  let operators = `q 1 0 0 1 ${round(x)} ${round(y)} cm 1 j 0 G `;
  for (const shape of scene.shapes) {
    if (shape.kind === 'text') continue;
    if (small && shape.fill === null && shape.line !== null && TOO_FINE.has(shape.line)) continue;
    operators += shapeOperators(shape, scale, weight);
  }
  const page = pen.doc as unknown as { addContent(operators: string): void };
  page.addContent(`${operators}Q`);
  for (const shape of scene.shapes) if (shape.kind === 'text') paintWords(pen, shape, { x, y, denominator });
}

const round = (points: number): number => Math.round(points * 1000) / 1000;

/** Levels of grey; `null` is left open. A zone is told by its edges alone: a tint would be lost, or hide what it covers. */
const FILLS: Record<FillClass, 0 | 1 | null> = { material: 1, void: 1, zone: null, accent: null, ink: 0 };

function shapeOperators(shape: Exclude<Shape, { kind: 'text' }>, scale: number, weight: number): string {
  const { line, fill } = shape;
  const filled = fill === null ? null : FILLS[fill];
  if (line === null && filled === null) return '';
  const colour = filled === null ? '' : `${filled} g `;
  const path = pathOperators(shape, scale);
  if (line === null) return `${colour}${path}f `;
  const { paperUm, dash } = LINE_STYLES[line];
  const width = Math.max(mm(paperUm / 1000) * weight, THINNEST);
  const dashes = dash.map((part) => round(part * width)).join(' ');
  return `${colour}${round(width)} w [${dashes}] 0 d ${path}${filled === null ? 'S' : 'B'} `;
}

function paintWords(
  { doc }: Pen,
  shape: Extract<Shape, { kind: 'text' }>,
  { x: left, y: top, denominator }: { x: number; y: number; denominator: number },
): void {
  const points = pointsOf(shape.heightUm, denominator);
  const font = FONTS[shape.textClass === 'label' || shape.textClass === 'accent' ? 'bold' : 'regular'];
  const x = left + pointsOf(shape.at.xUm, denominator);
  const y = top + pointsOf(shape.at.yUm, denominator);
  const width = doc.font(font).fontSize(points).widthOfString(shape.text);
  const shift = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? width / 2 : width;
  if (shape.upright) doc.save().rotate(-90, { origin: [x, y] });
  doc.fillColor(INK).text(shape.text, x - shift, y + (points * CAP_HEIGHT) / 2, {
    lineBreak: false,
    baseline: 'alphabetic',
  });
  if (shape.upright) doc.restore();
}
