import type { MustHaveClass } from '../sets/configuration';
import { MUST_HAVE_WORDS } from '../wording/configurations';
import type { Mark } from './sheet';

const SHAPES: Record<MustHaveClass, Mark['shape']> = {
  1: 'filledSquare',
  2: 'doubleSquare',
  3: 'circle',
  4: 'plain',
};

/** A must-have class as paper and screens show it: its number in a shape of its own, which survives any copier and colour. */
export function mustHaveMark(mustHaveClass: MustHaveClass): Mark {
  return {
    shape: SHAPES[mustHaveClass],
    character: String(mustHaveClass),
    words: MUST_HAVE_WORDS[mustHaveClass],
  };
}
