import type { TablePack } from '@/db/queries/usage/tablePacks';
import type { TableSlot } from '@/db/queries/usage/tableSlots';
import { itemId } from '@/lib/identity/ids';
import { type UseLot, useSource } from '@/lib/usage/act';
import type { Touched } from './use-table';

/**
 * A touch of something at the table, or a scan of it, which brings its lot.
 *
 * @param returnId the return that said the pack was opened, where this says what it became
 */
export function touchOf(
  source: TableSlot | TablePack,
  {
    lot = source.kind === 'slot' ? { kind: 'setAndLoad' } : { kind: 'asIssued' },
    scanId = null,
    returnId = null,
  }: { lot?: UseLot; scanId?: string | null; returnId?: string | null } = {},
): Touched {
  const named =
    source.kind === 'slot'
      ? { kind: source.kind, setId: source.setId, lineId: source.lineId }
      : { kind: source.kind, pickId: source.pickId, returnId };
  return { source: useSource.parse(named), itemId: itemId.parse(source.itemId), lot, scanId };
}
