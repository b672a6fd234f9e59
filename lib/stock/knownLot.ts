import type { PlainDate } from '../quantities/plainDate';
import { deliveryWords as words } from '../wording/stock-acts';

/** A lot and use-by as they were read off a pack. */
interface ReadOffPack {
  /** `null`: the pack states none. */
  lot: string | null;
  useBy: PlainDate | null;
  /** Whoever read it was asked about it, and read it again. */
  useByReadAgain: boolean;
}

/**
 * What is asked where a lot is on record with another use-by than the pack in hand: one of the two was misread. `null` where
 * nothing is. It is the same for all that comes, on whichever screen it is received.
 *
 * @param useBysOfLot use-bys on record for the same lot of the same item
 */
export function lotReadAmiss(
  { lot, useBy, useByReadAgain }: ReadOffPack,
  useBysOfLot: readonly (PlainDate | null)[],
): { code: string; message: string } | null {
  const [other] = useBysOfLot.filter((one) => one !== useBy);
  if (lot === null || other === undefined || useByReadAgain) return null;
  return { code: 'other-use-by', message: words.otherUseBy(lot, other) };
}
