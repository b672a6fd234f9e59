import type { Item } from '../catalogue/item';
import type { Scene } from '../documents/drawing/scene';
import { writeMm } from '../quantities/length';
import { holesInWords, KIND_WORDS, PLATE_SHAPE_WORDS, SCREW_KIND_WORDS, sentenceCase } from './catalogue';

/** Said beside the drawing of a plate whose threaded holes have no size of their own. */
export const THREADS_IN_PROPORTION =
  'Threaded holes are drawn in proportion to their screws: their size is not stated.';

export function hasThreadInProportion(item: Item): boolean {
  return (
    item.kind === 'plate' &&
    item.holes.some(
      ({ holeClass, openingUm }) =>
        (holeClass === 'threaded' || holeClass === 'polyaxialThreaded') && openingUm === null,
    )
  );
}

/** The text alternative of a drawing: what it shows, its dimensions in mm, and what nobody has stated. */
export function drawingInWords(item: Item, scene: Pick<Scene, 'measures' | 'interrupted'>): string {
  const kind =
    item.kind === 'plate'
      ? `${PLATE_SHAPE_WORDS[item.shape]} plate with ${holesInWords(item.holes)}`
      : item.kind === 'screw'
        ? `${SCREW_KIND_WORDS[item.screwKind]} screw`
        : KIND_WORDS[item.kind];
  const stated = scene.measures.flatMap(({ name, um }) => (um === null ? [] : [`${name} ${writeMm(um)} mm`]));
  const missing = scene.measures.flatMap(({ name, um }) => (um === null ? [name] : []));
  const sentences = [
    `${sentenceCase(kind)}, drawn to scale${stated.length > 0 ? `: ${stated.join(', ')}` : ''}.`,
  ];
  if (missing.length > 0) sentences.push(`Not stated: ${missing.join(', ')}.`);
  if (hasThreadInProportion(item)) sentences.push(THREADS_IN_PROPORTION);
  if (scene.interrupted) sentences.push('Its plain middle is left out between two break lines.');
  return sentences.join(' ');
}
