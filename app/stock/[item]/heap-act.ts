/** What the dialogs on a heap need of it. */
export interface HeapOfAct {
  id: string;
  revision: number;
  /** `lot 4471`, `no lot stated`. */
  name: string;
  placeId: string;
  place: string;
  all: number;
  free: number;
}

/** A whole number of at least one, or `null`. */
export const wholePieces = (text: string): number | null =>
  /^[1-9]\d{0,4}$/.test(text.trim()) ? Number(text.trim()) : null;

export const STATE_PIECES = 'State whole pieces, at least one.';
