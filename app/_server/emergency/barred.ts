import 'server-only';
import type { SetId } from '@/lib/identity/ids';
import { availableFor } from '@/lib/kits/availability';
import type { Unavailable } from '@/lib/kits/kit';
import type { Store } from '@/lib/kits/store';
import type { PlainDate } from '@/lib/quantities/plainDate';

/** Why a set can't be had for an emergency, whoever asks. */
export type Barred =
  | Exclude<Unavailable, { kind: 'notInStore' }>
  /** Short, and nobody has decided yet. */
  | { kind: 'awaitsDecision' }
  /** Taken for another emergency that has not begun with it. */
  | { kind: 'takenForEmergency'; reference: string };

/** The sets that can't be had for a case on that day, with why; a set that is on its way can be waited for. */
export function barredSets(
  store: Store,
  caseDate: PlainDate,
  taken: ReadonlyMap<string, { caseId: string; reference: string }>,
  forCase: string | null,
): Map<SetId, Barred> {
  const barred = new Map<SetId, Barred>();
  for (const { set, because } of availableFor(store, caseDate).otherSets) {
    if (because.kind !== 'notInStore') barred.set(set.id, because);
    else if (set.step === 'shortAwaitingDecision') barred.set(set.id, { kind: 'awaitsDecision' });
  }
  for (const { id } of store.sets) {
    const other = taken.get(id);
    if (other && other.caseId !== forCase)
      barred.set(id, { kind: 'takenForEmergency', reference: other.reference });
  }
  return barred;
}
