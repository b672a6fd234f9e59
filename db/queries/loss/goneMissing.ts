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

/** Where pieces vanish: by step and kind of set, the most first. */
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
    SELECT move.reason AS step, head.id, head.code, head.name, sum(move.quantity) AS pieces,
      sum(move.quantity * move.unit_pence) AS pence, sum(iif(move.unit_pence IS NULL, move.quantity, 0)) AS unknown
    FROM piece_moves move LEFT JOIN sets ON sets.id = move.from_set_id
    LEFT JOIN configuration_versions version ON version.id = sets.version_id
    LEFT JOIN configurations head ON head.id = version.configuration_id
    WHERE move.act = 'notFound' AND move.done_on BETWEEN ${from} AND ${until}
      AND move.seq NOT IN (SELECT move_seq FROM moves_taken_back)
    GROUP BY move.reason, head.id ORDER BY pieces DESC`);
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
    FROM piece_moves move JOIN items ON items.id = move.item_id LEFT JOIN aside_pieces aside ON aside.id = move.aside_id
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
    FROM piece_moves WHERE act = 'wasted' AND case_id IS NULL AND done_on BETWEEN ${from} AND ${until}
    GROUP BY 1 ORDER BY pence DESC`);
  return rows.map((row) => ({ ...row, pence: row.pence ?? 0 }));
}
