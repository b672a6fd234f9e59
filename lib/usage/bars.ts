import { isPastUseBy, type PlainDate } from '../quantities/plainDate';
import type { OpeningBar, UseOutcome } from './act';

/** What is known of a thing before it is opened; `useBy` where one is stated, of the pack or as read. */
export interface BeforeOpening {
  useBys: readonly (PlainDate | null)[];
  /** The heap or the set is held. */
  held: boolean;
  /** The item is recalled. */
  recalled: boolean;
}

/** Why it is not to be opened for a case of that day: all of it. */
export function openingBars({ useBys, held, recalled }: BeforeOpening, caseDate: PlainDate): OpeningBar[] {
  const past = useBys.some((useBy) => useBy !== null && isPastUseBy(useBy, caseDate));
  return [
    ...(past ? (['pastUseBy'] as const) : []),
    ...(held ? (['held'] as const) : []),
    ...(recalled ? (['recalled'] as const) : []),
  ];
}

/** Whether saying that says the thing was opened; a pack that is only missing may be sealed as it was. */
export const saysOpened = (outcome: UseOutcome): boolean =>
  outcome === 'implanted' || outcome === 'openedNotImplanted';
