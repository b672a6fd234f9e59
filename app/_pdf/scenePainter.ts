import { pathData } from '@/lib/documents/drawing/path';
import { LINE_STYLES, type LineClass, type Scene, type Shape } from '@/lib/documents/drawing/scene';
import { CAP_HEIGHT, FONTS } from './fonts';
import { INK, mm, PAPER } from './paper';
import type { Pen } from './pen';

/** Micrometres of the thing to points of paper. */
const pointsOf = (um: number, denominator: number): number => mm(um / 1000 / denominator);

/** Lines that only make a small drawing dark. */
const TOO_FINE: ReadonlySet<LineClass> = new Set(['thread', 'centre', 'dimension', 'hidden']);
/** From this reduction on, a drawing is small. */
const SMALL_FROM = 2.5;
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
  const { doc } = pen;
  const small = denominator >= SMALL_FROM;
  const unitUm = 1000 / mm(1 / denominator);
  doc.save().translate(x, y);
  for (const shape of scene.shapes) {
    if (shape.kind === 'text') paintWords(pen, shape, denominator);
    else if (!(small && shape.fill === null && shape.line !== null && TOO_FINE.has(shape.line))) {
      paintShape(pen, shape, { denominator, unitUm, weight: small ? 0.6 : 1 });
    }
  }
  doc.restore();
}

function tracePath(
  { doc }: Pen,
  shape: Exclude<Shape, { kind: 'text' }>,
  denominator: number,
  unitUm: number,
): void {
  const at = (um: number) => pointsOf(um, denominator);
  switch (shape.kind) {
    case 'path':
      doc.path(pathData(shape, unitUm));
      return;
    case 'line':
      doc.moveTo(at(shape.from.xUm), at(shape.from.yUm)).lineTo(at(shape.to.xUm), at(shape.to.yUm));
      return;
    case 'circle':
      doc.circle(at(shape.centre.xUm), at(shape.centre.yUm), at(shape.radiusUm));
      return;
    case 'roundedRect': {
      const [width, height] = [at(shape.widthUm), at(shape.heightUm)];
      const radius = Math.min(at(shape.radiusUm), width / 2, height / 2);
      if (radius > 0) doc.roundedRect(at(shape.xUm), at(shape.yUm), width, height, radius);
      else doc.rect(at(shape.xUm), at(shape.yUm), width, height);
    }
  }
}

interface Scale {
  denominator: number;
  unitUm: number;
  /** Lines are drawn this much lighter or heavier than in a drawing of natural size. */
  weight: number;
}

function paintShape(
  pen: Pen,
  shape: Exclude<Shape, { kind: 'text' }>,
  { denominator, unitUm, weight }: Scale,
): void {
  const { doc } = pen;
  // a zone is told by its edges alone: a tint would be lost, or hide what it covers
  const { line, fill } = shape;
  const filled = fill === null || fill === 'zone' || fill === 'accent' ? null : fill === 'ink' ? INK : PAPER;
  if (line === null && filled === null) return;
  tracePath(pen, shape, denominator, unitUm);
  if (line === null) {
    doc.fill(filled ?? PAPER);
    return;
  }
  const { paperUm, dash } = LINE_STYLES[line];
  const width = Math.max(mm(paperUm / 1000) * weight, THINNEST);
  doc.lineWidth(width).lineJoin('round');
  if (dash.length > 0) doc.dash(dash.map((part) => part * width) as never, {});
  else doc.undash();
  if (filled) doc.fillAndStroke(filled, INK);
  else doc.stroke(INK);
}

function paintWords(pen: Pen, shape: Extract<Shape, { kind: 'text' }>, denominator: number): void {
  const { doc } = pen;
  const points = pointsOf(shape.heightUm, denominator);
  const font = FONTS[shape.textClass === 'label' || shape.textClass === 'accent' ? 'bold' : 'regular'];
  const x = pointsOf(shape.at.xUm, denominator);
  const y = pointsOf(shape.at.yUm, denominator);
  const width = doc.font(font).fontSize(points).widthOfString(shape.text);
  const shift = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? width / 2 : width;
  if (shape.upright) doc.save().rotate(-90, { origin: [x, y] });
  doc
    .fillColor(INK)
    .text(shape.text, x - shift, y + (points * CAP_HEIGHT) / 2, { lineBreak: false, baseline: 'alphabetic' });
  if (shape.upright) doc.restore();
}
