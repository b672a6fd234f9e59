import type { Item } from '../catalogue/item';
import type { Scene } from '../documents/drawing/scene';
import { writeMm } from '../quantities/length';
import { holesInWords, KIND_WORDS, PLATE_SHAPE_WORDS, SCREW_KIND_WORDS, sentenceCase } from './catalogue';

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
  if (scene.interrupted) sentences.push('Its plain middle is left out between two break lines.');
  return sentences.join(' ');
}
