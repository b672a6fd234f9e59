import { sql } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import type { Period } from '../review/pastCases';

/** Pieces not found, by the step at which that was seen and the kind of set; nobody is named, and nobody is looked up. */
export interface NotFoundRow {
  step: string | null;
  configuration: { id: string; code: string; name: string } | null;
  pieces: number;
  /** Pence of those with a known price. */
  pence: number;
  unknown: number;
}

/** Where pieces vanish: by step and kind of set, the most first. What turned out later to have been used did not vanish. */
export async function loadNotFound(db: Reading, { from, until }: Period): Promise<NotFoundRow[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read.all<{
    step: string | null;
    id: string | null;
    code: string | null;
    name: string | null;
    pieces: number;
    pence: number | null;
    unknown: number;
  }>(sql`
    SELECT iif(move.act = 'explained', 'bench', move.reason) AS step, head.id, head.code, head.name,
      sum(iif(move.act = 'explained', -move.quantity, move.quantity)) AS pieces,
      sum(iif(move.act = 'explained', -move.quantity, move.quantity) * move.unit_pence) AS pence,
      sum(iif(move.unit_pence IS NULL, iif(move.act = 'explained', -move.quantity, move.quantity), 0)) AS unknown
    FROM moves_that_stand move LEFT JOIN sets ON sets.id = coalesce(move.from_set_id, move.to_set_id)
    LEFT JOIN configuration_versions version ON version.id = sets.version_id
    LEFT JOIN configurations head ON head.id = version.configuration_id
    WHERE move.act IN ('notFound', 'explained') AND move.done_on BETWEEN ${from} AND ${until}
    GROUP BY 1, head.id HAVING pieces > 0 ORDER BY pieces DESC`);
  return rows.map(({ step, id, code, name, pieces, pence, unknown }) => ({
    step,
    configuration: id === null ? null : { id, code: code ?? id, name: name ?? '' },
    pieces,
    pence: pence ?? 0,
    unknown,
  }));
}

/** What was put aside as unfit of one kind of piece, and what became of it. */
export interface RepairRow {
  itemId: string;
  code: string;
  name: string;
  condition: string | null;
  putAside: number;
  repaired: number;
  discarded: number;
  /** The price of a new one; `null`: not known. */
  unitPence: number | null;
}

/** Pieces put aside, by item and condition, the most first. */
export async function loadRepairs(db: Reading, { from, until }: Period): Promise<RepairRow[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read.all<{
    item_id: string;
    code: string;
    name: string;
    condition: string | null;
    put_aside: number;
    repaired: number;
    discarded: number;
    unit_cost_pence: number | null;
  }>(sql`
    SELECT move.item_id, items.code, items.name, items.unit_cost_pence, coalesce(aside.condition, move.reason) AS condition,
      sum(iif(move.act = 'setAside', move.quantity, 0)) AS put_aside,
      sum(iif(move.act = 'repaired', move.quantity, 0)) AS repaired,
      sum(iif(move.act = 'discarded', move.quantity, 0)) AS discarded
    FROM moves_that_stand move JOIN items ON items.id = move.item_id LEFT JOIN aside_pieces aside ON aside.id = move.aside_id
    WHERE move.act IN ('setAside', 'repaired', 'discarded') AND move.done_on BETWEEN ${from} AND ${until}
    GROUP BY move.item_id, coalesce(aside.condition, move.reason) ORDER BY put_aside DESC, items.code`);
  return rows.map(({ item_id, put_aside, unit_cost_pence, ...row }) => ({
    ...row,
    itemId: item_id,
    putAside: put_aside,
    unitPence: unit_cost_pence,
  }));
}

/** What was thrown away on the shelf, no case being concerned: by reason, the most costly first. */
export interface ShelfWasteRow {
  code: string;
  pieces: number;
  pence: number;
  unknown: number;
}

export async function loadShelfWaste(db: Reading, { from, until }: Period): Promise<ShelfWasteRow[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read.all<{ code: string; pieces: number; pence: number | null; unknown: number }>(sql`
    SELECT coalesce(reason, 'notStated') AS code, sum(quantity) AS pieces, sum(quantity * unit_pence) AS pence,
      sum(iif(unit_pence IS NULL, quantity, 0)) AS unknown
    FROM moves_that_stand WHERE act = 'wasted' AND case_id IS NULL AND done_on BETWEEN ${from} AND ${until}
    GROUP BY 1 ORDER BY pence DESC`);
  return rows.map((row) => ({ ...row, pence: row.pence ?? 0 }));
}
