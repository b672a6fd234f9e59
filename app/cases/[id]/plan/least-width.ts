import type { SceneHole } from '@/lib/documents/drawing/scene';

/** Widths a drawing never goes below, so that each hole stays a target of its own; beyond them it is scrolled. */
const STEPS = [320, 480, 640, 800, 960, 1120, 1280, 1440, 1600] as const;

/** The least step at which neighbouring holes are so many pixels apart. */
export function leastWidth(
  { holes, widthUm }: { holes: readonly SceneHole[]; widthUm: number },
  apartPx: number,
): number | undefined {
  let closest = Number.POSITIVE_INFINITY;
  for (const [index, a] of holes.entries()) {
    for (const b of holes.slice(index + 1)) {
      closest = Math.min(closest, Math.hypot(a.centre.xUm - b.centre.xUm, a.centre.yUm - b.centre.yUm));
    }
  }
  const least = Number.isFinite(closest) && closest > 0 ? (widthUm / closest) * apartPx : 0;
  return STEPS.find((step) => step >= least) ?? STEPS.at(-1);
}
