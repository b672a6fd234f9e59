import { sql } from 'drizzle-orm';
import type { z } from 'zod';
import type { LifeThing, ThingLife } from '@/lib/calculations/serviceLife/schema';
import { serviceLifeInput } from '@/lib/calculations/serviceLife/schema';
import { serviceLife } from '@/lib/calculations/serviceLife/serviceLife';
import { groupBy } from '@/lib/lists/groupBy';
import { type SlotMove, slotAge } from '@/lib/loss/slotAge';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { hiddenFrom } from '../bench/blind';

/** A slot of pieces that may be reprocessed so often, with how far it has come. */
export interface SlotLife {
  setId: string;
  setCode: string;
  itemId: string;
  name: string;
  pieces: number;
  thing: LifeThing;
  life: ThingLife;
}

/**
 * Every slot whose pieces have a stated limit of cycles, with the least and the most its oldest piece can have had, and the cases its set
 * is promised to. Where the oldest may be older than the record, only a limit that the turns on record reach is known.
 * Of a set the reader counts blind, none: how many pieces a slot holds is told with each.
 */
export async function loadServiceLives(db: Reading, now: string): Promise<SlotLife[]> {
  mayRead(db, 'readHospital');
  const hidden = await hiddenFrom(db);
  const slots = slotsWithLimit(db.read).filter(({ setId }) => !hidden.has(setId));
  const moves = movesWithLimit(db.read);
  const since = sterilisedSince(db.read);
  const booked = groupBy(
    await db.read.all<{ set_id: string; reference: string }>(sql`
      SELECT promise.set_id, cases.reference FROM set_promises promise JOIN cases ON cases.id = promise.case_id
      WHERE cases.starts_at > ${now} AND cases.cancelled_at IS NULL ORDER BY cases.starts_at`),
    ({ set_id }) => set_id,
  );
  if (slots.length === 0) return [];
  const things = slots.map((slot) => {
    const { setId, setCode, name, held, limit, layer, row, slot: nth } = slot;
    const { least, most } = slotAge(moves.get(slotKey(slot)) ?? [], held, (at) => since(setId, at));
    return {
      thing: `${setCode} ${layer}.${row}.${nth} ${name}`.slice(0, 80),
      pieces: held,
      limitUses: null,
      limitCycles: limit,
      uses: null,
      // before the record began nobody counted: known only where even the turns on record reach the limit
      cycles: most !== null || least >= limit ? least : null,
      mostCycles: most !== null && most > least ? most : null,
      booked: [...new Set((booked.get(setId) ?? []).map(({ reference }) => reference))].map((one) => ({
        case: one,
      })),
    };
  });
  const [inputs, lives] = livesOf(things);
  return slots.flatMap((slot, at): SlotLife[] => {
    const [thing, life] = [inputs[at], lives[at]];
    const { setId, setCode, itemId, name, held } = slot;
    return thing && life ? [{ setId, setCode, itemId, name, pieces: held, thing, life }] : [];
  });
}

interface SlotRow {
  setId: string;
  lineId: string;
  setCode: string;
  itemId: string;
  name: string;
  held: number;
  limit: number;
  layer: number;
  row: number;
  slot: number;
}

const slotKey = (one: Pick<SlotRow, 'setId' | 'lineId'>): string => `${one.setId} ${one.lineId}`;

/**
 * Slots that hold pieces with a stated limit, by set and place. From the few versions that name such an item to the sets that
 * follow them, and only then to what lies there; one text for each item, as a row for each of thousands of slots costs more.
 */
