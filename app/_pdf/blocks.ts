import type { Block, Notice } from '@/lib/documents/sheet';
import { typeOf } from './cell';
import { TYPE_POINTS } from './fonts';
import { paintMark, paintNoticeShape } from './marks';
import { INK, mm } from './paper';
import {
  artifact,
  leadingOf,
  needRoom,
  type Pen,
  rule,
  type Type,
  tagged,
  widthOf,
  wrap,
  write,
  writeLines,
} from './pen';
import { paintScene, sceneSize } from './scenePainter';

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

const LEVELS: Record<2 | 3, Type> = {
  2: { font: 'title', points: TYPE_POINTS.key },
  3: { font: 'bold', points: 10 },
};
const NOTE: Type = { font: 'regular', points: 9 };
const SMALL: Type = { font: 'regular', points: TYPE_POINTS.small };

/** `follows`: the height of the least that must stand on the same page. */
export function paintHeading(pen: Pen, { level, text, note, newPage }: Of<'heading'>, follows: number): void {
  const type = LEVELS[level];
  const lines = wrap(pen, text, type, pen.width);
  const height = lines.length * leadingOf(type);
  if (newPage) pen.newPage();
  else needRoom(pen, height + mm(2) + follows);
  tagged(pen, pen.root, `H${level}`, () => writeLines(pen, lines, pen.left, pen.y, type));
  if (note !== null) {
    const last = lines.at(-1) ?? '';
    const x = pen.left + widthOf(pen, last, type) + mm(3);
    const y = pen.y + height - leadingOf(type) + (leadingOf(type) - leadingOf(NOTE)) / 2 + 0.8;
    const beside = x + widthOf(pen, note, NOTE) <= pen.right;
    if (beside) tagged(pen, pen.root, 'P', () => write(pen, note, x, y, NOTE));
    else {
      pen.y += height;
      tagged(pen, pen.root, 'P', () => {
        pen.y += writeLines(pen, wrap(pen, note, NOTE, pen.width), pen.left, pen.y, NOTE) - height;
      });
    }
  }
  pen.y += height + mm(1.2);
}

/** `follows`: as of a heading. */
export function paintParagraph(pen: Pen, { text, size }: Of<'paragraph'>, follows: number): void {
  const type = typeOf({ text, size, strong: false });
  const lines = wrap(pen, text, type, pen.width);
  needRoom(pen, lines.length * leadingOf(type) + (follows > 0 ? mm(2) + follows : 0));
  tagged(pen, pen.root, 'P', () => {
    pen.y += writeLines(pen, lines, pen.left, pen.y, type) + mm(2);
  });
}

export function paintLegend(pen: Pen, { title, marks }: Of<'legend'>): void {
  needRoom(pen, mm(6));
  const y = pen.y + mm(3);
  let x = pen.left;
  tagged(pen, pen.root, 'P', () => {
    write(pen, title, x, y - leadingOf(SMALL) / 2, { ...SMALL, font: 'bold' });
    x += widthOf(pen, title, { ...SMALL, font: 'bold' }) + mm(4);
    for (const mark of marks) {
      paintMark(pen, mark, x + mm(2), y, mm(4));
      write(pen, mark.words, x + mm(5), y - leadingOf(SMALL) / 2, SMALL);
      x += mm(5) + widthOf(pen, mark.words, SMALL) + mm(5);
    }
  });
  pen.y += mm(8);
}

