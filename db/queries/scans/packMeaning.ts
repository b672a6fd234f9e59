import { desc, eq } from 'drizzle-orm';
import { packId as parsedPack, setId as parsedSet } from '@/lib/identity/ids';
import { packState } from '@/lib/packs/pack';
import type { PackNumber } from '@/lib/packs/packNumber';
import { whyLabelIsOld } from '@/lib/packs/printed';
import { type RefusalOfScan, type ScanMeaning, scanMeaning } from '@/lib/scanning/meaning';
import type { Queries } from '../../client';
import { items, labelPrints, packs, sets } from '../../schema';

/**
 * The pack of that number, or why its label no longer counts: only the copy printed last is valid, and no label of a pack
 * that was opened or undone. `copy` is `null` where the number alone was typed. `null`: there is no such pack.
 */
export async function packMeaning(
  read: Queries,
  number: PackNumber,
  copy: number | null,
): Promise<ScanMeaning | null> {
  const [row] = await read
    .select({ pack: packs, setCode: sets.code, itemCode: items.code })
    .from(packs)
    .leftJoin(sets, eq(sets.id, packs.setId))
    .leftJoin(items, eq(items.id, packs.itemId))
    .where(eq(packs.number, number));
  if (!row) return null;
  const { pack } = row;
  const refused = (because: RefusalOfScan): ScanMeaning => ({
    kind: 'refused',
    because,
    packId: parsedPack.parse(pack.id),
    setId: pack.setId === null ? null : parsedSet.parse(pack.setId),
    candidates: [`pack ${number}`],
    faults: [],
  });
  const [newest] = await read
    .select({ copy: labelPrints.copy })
    .from(labelPrints)
    .where(eq(labelPrints.packId, pack.id))
    .orderBy(desc(labelPrints.copy))
    .limit(1);
  const old = whyLabelIsOld({ copy, newestCopy: newest?.copy ?? 0, state: packState.parse(pack.state) });
  if (old) return refused(old);
  return scanMeaning.parse({
    kind: 'pack',
    packId: pack.id,
    number,
    copy,
    setId: pack.setId,
    code: row.setCode ?? row.itemCode ?? '',
    itemId: pack.itemId,
    lot: pack.lot,
    useBy: pack.useBy,
    loadId: pack.loadId,
    state: pack.state,
    short: pack.short !== null,
  });
}
