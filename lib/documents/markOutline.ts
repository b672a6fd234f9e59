import type { Mark } from './sheet';

/** How a mark is drawn, in shares of its size about its middle: the same on paper and on a screen. */
export interface MarkOutline {
  /** Outlines from the outside in; `scale` 1 is the mark's whole size. */
  outlines: { form: 'square' | 'circle'; scale: number }[];
  /** The outermost is filled, and the character stands out of it. */
  filled: boolean;
  /** Height of the character's type. */
  type: number;
}

const OUTLINES: Record<Mark['shape'], MarkOutline> = {
  filledSquare: { outlines: [{ form: 'square', scale: 1 }], filled: true, type: 0.68 },
  doubleSquare: {
    outlines: [
      { form: 'square', scale: 1 },
      { form: 'square', scale: 0.72 },
    ],
    filled: false,
    type: 0.58,
  },
  circle: { outlines: [{ form: 'circle', scale: 1 }], filled: false, type: 0.68 },
  plain: { outlines: [], filled: false, type: 0.68 },
};

export const markOutline = ({ shape }: Pick<Mark, 'shape'>): MarkOutline => OUTLINES[shape];
