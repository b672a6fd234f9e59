import type { Mark } from '@/lib/documents/sheet';
import { INK, mm, PAPER } from './paper';
import { type Pen, write } from './pen';

/** A mark about its middle. Answers nothing: its words stand elsewhere, or in the tag. */
export function paintMark(
  pen: Pen,
  { shape, character }: Mark,
  centreX: number,
  centreY: number,
  size = mm(4.6),
): void {
  const { doc } = pen;
  const half = size / 2;
  doc.undash().lineJoin('miter');
  if (shape === 'filledSquare') doc.rect(centreX - half, centreY - half, size, size).fill(INK);
  if (shape === 'doubleSquare') {
    doc
      .lineWidth(0.7)
      .rect(centreX - half, centreY - half, size, size)
      .stroke(INK);
    doc.rect(centreX - half * 0.72, centreY - half * 0.72, size * 0.72, size * 0.72).stroke(INK);
  }
  if (shape === 'circle') doc.lineWidth(0.7).circle(centreX, centreY, half).stroke(INK);
  const type = { font: 'bold' as const, points: size * (shape === 'doubleSquare' ? 0.58 : 0.68) };
  const colour = shape === 'filledSquare' ? PAPER : INK;
  write(pen, character, centreX - half, centreY - (type.points * 1.22) / 2, type, {
    align: 'centre',
    width: size,
    colour,
  });
}

/** The shape before a notice's word: a filled octagon stops, a lozenge is not established, a bar is a note. */
export function paintNoticeShape(
  pen: Pen,
  shape: 'stop' | 'unknown' | 'note',
  x: number,
  y: number,
  size: number,
): void {
  const { doc } = pen;
  doc.undash();
  if (shape === 'stop') {
    const cut = size * 0.29;
    doc
      .polygon(
        [x + cut, y],
        [x + size - cut, y],
        [x + size, y + cut],
        [x + size, y + size - cut],
        [x + size - cut, y + size],
        [x + cut, y + size],
        [x, y + size - cut],
        [x, y + cut],
      )
      .fill(INK);
    doc.rect(x + size * 0.24, y + size * 0.42, size * 0.52, size * 0.16).fill(PAPER);
  } else if (shape === 'unknown') {
    const half = size / 2;
    doc
      .lineWidth(1.2)
      .polygon([x + half, y], [x + size, y + half], [x + half, y + size], [x, y + half])
      .stroke(INK);
    const type = { font: 'bold' as const, points: size * 0.6 };
    write(pen, '?', x, y + half - (type.points * 1.22) / 2, type, { align: 'centre', width: size });
  } else doc.rect(x + size * 0.4, y, size * 0.2, size).fill(INK);
}
