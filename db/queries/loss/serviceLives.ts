import { sql } from 'drizzle-orm';
import type { z } from 'zod';
import type { LifeThing, ThingLife } from '@/lib/calculations/serviceLife/schema';
import { serviceLifeInput } from '@/lib/calculations/serviceLife/schema';
import { serviceLife } from '@/lib/calculations/serviceLife/serviceLife';
import { groupBy } from '@/lib/lists/groupBy';
import { slotAge } from '@/lib/loss/slotAge';
import type { Queries } from '../../client';
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
  const since = sterilisedSince(db.read);
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
      (at) => since(set_id, at),
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
  const [inputs, lives] = livesOf(things);
  return slots.flatMap((slot, at): SlotLife[] => {
    const [thing, life] = [inputs[at], lives[at]];
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

/** How often a set went through the steriliser since an instant, or ever: counted in the index alone. */
function sterilisedSince(read: Queries): (setId: string, at: string | null) => number {
  const ever = new Map(
    read
      .all<{ set_id: string; times: number }>(
        sql`SELECT set_id, count(*) AS times FROM turn_steps INDEXED BY turn_steps_sterilised
          WHERE step = 'inSteriliser' GROUP BY set_id`,
      )
      .map(({ set_id, times }) => [set_id, times]),
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
