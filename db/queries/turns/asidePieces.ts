import { and, asc, desc, eq, isNotNull, isNull } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import type { Item } from '@/lib/catalogue/item';
import { type AsideId, asideId } from '@/lib/identity/ids';
import { type PieceCondition, pieceCondition } from '@/lib/sets/setState';
import { type AsideOutcome, asideOutcome } from '@/lib/turns/aside';
import { mayRead, type Reading } from '../../reader';
import { asidePieces, items, people, sets } from '../../schema';

export interface AsidePiece {
  id: AsideId;
  item: { id: string; code: string; name: string; kind: Item['kind']; singleUse: boolean };
  quantity: number;
  condition: PieceCondition;
  route: 'repair' | 'discard' | null;
  set: { id: string; code: string } | null;
  foundBy: string;
  foundAt: string;
  settled: { by: string; at: string; outcome: AsideOutcome } | null;
}

const finder = alias(people, 'finder');
const settler = alias(people, 'settler');

/**
 * Pieces put aside: those nobody has settled, the longest waiting first; or the settled ones, the latest first.
 *
 * @param of one set only
 */
export async function asidePiecesOf(
  db: Reading,
  { settled, of = null, limit }: { settled: boolean; of?: string | null; limit: number },
): Promise<AsidePiece[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({
      piece: asidePieces,
      item: items,
      code: sets.code,
      foundBy: finder.name,
      settledBy: settler.name,
    })
    .from(asidePieces)
    .innerJoin(items, eq(items.id, asidePieces.itemId))
    .innerJoin(finder, eq(finder.id, asidePieces.foundBy))
    .leftJoin(settler, eq(settler.id, asidePieces.settledBy))
    .leftJoin(sets, eq(sets.id, asidePieces.setId))
    .where(
      and(
        settled ? isNotNull(asidePieces.settledAt) : isNull(asidePieces.settledAt),
        of === null ? undefined : eq(asidePieces.setId, of),
      ),
    )
    .orderBy(settled ? desc(asidePieces.settledAt) : asc(asidePieces.foundAt))
    .limit(limit);
  return rows.map(({ piece, item, code, foundBy, settledBy }) => ({
    id: asideId.parse(piece.id),
    item: {
      id: item.id,
      code: item.code,
      name: item.name,
      kind: item.kind as Item['kind'],
      singleUse: item.use === 'singleUse',
    },
    quantity: piece.quantity,
    condition: pieceCondition.parse(piece.condition),
    route: piece.route === 'repair' || piece.route === 'discard' ? piece.route : null,
    set: piece.setId === null ? null : { id: piece.setId, code: code ?? piece.setId },
    foundBy,
    foundAt: piece.foundAt,
    settled:
      piece.settledAt === null
        ? null
        : { by: settledBy ?? '', at: piece.settledAt, outcome: asideOutcome.parse(piece.outcome) },
  }));
}
