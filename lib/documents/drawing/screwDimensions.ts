import type { Screw } from '../../catalogue/item';
import { extentOf, underneath } from './compose';
import { dimensionText, dimensionUpright } from './dimensions';
import { line, words } from './marks';
import type { LineClass, Shape } from './scene';

/** A screw's sizes as drawn, in micrometres; stand-ins where a dimension is not stated. */
export interface ScrewSizes {
  length: number;
  thread: number;
  core: number;
  shaft: number;
  head: number;
  /** Length of thread, tip included. */
  threaded: number;
  edge: LineClass;
}

/** The dimension lines of a screw lying along x: length, thread, core, head, and the threaded part where it is one. */
export function screwDimensions(
  screw: Screw,
  { length, thread, head, shaft }: ScrewSizes,
  drawnSoFar: readonly Shape[],
  {
    height,
    threadFrom,
    partial,
    core,
  }: { height: number; threadFrom: number; partial: boolean; core: number },
  textUm: number,
): Shape[] {
  const top = -Math.max(head, thread) / 2;
  const right = length + thread * 0.6;
  const above = (x: number, y: number, um: number | null, name: string): Shape[] => [
    line(x, y, x, top - textUm * 0.5, 'dimension'),
    words(
      x,
      top - textUm * 1.2,
      dimensionText(um, name),
      textUm,
      um === null ? 'notStated' : 'dimension',
      'start',
    ),
  ];
  const shapes: Shape[] = [
    ...dimensionUpright(-thread / 2, thread / 2, right + textUm, right, {
      um: screw.threadUm,
      textUm,
      name: 'thread',
    }),
    ...above(Math.max(threadFrom, height) + (length - threadFrom) * 0.3, -core / 2, screw.coreUm, 'core'),
    words(
      -head * 1.25,
      top - textUm * 1.2,
      dimensionText(screw.headUm, 'head'),
      textUm,
      screw.headUm === null ? 'notStated' : 'dimension',
    ),
  ];
  const all = [...drawnSoFar, ...shapes];
  if (partial) {
    const y = head / 2 + textUm * 1.6;
    shapes.push(
      line(threadFrom, shaft / 2, threadFrom, y + textUm * 0.4, 'dimension'),
      line(threadFrom, y, length, y, 'dimension'),
      line(length, 0, length, y + textUm * 0.4, 'dimension'),
      words(
        (threadFrom + length) / 2,
        y - textUm * 0.7,
        dimensionText(screw.threadLengthUm, 'thread'),
        textUm,
        'dimension',
      ),
    );
  }
  const body = partial ? [...all, ...shapes] : all;
  const { left } = extentOf(body);
  return [
    ...shapes,
    ...underneath([...body, line(left, 0, left, 1, 'fine')], 0, length, { um: screw.lengthUm, textUm }),
  ];
}
