import { Status } from '@/app/_ui/status';
import type { UseStanding } from '@/db/queries/usage/standing';

/** How far the record of use of a case is, in a word. */
export function UseMark({ standing: { entries, open } }: { standing: UseStanding }) {
  if (open !== null)
    return open === 0 ? (
      <Status tone="good">Closed, all accounted for</Status>
    ) : (
      <Status tone="attention">{`Closed, ${open} open`}</Status>
    );
  return entries > 0 ? (
    <Status tone="attention">Being recorded</Status>
  ) : (
    <Status tone="neutral">Nothing recorded yet</Status>
  );
}
