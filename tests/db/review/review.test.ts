import { eq, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { type Database, type Queries, readAs } from '@/db/client';
import { appendLedger, findLedgerBreak } from '@/db/ledger';
import { proposeVersion } from '@/db/operations/configurations/propose-version';
import { discardConfigurationDraft } from '@/db/operations/discard-configuration-draft';
import { findConfiguration } from '@/db/queries/configurations';
import { keptCaseCosts, loadCaseCosts } from '@/db/queries/costs/caseCosts';
import { loadNotFound, loadRepairs, loadShelfWaste } from '@/db/queries/loss/goneMissing';
import { loadServiceLives } from '@/db/queries/loss/serviceLives';
import { loadShelfLosses } from '@/db/queries/loss/shelfLosses';
import { listPeople, type Person } from '@/db/queries/people';
import { reviewConfiguration } from '@/db/queries/review/configurationReview';
import { THE_PROGRAM } from '@/db/reader';
import { ledger } from '@/db/schema';
import { upperBound } from '@/lib/calculations/setReview/bound';
import { configurationId, type NewId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import type { LedgerAct } from '@/lib/wording/ledger-acts';
import { historyDatabase } from '../../setup/database';

const now = '2026-01-14T08:00:00.000Z';
const today = plainDate.parse('2026-01-14');
const PERIOD = { from: plainDate.parse('2024-01-01'), until: today };
const DRT = configurationId.parse('configuration_drt');
let db: Database;
let lead: Person;
let technician: Person;
let made = 0;
const newId: NewId = (kind) => {
  made += 1;
  return `${kind}_review-${made}`;
};

beforeEach(async () => {
  db = await historyDatabase();
  const people = await listPeople(db);
  const of = (role: Person['role']) => people.find((one) => one.role === role);
  const [one, other] = [of('decontaminationLead'), of('technician')];
  if (!one || !other) throw new Error('the demo has both');
  [lead, technician] = [one, other];
});

const reading = () => ({ read: db.read, reader: THE_PROGRAM }) as const;
async function reviewed(id: string = DRT) {
  const found = await reviewConfiguration(reading(), id, PERIOD, now);
  if (!found) throw new Error('it is in force');
  return found;
}
const one = async <T>(query: ReturnType<typeof sql>): Promise<T> => {
  const [row] = await db.read.all<T>(query);
  if (row === undefined) throw new Error('the query has a row');
  return row;
};

describe('the review of a configuration over the demo’s two years', () => {
  it('counts the same cases and pieces as the journal itself, line by line', async () => {
    const { cases, lines } = await reviewed();
    // issued to it, or pieces of its slots used in it; told again in another way than the query under test tells it
    const ownSets = sql`SELECT sets.id FROM sets JOIN configuration_versions version ON version.id = sets.version_id
      WHERE version.configuration_id = ${DRT}`;
    const ownCases = sql`SELECT cases.id FROM cases WHERE cases.ends_at < ${now} AND (
      EXISTS (SELECT 1 FROM case_picks pick WHERE pick.case_id = cases.id AND pick.issued_at IS NOT NULL AND pick.set_id IN (${ownSets}))
      OR EXISTS (SELECT 1 FROM piece_moves move WHERE move.case_id = cases.id AND move.from_set_id IN (${ownSets})))`;
    const { count } = await one<{ count: number }>(sql`SELECT count(*) AS count FROM (${ownCases})`);
    expect(cases.length).toBe(count);
    expect(count).toBeGreaterThan(100);
    const recorded = lines.filter(({ evidence }) => evidence === 'recorded');
    for (const itemId of new Set(recorded.map(({ line }) => line.itemId))) {
      const { pieces } = await one<{ pieces: number | null }>(sql`
        SELECT sum(move.quantity) AS pieces FROM piece_moves move
        WHERE move.item_id = ${itemId} AND move.act IN ('implanted', 'wasted') AND move.case_id IN (${ownCases})
          AND (move.from_set_id IS NULL OR move.from_set_id IN (${ownSets}))`);
      const counted = recorded
        .filter(({ line }) => line.itemId === itemId)
        .flatMap(({ usedIn }) => usedIn ?? [])
        .reduce((sum, { pieces: some, cases: in_ }) => sum + some * in_, 0);
      expect(counted, itemId).toBe(pieces ?? 0);
    }
  });

  it('bounds every recorded line exactly, protects back-ups, and takes what nobody records for unknown', async () => {
    const { lines } = await reviewed();
    for (const { line, review, evidence, cases, usedIn } of lines) {
      if (evidence === 'none') {
        expect(review).toBeNull();
        continue;
      }
      const uses = (usedIn ?? []).reduce((sum, some) => sum + some.cases, 0);
      expect(review).toMatchObject({ uses, upperBound: upperBound(uses, cases, 0.95) });
      expect(review?.verdict === 'protected').toBe(line.mustHaveClass === 3);
    }
    expect(lines.some(({ evidence }) => evidence === 'none')).toBe(true);
  });

  it('looks only at cases that are over, and at those of the time asked for', async () => {
    const all = (await reviewed()).cases;
    const from = plainDate.parse('2025-07-01');
    const later = await reviewConfiguration(reading(), DRT, { from, until: today }, now);
    expect(later?.cases.map(({ caseId }) => caseId)).toEqual(
      all.filter(({ on }) => on >= from).map(({ caseId }) => caseId),
    );
    expect(all.every(({ on }) => on <= today)).toBe(true);
    expect(await reviewConfiguration(reading(), 'configuration_none', PERIOD, now)).toBeNull();
  });
});

describe('proposing a version from a review', () => {
  const propose = (
    entry: Record<string, unknown>,
    more: Partial<Parameters<typeof proposeVersion>[0]> = {},
  ) => proposeVersion({ db, now, newId, person: lead, configurationId: DRT, entry, ...more });
  const because = 'never used over two years';

  it('becomes a draft with what was proposed, and nothing else differs', async () => {
    const before = await reviewed();
    const gone = before.lines.find(
      ({ line, review }) => line.mustHaveClass !== 3 && review?.uses === 0,
    )?.line;
    const fewer = before.lines.find(
      ({ line }) =>
        line.mustHaveClass !== 3 && line.expected - 1 >= Math.max(1, line.minimum) && line !== gone,
    )?.line;
    if (!gone || !fewer) throw new Error('the demo has both');
    const answer = await propose({
      versionId: before.inForce.id,
      because,
      lines: [
        { lineId: gone.id, expected: 0 },
        { lineId: fewer.id, expected: fewer.expected - 1 },
      ],
    });
    expect(answer).toMatchObject({ ok: true, value: { version: before.inForce.version + 1 } });
    const { inForce, draft, configuration, short } = await reviewed();
    expect(inForce).toEqual(before.inForce);
    const [head] = configuration.versions;
    expect(head).toMatchObject({
      note: because,
      draftedBy: { id: lead.id },
      approvedBy: null,
      inForceFrom: null,
    });
    const held = (lines: typeof inForce.lines) =>
      lines.map(({ id: _id, ...line }) => JSON.stringify(line)).sort();
    expect(held(draft?.lines ?? [])).toEqual(
      held(
        inForce.lines.flatMap((line) =>
          line.id === gone.id ? [] : [line.id === fewer.id ? { ...line, expected: line.expected - 1 } : line],
        ),
      ),
    );
    expect(draft?.promises).toEqual(inForce.promises);
    // what it would newly have lacked is only ever of what was taken out
    for (const { ranOut } of short.draft?.new ?? [])
      for (const { itemId } of ranOut) expect([gone.itemId, fewer.itemId]).toContain(itemId);
    const entry = (await db.read.select().from(ledger).where(eq(ledger.action, 'propose-version'))).at(-1);
    expect(entry).toMatchObject({
      personId: lead.id,
      detail: {
        because,
        changes: expect.arrayContaining([{ itemId: gone.itemId, from: gone.expected, to: 0 }]),
      },
    });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('taking out a line that cases used says in how many it would have run short', async () => {
    const before = await reviewed();
    const used = before.lines
      .filter(
        ({ line, review, evidence }) =>
          evidence === 'recorded' && line.mustHaveClass !== 3 && (review?.uses ?? 0) > 5,
      )
      .find(({ line }) => before.lines.filter(({ line: same }) => same.itemId === line.itemId).length === 1);
    if (!used) throw new Error('the demo has such a line');
    await propose({ versionId: before.inForce.id, because, lines: [{ lineId: used.line.id, expected: 0 }] });
    const { short } = await reviewed();
    const ranOut = (short.draft?.new ?? []).filter((some) =>
      some.ranOut.some(({ itemId }) => itemId === used.line.itemId),
    );
    // cases that had run out of it already are not new
    expect(ranOut.length).toBe(used.review?.uses);
  });

  it('leaves back-ups alone, keeps minima and names every fault at once', async () => {
    const { inForce } = await reviewed();
    const backUp = inForce.lines.find(({ mustHaveClass }) => mustHaveClass === 3);
    const must = inForce.lines.find(({ mustHaveClass, minimum }) => mustHaveClass !== 3 && minimum > 1);
    if (!backUp || !must) throw new Error('the demo has both');
    const answer = await propose({
      versionId: inForce.id,
      because,
      lines: [
        { lineId: backUp.id, expected: 0 },
        { lineId: must.id, expected: 1 },
        { lineId: must.id, expected: 2 },
        { lineId: 'line_none', expected: 1 },
      ],
    });
    expect(answer.ok ? [] : answer.refusal.problems.map(({ code }) => code)).toEqual([
      'back-up',
      'below-minimum',
      'duplicate',
      'unknown-line',
    ]);
    const same = await propose({
      versionId: inForce.id,
      because,
      lines: [{ lineId: must.id, expected: must.expected }],
    });
    expect(same).toMatchObject({ ok: false, refusal: { problems: [{ code: 'nothing-changed' }] } });
    const silent = await propose({ versionId: inForce.id, because: ' ', lines: [] });
    expect(silent.ok ? 0 : silent.refusal.problems.length).toBe(2);
    expect((await findConfiguration(reading(), DRT))?.versions[0]?.content.status).not.toBe('draft');
  });

  it('is refused to who may not, over an open draft, and on a version no longer in force', async () => {
    const { inForce } = await reviewed();
    const line = inForce.lines.find(({ mustHaveClass }) => mustHaveClass !== 3);
    if (!line) throw new Error('the demo has one');
    const entry = {
      versionId: inForce.id,
      because,
      lines: [{ lineId: line.id, expected: line.expected + 1 }],
    };
    expect(await propose(entry, { person: technician })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    expect(await propose({ ...entry, versionId: 'version_other' })).toMatchObject({
      refusal: { because: 'conflict' },
    });
    const made_ = await propose(entry);
    expect(made_.ok).toBe(true);
    expect(await propose(entry)).toMatchObject({ refusal: { because: 'frozen' } });
    if (!made_.ok) return;
    await discardConfigurationDraft({
      db,
      now,
      person: lead,
      versionId: made_.value.versionId,
      baseRevision: 1,
    });
    expect((await propose(entry)).ok).toBe(true);
  });
});

describe('costs and losses over the demo’s two years', () => {
  it('every penny of the journal’s cases is in one case, and no case is counted twice', async () => {
    const { cases, notRecorded } = await loadCaseCosts(reading(), PERIOD, now);
    expect(new Set(cases.map(({ caseId }) => caseId)).size).toBe(cases.length);
    for (const act of ['implanted', 'wasted'] as const) {
      const { pence } = await one<{ pence: number }>(sql`
        SELECT sum(move.quantity * move.unit_pence) AS pence FROM piece_moves move JOIN cases ON cases.id = move.case_id
        WHERE move.act = ${act} AND cases.ends_at < ${now} AND cases.cancelled_at IS NULL`);
      expect(cases.reduce((sum, { cost }) => sum + cost[act].pence, 0)).toBe(pence);
    }
    const { over } = await one<{ over: number }>(sql`
      SELECT count(*) AS over FROM cases WHERE ends_at < ${now} AND cancelled_at IS NULL AND case_date >= ${PERIOD.from}`);
    expect(cases.length + notRecorded).toBe(over);
    // the hospital has stated its rates, so that only loans are of unknown cost
    for (const { whole, cost } of cases) expect(whole).toBe(cost.loans.unknown === 0);
  });

  it('a wasted piece without a price leaves its case at least what is known', async () => {
    const [before] = (await loadCaseCosts(reading(), PERIOD, now)).cases;
    if (!before) throw new Error('there are cases');
    await db.tx(async (write) => {
      write.run(sql`
        INSERT INTO piece_moves (act, item_id, quantity, owner, case_id, reason, unit_pence, done_on, done_at, entered_at)
        SELECT 'wasted', item_id, 1, 'ours', case_id, 'own words', NULL, done_on, done_at, entered_at
        FROM piece_moves WHERE case_id = ${before.caseId} AND act = 'implanted' LIMIT 1`);
    });
    const after = (await loadCaseCosts(reading(), PERIOD, now)).cases.find(
      ({ caseId }) => caseId === before.caseId,
    );
    expect(after).toMatchObject({
      whole: false,
      cost: { totalPence: before.cost.totalPence, wasted: { unknown: 1 }, wasteShare: null },
    });
  });

  it('the report stays while acts move nothing of a case, and is another after one that may have', async () => {
    const entered = (action: LedgerAct, write: Queries) =>
      appendLedger(write, {
        ...{ personId: technician.id, action, subjectKind: 'case', subjectId: 'case_x', detail: {} },
        ...{ doneAt: now, enteredAt: now },
      });
    const first = await keptCaseCosts(reading(), PERIOD, now);
    expect(first).toEqual(await loadCaseCosts(reading(), PERIOD, now));
    await db.tx((write) => entered('record-scan', write));
    expect(await keptCaseCosts(reading(), PERIOD, now)).toBe(first);
    const of = first.cases[0]?.caseId;
    await db.tx(async (write) => {
      write.run(sql`
        INSERT INTO piece_moves (act, item_id, quantity, owner, case_id, reason, unit_pence, done_on, done_at, entered_at)
        SELECT 'wasted', item_id, 1, 'ours', case_id, 'own words', 250, done_on, done_at, entered_at
        FROM piece_moves WHERE case_id = ${of} AND act = 'implanted' LIMIT 1`);
      await entered('record-use', write);
    });
    const after = await keptCaseCosts(reading(), PERIOD, now);
    expect(after).toEqual(await loadCaseCosts(reading(), PERIOD, now));
    expect(after.cases).not.toEqual(first.cases);
  });

  it('pieces not found, put aside and thrown away are those of the journal', async () => {
    const sum = (rows: readonly { pieces: number }[]) => rows.reduce((all, { pieces }) => all + pieces, 0);
    const of = async (where: ReturnType<typeof sql>) =>
      (
        await one<{ pieces: number | null }>(
          sql`SELECT sum(quantity) AS pieces FROM piece_moves WHERE ${where}`,
        )
      ).pieces ?? 0;
    expect(sum(await loadNotFound(reading(), PERIOD))).toBe(await of(sql`act = 'notFound'`));
    expect(sum(await loadShelfWaste(reading(), PERIOD))).toBe(
      await of(sql`act = 'wasted' AND case_id IS NULL`),
    );
    const repairs = await loadRepairs(reading(), PERIOD);
    expect(repairs.reduce((all, { putAside }) => all + putAside, 0)).toBe(await of(sql`act = 'setAside'`));
    expect(repairs.length).toBeGreaterThan(0);
  });

  it('every unit of ours with a use-by is on one line of what may be lost', async () => {
    const losses = await loadShelfLosses(reading(), today, 12);
    const { units } = await one<{ units: number }>(sql`
      SELECT sum(quantity) AS units FROM stock
      WHERE use_by IS NOT NULL AND owner = 'ours' AND form <> 'unsterile'`);
    const lots = losses.flatMap(({ loss }) => loss.lots);
    expect(lots.reduce((sum, lot) => sum + lot.units, 0)).toBe(units);
    for (const { input } of losses) expect(input.perMonth).not.toBeNull();
  });

  it('every slot with a stated limit is told, and none of unknown age is said to be within it', async () => {
    const lives = await loadServiceLives(reading(), now);
    expect(lives.length).toBeGreaterThan(10);
    for (const { thing, life } of lives) {
      if (thing.cycles === null) expect(life.state).toBe('notEstablished');
      if (life.state === 'replaceNow') expect(thing.cycles).toBeGreaterThanOrEqual(thing.limitCycles ?? 0);
    }
  });

  it('of a set that somebody counts blind they are told no slot, and others are', async () => {
    const lives = await loadServiceLives(reading(), now);
    const setId = lives[0]?.setId;
    await db.tx(async (write) => {
      write.run(sql`INSERT INTO bench_counts (id, set_id, turn_id, version_id, purpose, person_id, base_revision, began_at)
        SELECT 'count_blindlives', one.id, (SELECT id FROM turns WHERE set_id = one.id ORDER BY number DESC LIMIT 1),
          one.version_id, 'check', ${technician.id}, one.revision, ${now} FROM sets one WHERE one.id = ${setId}`);
    });
    const others = lives.filter((one) => one.setId !== setId);
    expect(others.length).toBeGreaterThan(0);
    expect(others.length).toBeLessThan(lives.length);
    expect(await loadServiceLives(readAs(db, technician), now)).toEqual(others);
    expect(await loadServiceLives(readAs(db, lead), now)).toEqual(lives);
  });
});
