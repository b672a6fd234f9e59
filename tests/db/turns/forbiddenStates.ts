import { sql } from 'drizzle-orm';
import type { Database } from '@/db/client';

/**
 * States that no sequence of acts may reach, each as a query for what is in it. *Common practice, no source*, but for
 * those that only say that the record agrees with itself.
 */
const FORBIDDEN: Record<string, string> = {
  'sterile without a sterile pack of an accepted load': `
    SELECT sets.id AS id FROM sets WHERE step = 'inSterileStore' AND NOT EXISTS (
      SELECT 1 FROM packs JOIN loads ON loads.id = packs.load_id
      WHERE packs.id = sets.pack_id AND packs.set_id = sets.id AND packs.state = 'sterile' AND loads.state = 'accepted')`,
  'a closed step without the pack it needs': `
    SELECT sets.id AS id FROM sets LEFT JOIN packs ON packs.id = sets.pack_id AND packs.set_id = sets.id
    WHERE (step = 'packed' AND coalesce(packs.state, '') NOT IN ('closed', 'inLoad'))
       OR (step = 'inSteriliser' AND coalesce(packs.state, '') <> 'inLoad')
       OR (step = 'awaitingAcceptance' AND coalesce(packs.state, '') <> 'awaitingAcceptance')`,
  'open, and yet in a pack': `
    SELECT sets.id AS id FROM sets WHERE step IN ('comingBack', 'washing', 'onBench', 'shortAwaitingDecision') AND (pack_id IS NOT NULL
      OR EXISTS (SELECT 1 FROM packs WHERE set_id = sets.id AND state NOT IN ('opened', 'undone')))`,
  'a use-by without a pack': `
    SELECT id FROM sets WHERE step IN ('comingBack', 'washing', 'onBench', 'shortAwaitingDecision') AND use_by IS NOT NULL`,
  'in a pack that is over, or another set’s': `
    SELECT sets.id AS id FROM sets JOIN packs ON packs.id = sets.pack_id
    WHERE packs.set_id IS NOT sets.id OR packs.state IN ('opened', 'undone')`,
  'two packs of one set at once': `
    SELECT set_id AS id FROM packs WHERE kind = 'set' AND state NOT IN ('opened', 'undone') GROUP BY set_id HAVING count(*) > 1`,
  'held without a reason, or with none of the vocabulary': `
    SELECT id FROM sets WHERE step = 'held' AND coalesce(held_because, '') NOT IN ('dirtyAfterWash', 'wrapWetTornOrUnsealed',
      'indicatorOrCycleFailed', 'loadUnknown', 'recall', 'wrongLabel', 'disputedCount', 'loanWithoutDeclaration', 'mustHaveDamaged')`,
  'not held, and yet with a reason or a step it was held from': `
    SELECT id FROM sets WHERE step <> 'held' AND (held_because IS NOT NULL OR held_from IS NOT NULL)`,
  'held, and nobody knows from where': `SELECT id FROM sets WHERE step = 'held' AND held_from IS NULL`,
  'a step that is not the last one on record': `
    SELECT sets.id AS id FROM sets WHERE step IS NOT (SELECT turn_steps.step FROM turn_steps WHERE set_id = sets.id ORDER BY seq DESC LIMIT 1)`,
  'a step since another moment than on record': `
    SELECT sets.id AS id FROM sets WHERE step <> 'held' AND step_since IS NOT
      (SELECT done_at FROM turn_steps WHERE set_id = sets.id ORDER BY seq DESC LIMIT 1)`,
  'a step that does not follow the one before it': `
    SELECT one.seq AS id FROM turn_steps one JOIN turn_steps before ON before.seq =
      (SELECT max(seq) FROM turn_steps WHERE set_id = one.set_id AND seq < one.seq)
    WHERE one.from_step IS NOT before.step`,
  'a step the table of steps does not allow': `
    SELECT seq AS id FROM turn_steps WHERE from_step IS NOT NULL AND NOT (from_step = 'held' AND step = 'held')
      AND NOT EXISTS (SELECT 1 FROM legal_steps WHERE legal_steps.from_step = turn_steps.from_step AND to_step = step)`,
  'done after it was entered, or before the step before it': `
    SELECT one.seq AS id FROM turn_steps one LEFT JOIN turn_steps before ON before.seq =
      (SELECT max(seq) FROM turn_steps WHERE set_id = one.set_id AND seq < one.seq)
    WHERE one.done_at > one.entered_at OR one.done_at < before.done_at`,
  'in a turn that is not its last': `
    SELECT sets.id AS id FROM sets WHERE turn_id IS NOT
      (SELECT turns.id FROM turns WHERE turns.set_id = sets.id ORDER BY number DESC LIMIT 1)`,
  'turns that are not numbered one by one': `
    SELECT set_id AS id FROM turns GROUP BY set_id HAVING count(*) <> max(number) OR min(number) <> 1`,
  'sent short to a case it was not sent short for': `
    SELECT sets.id AS id FROM sets JOIN packs ON packs.id = sets.pack_id
    WHERE step = 'inTheatre' AND for_case_id IS NOT NULL AND for_case_id IS NOT case_id`,
  'closed below the minimum of a must-have that no decision names': `
    SELECT sets.id AS id FROM sets JOIN packs ON packs.id = sets.pack_id
      JOIN set_contents AS held ON held.set_id = sets.id
      JOIN configuration_lines AS line ON line.id = held.line_id AND line.version_id = sets.version_id
      LEFT JOIN short_decisions AS decision ON decision.id = packs.decision_id AND decision.turn_id = sets.turn_id
    WHERE line.must_have_class <= 2 AND held.found < line.minimum
      AND NOT EXISTS (SELECT 1 FROM json_each(coalesce(decision.lines, '[]'))
        WHERE json_each.value ->> 'lineId' = line.id AND json_each.value ->> 'belowMinimum' >= line.minimum - held.found)`,
  'past use-by in theatre on the day of its case': `
    SELECT sets.id AS id FROM sets JOIN packs ON packs.id = sets.pack_id JOIN cases ON cases.id = sets.case_id
    WHERE step = 'inTheatre' AND packs.use_by < cases.case_date
      AND coalesce((SELECT value ->> 'policy' FROM settings WHERE key = 'sterility'), 'useBy') = 'useBy'`,
  'a step taken while out of service': `
    SELECT seq AS id FROM turn_steps JOIN sets ON sets.id = turn_steps.set_id WHERE entered_at > withdrawn_at AND turn_steps.step <> 'held'`,
  'an accepted load that nobody decided': `SELECT id FROM loads WHERE state = 'accepted' AND decided_by IS NULL`,
  'a lifted hold that nobody proved they lifted': `
    SELECT seq AS id FROM ledger WHERE action = 'lift-hold' AND detail ->> '$.attested.meaning' IS NOT 'iLiftThisHold'`,
};

const ALL = sql.raw(
  Object.entries(FORBIDDEN)
    .map(
      ([name, query]) =>
        `SELECT '${name}' AS state, group_concat(id) AS ids FROM (SELECT * FROM (${query}) LIMIT 3) HAVING count(*) > 0`,
    )
    .join(' UNION ALL '),
);

/** The forbidden states that the database is in: none, whatever was done. */
export async function forbiddenStatesOf(db: Pick<Database, 'read'>): Promise<string[]> {
  const rows = db.read.all(ALL) as { state: string; ids: string }[];
  return rows.map(({ state, ids }) => `${state}: ${ids}`);
}
