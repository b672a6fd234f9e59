import type { Cell, Column, TextLine } from '@/lib/documents/sheet';
import { TYPE_POINTS } from './fonts';
import { paintMark } from './marks';
import { INK, mm } from './paper';
import { leadingOf, type Pen, type Type, wrap, write, writeLines } from './pen';
import { paintScene, sceneSize } from './scenePainter';

/** One cell of a table: how high it must be, and its drawing in the room it gets. */

export const PADDING = mm(1);
const SCALE_TYPE: Type = { font: 'regular', points: TYPE_POINTS.small };

export const typeOf = ({ size, strong }: TextLine): Type => ({
  font: strong ? 'bold' : 'regular',
  points: TYPE_POINTS[size],
});

export interface PlacedCell {
  height: number;
  /** Draws the content with its room's top left corner at `x`, `y`. */
  paint: (x: number, y: number, height: number) => void;
}

export function placeCell(pen: Pen, cell: Cell, { align }: Column, width: number): PlacedCell {
  const room = width - 2 * PADDING;
  switch (cell.kind) {
    case 'text': {
      const lines = cell.lines.map((line) => ({
        type: typeOf(line),
        words: wrap(pen, line.text, typeOf(line), room),
      }));
      const height = lines.reduce((sum, { type, words }) => sum + words.length * leadingOf(type), 0);
      return {
        height,
        paint: (x, y, full) => {
          let at = y + (full - height) / 2;
          for (const { type, words } of lines)
            at += writeLines(pen, words, x + PADDING, at, type, { align, width: room });
        },
      };
    }
    case 'drawing': {
      const size = sceneSize(cell.scene, cell.denominator);
      const height = size.height + leadingOf(SCALE_TYPE);
      return {
        height,
        paint: (x, y, full) => {
          const top = y + (full - height) / 2;
          paintScene(pen, cell.scene, x + PADDING, top, cell.denominator);
          write(pen, `1 : ${cell.denominator}`, x + PADDING, top + size.height, SCALE_TYPE);
        },
      };
    }
    case 'mark':
      return { height: mm(5), paint: (x, y, full) => paintMark(pen, cell.mark, x + width / 2, y + full / 2) };
    case 'tick':
      return {
        height: mm(6),
        paint: (x, y, full) => {
          const size = mm(5.5);
          pen.doc
            .undash()
            .lineWidth(1)
            .rect(x + (width - size) / 2, y + (full - size) / 2, size, size)
            .stroke(INK);
        },
      };
    case 'blank':
      return { height: 0, paint: () => undefined };
  }
}

/** Whether the cell has words to be read aloud. Boxes and room to write in have none. */
export function isSpoken(cell: Cell): boolean {
  return cell.kind === 'text' || cell.kind === 'mark';
}
