import { z } from 'zod';
import type { Item } from '../catalogue/item';

/** Kinds of item that stay in the patient (common practice, no source): their loads wait for a biological result. */
const IMPLANT_KINDS: ReadonlySet<Item['kind']> = new Set(['plate', 'screw', 'washer']);

export const isImplant = (kind: Item['kind']): boolean => IMPLANT_KINDS.has(kind);

/** What lay in a pack when it was closed. Other members of a line are for those who wrote it. */
export const packContents = z.array(
  z.looseObject({ lineId: z.string(), found: z.number().int().nonnegative() }),
);

export type HoldsImplants = 'yes' | 'no' | 'notEstablished';

/**
 * Whether a pack holds implants, from what was packed. Not established where what was packed can't be read, or names a
 * line nobody knows: such a pack waits as one with implants does.
 */
export function packHoldsImplants(
  pack: { kind: 'set' | 'pouch'; itemKind: Item['kind'] | null; contents: unknown },
  kindOfLine: (lineId: string) => Item['kind'] | null,
): HoldsImplants {
  if (pack.kind === 'pouch')
    return pack.itemKind === null ? 'notEstablished' : isImplant(pack.itemKind) ? 'yes' : 'no';
  const lines = packContents.safeParse(pack.contents);
  if (!lines.success || lines.data.length === 0) return 'notEstablished';
  const kinds = lines.data.filter(({ found }) => found > 0).map(({ lineId }) => kindOfLine(lineId));
  if (kinds.some((kind) => kind !== null && isImplant(kind))) return 'yes';
  return kinds.includes(null) ? 'notEstablished' : 'no';
}