/** What must not be overlooked, in a heavy frame, with a shape and a word. */
export function paintNotice(pen: Pen, { word, shape, lines }: Notice): void {
  const wordType: Type = { font: 'title', points: TYPE_POINTS.key };
  const lineType: Type = { font: 'regular', points: 10 };
  const indent = mm(11);
  const inner = pen.width - indent - mm(3);
  const placed = lines.map((line) => wrap(pen, line, lineType, inner));
  const heights = placed.map((parts) => parts.length * leadingOf(lineType) + mm(0.6));
  needRoom(pen, leadingOf(wordType) + mm(4) + (heights[0] ?? 0));
  const group = pen.doc.struct('Sect', { title: word });
  pen.root.add(group);
  let top = pen.y;
  const frame = () =>
    artifact(pen, 'Layout', () =>
      pen.doc
        .undash()
        .lineWidth(1.6)
        .rect(pen.left, top, pen.width, pen.y + mm(1.4) - top)
        .stroke(INK),
    );
  pen.y += mm(1.6);
  artifact(pen, 'Layout', () => paintNoticeShape(pen, shape, pen.left + mm(2.5), pen.y, mm(6)));
  tagged(pen, group, 'P', () => write(pen, word, pen.left + indent, pen.y - mm(0.2), wordType));
  pen.y += leadingOf(wordType) + mm(0.6);
  for (const [at, parts] of placed.entries()) {
    if (pen.y + (heights[at] ?? 0) + mm(2) > pen.bottom) {
      frame();
      pen.newPage();
      top = pen.y;
      pen.y += mm(1.6);
    }
    tagged(pen, group, 'P', () => writeLines(pen, parts, pen.left + indent, pen.y, lineType));
    pen.y += heights[at] ?? 0;
  }
  frame();
  group.end();
  pen.y += mm(4.5);
}

export function paintFigure(pen: Pen, { scene, denominator, alt, caption }: Of<'figure'>): void {
  const size = sceneSize(scene, denominator);
  needRoom(pen, size.height + leadingOf(SMALL) + mm(2));
  const bbox = [pen.left, pen.y, pen.left + size.width, pen.y + size.height];
  tagged(pen, pen.root, 'Figure', () => paintScene(pen, scene, pen.left, pen.y, denominator), { alt, bbox });
  pen.y += size.height + mm(0.5);
  tagged(pen, pen.root, 'P', () =>
    write(pen, `${caption}, drawn 1 : ${denominator}`, pen.left, pen.y, SMALL),
  );
  pen.y += leadingOf(SMALL) + mm(2.5);
}

const SIGNATURE_HEIGHT = mm(27);
const SIGNATURE_GAP = mm(4);
/** What the first two boxes to sign take. */
export const SIGNATURES_LEAST = SIGNATURE_HEIGHT + SIGNATURE_GAP;

/** Two boxes to a row, each with a line for name, signature and time. */
export function paintSignatures(pen: Pen, { boxes }: Of<'signatures'>): void {
  const gap = SIGNATURE_GAP;
  const width = (pen.width - gap) / 2;
  for (let first = 0; first < boxes.length; first += 2) {
    needRoom(pen, SIGNATURE_HEIGHT + gap);
    for (const [at, { title, note }] of boxes.slice(first, first + 2).entries()) {
      const x = pen.left + at * (width + gap);
      const y = pen.y;
      artifact(pen, 'Layout', () =>
        pen.doc.undash().lineWidth(0.8).rect(x, y, width, SIGNATURE_HEIGHT).stroke(INK),
      );
      tagged(pen, pen.root, 'P', () => {
        write(pen, title, x + mm(2), y + mm(1), { font: 'bold', points: 11 });
        if (note) write(pen, note, x + mm(2), y + mm(5.4), SMALL);
      });
      const fields = [
        { name: 'Name', from: 0, to: 0.62, top: mm(15) },
        { name: 'Date and time', from: 0.66, to: 1, top: mm(15) },
        { name: 'Signature', from: 0, to: 1, top: mm(23) },
      ];
      for (const { name, from, to, top } of fields) {
        const [x1, x2] = [x + mm(2) + from * (width - mm(4)), x + mm(2) + to * (width - mm(4))];
        artifact(pen, 'Layout', () => rule(pen, x1, y + top, x2, y + top, 0.5));
        tagged(pen, pen.root, 'P', () => write(pen, name, x1, y + top + 0.4, SMALL));
      }
    }
    pen.y += SIGNATURE_HEIGHT + gap;
  }
}
