import { sql } from 'drizzle-orm';
import type { LifeThing, ThingLife } from '@/lib/calculations/serviceLife/schema';
import { serviceLifeInput } from '@/lib/calculations/serviceLife/schema';
import { serviceLife } from '@/lib/calculations/serviceLife/serviceLife';
import { groupBy } from '@/lib/lists/groupBy';
import { slotAge } from '@/lib/loss/slotAge';
import { mayRead, type Reading } from '../../reader';

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
 */
export async function loadServiceLives(db: Reading, now: string): Promise<SlotLife[]> {
  mayRead(db, 'readHospital');
  const slots = await db.read.all<{
    set_id: string;
    line_id: string;
    set_code: string;
    item_id: string;
    name: string;
    place: string;
    held: number;
    reprocessing_limit: number;
  }>(sql`
    SELECT sets.id AS set_id, line.id AS line_id, sets.code AS set_code, items.id AS item_id, items.name, held.found AS held,
      items.reprocessing_limit, line.layer || '.' || line.row || '.' || line.slot AS place
    FROM items JOIN configuration_lines line ON line.item_id = items.id JOIN set_contents held ON held.line_id = line.id
    JOIN sets ON sets.id = held.set_id AND sets.withdrawn_at IS NULL AND sets.version_id = line.version_id
    WHERE items.reprocessing_limit IS NOT NULL AND held.found > 0
    ORDER BY sets.code, line.layer, line.row, line.slot`);
  const slotKey = (one: { set_id: string; line_id: string }) => `${one.set_id} ${one.line_id}`;
  const moves = groupBy(
    await db.read.all<{ set_id: string; line_id: string; at: string; pieces: number; act: string }>(sql`
      SELECT to_set_id AS set_id, to_line_id AS line_id, done_at AS at, quantity AS pieces, act, seq
      FROM piece_moves WHERE to_set_id IS NOT NULL AND item_id IN (SELECT id FROM items WHERE reprocessing_limit IS NOT NULL)
      UNION ALL SELECT from_set_id, from_line_id, done_at, -quantity, act, seq
      FROM piece_moves WHERE from_set_id IS NOT NULL AND item_id IN (SELECT id FROM items WHERE reprocessing_limit IS NOT NULL)
      ORDER BY seq`),
    slotKey,
  );
  const sterilised = groupBy(
    await db.read.all<{ set_id: string; at: string }>(sql`
      SELECT set_id, done_at AS at FROM turn_steps WHERE step = 'inSteriliser'
        AND set_id IN (SELECT value FROM json_each(${JSON.stringify([...new Set(slots.map(({ set_id }) => set_id))])}))`),
    ({ set_id }) => set_id,
  );
  const booked = groupBy(
    await db.read.all<{ set_id: string; reference: string }>(sql`
      SELECT promise.set_id, cases.reference FROM set_promises promise JOIN cases ON cases.id = promise.case_id
      WHERE cases.starts_at > ${now} AND cases.cancelled_at IS NULL ORDER BY cases.starts_at`),
    ({ set_id }) => set_id,
  );
  if (slots.length === 0) return [];
  const things = slots.map((slot) => {
    const { set_id, set_code, name, place, held, reprocessing_limit: limit } = slot;
    const { least, most } = slotAge(
      (moves.get(slotKey(slot)) ?? []).map(({ at, pieces, act }) => ({
        at,
        pieces,
        oldAlready: act === 'opening' || act === 'carried',
      })),
      held,
      (sterilised.get(set_id) ?? []).map(({ at }) => at),
    );
    return {
      thing: `${set_code} ${place} ${name}`.slice(0, 80),
      pieces: held,
      limitUses: null,
      limitCycles: limit,
      uses: null,
      // before the record began nobody counted: known only where even the turns on record reach the limit
      cycles: most !== null || least >= limit ? least : null,
      mostCycles: most !== null && most > least ? most : null,
      booked: [...new Set((booked.get(set_id) ?? []).map(({ reference }) => reference))].map((one) => ({
        case: one,
      })),
    };
  });
  const input = serviceLifeInput.parse({ things });
  const said = serviceLife(input);
  const lives = (said.outcome === 'answered' ? said.answer : said.known)?.things ?? [];
  return slots.flatMap((slot, at): SlotLife[] => {
    const [thing, life] = [input.things[at], lives[at]];
    return thing && life
      ? [
          {
            setId: slot.set_id,
            setCode: slot.set_code,
            itemId: slot.item_id,
            name: slot.name,
            pieces: slot.held,
            thing,
            life,
          },
        ]
      : [];
  });
}
