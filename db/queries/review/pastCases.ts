import { sql } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import type { FitEngine } from '@/lib/fit/engine';
import { type ItemId, itemId, type SetId, setId } from '@/lib/identity/ids';
import { needsOf } from '@/lib/kits/needs';
import { type Construct, construct as readConstruct } from '@/lib/plans/plan';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { type PastCase, servingItems } from '@/lib/review/pastCase';
import { mayRead, type Reading } from '../../reader';

/** First and last day, both in it. */
export interface Period {
  from: PlainDate;
  until: PlainDate;
}

/**
 * Cases that are over and that sets of a configuration were in: those they were issued to, taken for in an emergency, or that pieces of
 * theirs were used in. The oldest first.
 */
export async function loadPastCases(
  db: Reading,
  configurationId: string,
  { from, until }: Period,
  { catalogue, engine, now }: { catalogue: readonly Item[]; engine: FitEngine; now: string },
): Promise<PastCase[]> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const pairs = await read.all<{ case_id: string; set_id: string; reference: string; case_date: string }>(sql`
    WITH own AS (
      SELECT sets.id FROM sets JOIN configuration_versions version ON version.id = sets.version_id
      WHERE version.configuration_id = ${configurationId})
    SELECT there.case_id, there.set_id, cases.reference, cases.case_date FROM (
      SELECT case_id, set_id FROM case_picks WHERE set_id IN (SELECT id FROM own) AND issued_at IS NOT NULL
      UNION SELECT case_id, set_id FROM emergency_sets WHERE set_id IN (SELECT id FROM own) AND gone_at IS NOT NULL
      UNION SELECT case_id, from_set_id FROM piece_moves
        WHERE from_set_id IN (SELECT id FROM own) AND case_id IS NOT NULL) AS there
    JOIN cases ON cases.id = there.case_id
    WHERE cases.case_date BETWEEN ${from} AND ${until} AND cases.ends_at < ${now} AND cases.cancelled_at IS NULL
    ORDER BY cases.case_date, cases.starts_at, cases.id`);
  const ids = JSON.stringify([...new Set(pairs.map(({ case_id }) => case_id))]);
  const [moves, plans] = await Promise.all([
    read.all<{
      case_id: string;
      act: string;
      item_id: string;
      from_set_id: string | null;
      pieces: number;
    }>(sql`
      SELECT case_id, act, item_id, from_set_id, sum(quantity) AS pieces FROM piece_moves
      WHERE case_id IN (SELECT value FROM json_each(${ids})) AND act IN ('implanted', 'wasted', 'notFound', 'cameBack')
        AND seq NOT IN (SELECT move_seq FROM moves_taken_back)
      GROUP BY case_id, act, item_id, from_set_id`),
    read.all<{ case_id: string; body: string }>(sql`
      SELECT case_id, body FROM plans
      WHERE case_id IN (SELECT value FROM json_each(${ids})) AND status = 'confirmed'`),
  ]);
  const constructs = keptConstructs(catalogue, engine);
  const planOf = new Map(plans.map(({ case_id, body }) => [case_id, constructs(body)]));
  const cases = new Map<string, Gathered>();
  for (const { case_id, set_id, reference, case_date } of pairs) {
    const known = cases.get(case_id);
    if (known) known.setIds.push(setId.parse(set_id));
    else
      cases.set(case_id, {
        caseId: case_id,
        reference,
        on: plainDate.parse(case_date),
        setIds: [setId.parse(set_id)],
        used: null,
        fromPacks: new Map(),
        usedSets: new Set(),
        construct: planOf.get(case_id)?.construct ?? null,
        couldServe: planOf.get(case_id)?.couldServe ?? null,
      });
  }
  for (const move of moves) {
    const known = cases.get(move.case_id);
    if (!known) continue;
    known.used ??= new Map();
    if (move.act !== 'implanted' && move.act !== 'wasted') continue;
    const from = move.from_set_id === null ? null : setId.parse(move.from_set_id);
    // another configuration’s set in the same case is not asked of this one
    if (from !== null && !known.setIds.includes(from)) continue;
    const item = itemId.parse(move.item_id);
    add(known.used, item, move.pieces);
    if (from === null) add(known.fromPacks, item, move.pieces);
    else known.usedSets.add(from);
  }
  return [...cases.values()];
}

interface Gathered extends PastCase {
  setIds: SetId[];
  used: Map<ItemId, number> | null;
  fromPacks: Map<ItemId, number>;
  usedSets: Set<SetId>;
}

const add = (to: Map<ItemId, number>, item: ItemId, pieces: number) =>
  to.set(item, (to.get(item) ?? 0) + pieces);

/** Plans repeat over the years: each text is read, and what could serve it worked out, once. */
function keptConstructs(catalogue: readonly Item[], engine: FitEngine) {
  const kept = new Map<string, { construct: Construct; couldServe: ReadonlySet<ItemId> }>();
  return (body: string) => {
    const known = kept.get(body);
    if (known) return known;
    const construct = readConstruct.parse(JSON.parse(body));
    const found = { construct, couldServe: servingItems(needsOf(construct, catalogue, engine)) };
    kept.set(body, found);
    return found;
  };
}
