/** From this mean interval between periods with demand on, demand is sparse (Syntetos, Boylan & Croston 2005). */
export const SPARSE_INTERVAL = 1.32;
/** From this squared coefficient of variation of the sizes on, they vary much (the same). */
export const VARIED_CV2 = 0.49;

export type DemandClass = 'smooth' | 'erratic' | 'intermittent' | 'lumpy';

export interface Classified {
  class: DemandClass;
  /** Periods for each period with demand: 1 where every period has some. */
  interval: number;
  /** Squared coefficient of variation of the demand of the periods that have some. */
  cv2: number;
}

/** The class of a series of demands, one a period; `null` where no period has any. */
export function classOf(periods: readonly number[]): Classified | null {
  const sizes = periods.filter((pieces) => pieces > 0);
  if (sizes.length === 0) return null;
  const interval = periods.length / sizes.length;
  const mean = sizes.reduce((all, size) => all + size, 0) / sizes.length;
  const variance = sizes.reduce((all, size) => all + (size - mean) ** 2, 0) / sizes.length;
  const cv2 = variance / mean ** 2;
  return { class: named(interval, cv2), interval, cv2 };
}

export function named(interval: number, cv2: number): DemandClass {
  if (interval < SPARSE_INTERVAL) return cv2 < VARIED_CV2 ? 'smooth' : 'erratic';
  return cv2 < VARIED_CV2 ? 'intermittent' : 'lumpy';
}
