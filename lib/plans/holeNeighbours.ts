import type { Hole } from '../catalogue/hole';

/** Where an arrow key leads from a hole: along the plate, or to the row beside it. */
export type Direction = 'right' | 'left' | 'up' | 'down';

/**
 * The nearest hole in a direction; the distance off the line counts double, so that a move stays in its row. `null`
 * where there is none. Right is away from the shaft end, up is the plate's left edge.
 */
export function neighbourOf(holes: readonly Hole[], fromId: string, direction: Direction): Hole | null {
  const from = holes.find(({ id }) => id === fromId);
  if (!from) return null;
  let best: { hole: Hole; distance: number } | null = null;
  for (const hole of holes) {
    if (hole.id === fromId) continue;
    const along = hole.alongUm - from.alongUm;
    const across = hole.acrossUm - from.acrossUm;
    const ahead = { right: along, left: -along, up: across, down: -across }[direction];
    if (ahead <= 0) continue;
    const beside = Math.abs(direction === 'right' || direction === 'left' ? across : along);
    const distance = ahead + beside * 2;
    if (!best || distance < best.distance) best = { hole, distance };
  }
  return best?.hole ?? null;
}

/** Holes in the order people read them: along the shaft, then the head, each from the shaft end. */
export function inReadingOrder(holes: readonly Hole[]): Hole[] {
  const rank = (hole: Hole) => (hole.segment === 'shaft' ? 0 : 1);
  return [...holes].sort((a, b) => rank(a) - rank(b) || a.alongUm - b.alongUm || b.acrossUm - a.acrossUm);
}
