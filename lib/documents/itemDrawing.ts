import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import { drawingInWords } from '../wording/drawing';
import { drawItem } from './drawing/item';
import type { Scene } from './drawing/scene';
import type { Cell } from './sheet';

/** Reductions that drawings are printed at, the largest that fits first. */
const DENOMINATORS = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 30, 50, 100];

/** The largest of the usual scales at which the scene fits the room, all in millimetres of paper. */
export function denominatorFor(
  scene: Pick<Scene, 'widthUm' | 'heightUm'>,
  widthMm: number,
  heightMm: number,
): number {
  const fits = (denominator: number) =>
    scene.widthUm <= widthMm * 1000 * denominator && scene.heightUm <= heightMm * 1000 * denominator;
  return (
    DENOMINATORS.find(fits) ?? Math.ceil(Math.max(scene.widthUm / widthMm, scene.heightUm / heightMm) / 1000)
  );
}

/**
 * Drawings for the rows of one table. Things of one kind are drawn at one scale, so that what looks longer is longer.
 */
export function rowDrawings(
  items: readonly Item[],
  { widthMm, heightMm }: { widthMm: number; heightMm: number },
): Map<ItemId, Extract<Cell, { kind: 'drawing' }>> {
  const scenes = new Map(items.map((item) => [item.id, { item, scene: drawItem(item) }]));
  const ofKind = new Map<string, number>();
  for (const { item, scene } of scenes.values()) {
    const own = denominatorFor(scene, widthMm, heightMm);
    ofKind.set(item.kind, Math.max(ofKind.get(item.kind) ?? 1, own));
  }
  return new Map(
    [...scenes].map(([id, { item, scene }]) => [
      id,
      { kind: 'drawing', scene, denominator: ofKind.get(item.kind) ?? 1, alt: drawingInWords(item, scene) },
    ]),
  );
}
