import { markOutline } from '@/lib/documents/markOutline';
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
  const { outlines, filled, type: height } = markOutline({ shape });
  doc.undash().lineJoin('miter').lineWidth(0.7);
  for (const { form, scale } of outlines) {
    const reach = half * scale;
    if (form === 'circle') doc.circle(centreX, centreY, reach);
    else doc.rect(centreX - reach, centreY - reach, reach * 2, reach * 2);
    if (filled) doc.fill(INK);
    else doc.stroke(INK);
  }
  const type = { font: 'bold' as const, points: size * height };
  const colour = filled ? PAPER : INK;
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
