import { Figure, FigureRow } from '@/app/_ui/figure';
import { Status } from '@/app/_ui/status';
import type { SetCompleteness } from '@/db/queries/completeness';

/** How many sets are whole, and of the others what their shortage stops, by must-have class. */
export function CompletenessFigures({ sets }: { sets: readonly SetCompleteness[] }) {
  const many = (is: (one: SetCompleteness) => boolean) => sets.filter(is).length;
  const classOne = many(({ stopped }) => stopped[1] > 0);
  return (
    <FigureRow>
      <Figure
        size="medium"
        label="Whole"
        value={many(({ pieces, uncounted }) => uncounted === 0 && pieces.found === pieces.expected)}
        unit={`of ${sets.length}`}
      />
      <Figure
        size="medium"
        label="Below a class 1 minimum"
        value={classOne}
        status={classOne > 0 ? <Status tone="stop">a step is stopped</Status> : undefined}
      />
      <Figure
        size="medium"
        label="Below a class 2 minimum"
        value={many(({ stopped }) => stopped[2] > 0)}
        note="nothing in the set stands in"
      />
      <Figure
        size="medium"
        label="Short of back-ups alone"
        value={many(
          ({ shortLines, stopped }) => stopped[1] + stopped[2] === 0 && shortLines[3] + shortLines[4] > 0,
        )}
        note="class 3 or 4"
      />
      <Figure size="medium" label="Not all counted" value={many(({ uncounted }) => uncounted > 0)} />
    </FigureRow>
  );
}
