import { asc, eq, inArray } from 'drizzle-orm';
import { packContents } from '@/lib/packs/pack';
import type { SlotSource } from '@/lib/usage/account';
import type { Queries } from '../../client';
import { configurationLines, items, packs, setContents, sets } from '../../schema';
import type { TableSet } from './tableSets';

/** A line of such a set, and where it lies. */
export interface TableSlot extends SlotSource {
  layer: number;
  row: number;
  slot: number;
}

/** Lines as each set was packed; of one that has no pack on record, as it holds now. */
export async function slotsAtTable(read: Queries, own: readonly TableSet[]): Promise<TableSlot[]> {
  const ids = own.map(({ id }) => id);
  const [packRows, held] = await Promise.all([
    read
      .select({ id: packs.id, versionId: packs.versionId, contents: packs.contents })
      .from(packs)
      .where(
        inArray(
          packs.id,
          own.flatMap(({ packId }) => packId ?? []),
        ),
      ),
    read
      .select({ setId: sets.id, versionId: sets.versionId, contents: setContents })
      .from(sets)
      .leftJoin(setContents, eq(setContents.setId, sets.id))
      .where(inArray(sets.id, ids)),
  ]);
  const versionOf = new Map(
    own.map(({ id, packId }) => [
      id,
      packRows.find((pack) => pack.id === packId)?.versionId ??
        held.find(({ setId }) => setId === id)?.versionId ??
        '',
    ]),
  );
  const lines = await read
    .select({ line: configurationLines, use: items.use })
    .from(configurationLines)
    .innerJoin(items, eq(items.id, configurationLines.itemId))
    .where(inArray(configurationLines.versionId, [...new Set(versionOf.values())]))
    .orderBy(asc(configurationLines.layer), asc(configurationLines.row), asc(configurationLines.slot));
  return own.flatMap(({ id, packId }) => {
    const pack = packRows.find((one) => one.id === packId);
    const packed =
      pack && new Map(packContents.parse(pack.contents).map((one) => [one.lineId as string, one.found]));
    return lines
      .filter(({ line }) => line.versionId === versionOf.get(id))
      .map(
        ({ line, use }): TableSlot => ({
          kind: 'slot',
          setId: id,
          lineId: line.id,
          itemId: line.itemId,
          reusable: use === 'reprocessable',
          layer: line.layer,
          row: line.row,
          slot: line.slot,
          recorded:
            packed?.get(line.id) ??
            held.find((one) => one.setId === id && one.contents?.lineId === line.id)?.contents?.found ??
            null,
          counted: null,
        }),
      );
  });
}
