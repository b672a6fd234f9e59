import type { Construct } from '../../plans/plan';
import type { Urgency } from '../surgicalCase';
import type { ImportRemark } from './faults';
import type { Named } from './names';

/** A case as the program has it. */
export interface ListedCase {
  id: string;
  reference: string;
  theatreId: string;
  startsAt: string;
  endsAt: string;
  region: Construct['region'];
  limb: 'left' | 'right';
  surgeonId: string;
  surgeon: string;
  urgency: Urgency;
  revision: number;
  cancelled: boolean;
  /** A set that is in theatre for it: only its end can be moved then. */
  setInTheatre: string | null;
}

/** Where and when. */
export interface Place {
  theatre: Named;
  startsAt: string;
  endsAt: string;
}

interface OfRow {
  row: number;
  /** What the list of another program calls it; kept as a digest only, to know the row again. */
  rowId: string | null;
  remarks: ImportRemark[];
}

/** What importing a row would do. A case that no row names is left as it is: there is no outcome for it. */
export type RowOutcome = OfRow &
  (
    | {
        kind: 'new';
        to: Place;
        region: Construct['region'];
        limb: 'left' | 'right';
        surgeon: Named;
        urgency: Urgency;
      }
    | { kind: 'moved'; listed: ListedCase; to: Place }
    | {
        kind: 'unchanged';
        listed: ListedCase;
        /** The row's id becomes known as this case's. */
        links: boolean;
      }
  );
