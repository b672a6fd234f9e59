import { addDays, isPastUseBy, type PlainDate } from '../quantities/plainDate';

/** How a use-by stands on a day. `none`: nobody has stated one. */
export type ShelfLife = 'past' | 'soon' | 'good' | 'none';

/** Days before the use-by from which it counts as soon: a local setting, four weeks unless told. */
export const SOON_DAYS = 28;

/** Good through the day printed, past it the day after; soon within `soonDays` of it. */
export function shelfLifeOf(useBy: PlainDate | null, today: PlainDate, soonDays = SOON_DAYS): ShelfLife {
  if (useBy === null) return 'none';
  if (isPastUseBy(useBy, today)) return 'past';
  return useBy <= addDays(today, soonDays) ? 'soon' : 'good';
}