function slotsWithLimit(read: Queries): SlotRow[] {
  const rows = read.all<{ item_id: string; name: string; reprocessing_limit: number; slots: string }>(sql`
    SELECT items.id AS item_id, items.name, items.reprocessing_limit,
      json_group_array(json_array(sets.id, line.id, sets.code, held.found, line.layer, line.row, line.slot)) AS slots
    FROM items CROSS JOIN configuration_lines line ON line.item_id = items.id
      CROSS JOIN sets ON sets.version_id = line.version_id AND sets.withdrawn_at IS NULL
      CROSS JOIN set_contents held ON held.set_id = sets.id AND held.line_id = line.id AND held.found > 0
    WHERE items.reprocessing_limit IS NOT NULL GROUP BY items.id`);
  type Cells = [string, string, string, number, number, number, number];
  return rows
    .flatMap(({ item_id: itemId, name, reprocessing_limit: limit, slots }) =>
      (JSON.parse(slots) as Cells[]).map(([setId, lineId, setCode, held, layer, row, slot]) => {
        return { setId, lineId, setCode, itemId, name, held, limit, layer, row, slot };
      }),
    )
    .sort(byPlace);
}

const byPlace = (a: SlotRow, b: SlotRow): number =>
  a.setCode === b.setCode
    ? a.layer - b.layer || a.row - b.row || a.slot - b.slot
    : a.setCode < b.setCode
      ? -1
      : 1;

/** Every move of such pieces into a slot or out of one, by slot, in their order. */
function movesWithLimit(read: Queries): Map<string, SlotMove[]> {
  const rows = read.all<{ moves: string }>(sql`
    SELECT json_group_array(json_array(seq, done_at, act, quantity, to_set_id, to_line_id, from_set_id, from_line_id)) AS moves
    FROM piece_moves WHERE item_id IN (SELECT id FROM items WHERE reprocessing_limit IS NOT NULL)
      AND (to_set_id IS NOT NULL OR from_set_id IS NOT NULL) GROUP BY item_id`);
  type Cells = [number, string, string, number, ...(string | null)[]];
  const cells = rows.flatMap(({ moves }) => JSON.parse(moves) as Cells[]).sort(([a], [b]) => a - b);
  const slotMoves = cells.flatMap(([, at, act, pieces, toSet, toLine, fromSet, fromLine]) => {
    const oldAlready = act === 'opening' || act === 'carried';
    return [
      ...(toSet == null ? [] : [{ slot: `${toSet} ${toLine}`, at, pieces, oldAlready }]),
      ...(fromSet == null ? [] : [{ slot: `${fromSet} ${fromLine}`, at, pieces: -pieces, oldAlready }]),
    ];
  });
  return groupBy(slotMoves, ({ slot }) => slot);
}

/** As many as the calculation takes at once. */
const AT_ONCE = 400;

/** What the calculation makes of each, in their order. */
function livesOf(
  things: readonly z.input<typeof serviceLifeInput>['things'][number][],
): [LifeThing[], (ThingLife | undefined)[]] {
  const inputs: LifeThing[] = [];
  const lives: (ThingLife | undefined)[] = [];
  for (let at = 0; at < things.length; at += AT_ONCE) {
    const input = serviceLifeInput.parse({ things: things.slice(at, at + AT_ONCE) });
    const said = serviceLife(input);
    const known = (said.outcome === 'answered' ? said.answer : said.known)?.things ?? [];
    inputs.push(...input.things);
    lives.push(...input.things.map((_, place) => known[place]));
  }
  return [inputs, lives];
}

/** How often a set went through the steriliser: since an instant, counted in the index alone, or ever, as it is kept. */
function sterilisedSince(read: Queries): (setId: string, at: string | null) => number {
  const ever = new Map(
    read
      .all<{ set_id: string; cycles: number }>(sql`SELECT set_id, cycles FROM set_cycles`)
      .map(({ set_id, cycles }) => [set_id, cycles]),
  );
  const later = new Map<string, number>();
  return (setId, at) => {
    if (at === null) return ever.get(setId) ?? 0;
    const key = `${setId} ${at}`;
    const known = later.get(key);
    if (known !== undefined) return known;
    const [row] = read.all<{
      times: number;
    }>(sql`SELECT count(*) AS times FROM turn_steps INDEXED BY turn_steps_sterilised
      WHERE step = 'inSteriliser' AND set_id = ${setId} AND done_at > ${at}`);
    later.set(key, row?.times ?? 0);
    return row?.times ?? 0;
  };
}
