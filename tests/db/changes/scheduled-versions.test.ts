import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { beginConfigurationDraft } from '@/db/operations/begin-configuration-draft';
import { settleConfigurations } from '@/db/operations/configurations/settle-due';
import { takeApprovalBack } from '@/db/operations/configurations/take-approval-back';
import { discardConfigurationDraft } from '@/db/operations/discard-configuration-draft';
import { putConfigurationInForce } from '@/db/operations/put-configuration-in-force';
import { saveConfigurationDraft } from '@/db/operations/save-configuration-draft';
import { findConfiguration, listConfigurations } from '@/db/queries/configurations';
import { keptVersions } from '@/db/queries/keptVersions';
import { listPeople } from '@/db/queries/people';
import { configurationLines, configurationVersions, ledger } from '@/db/schema';
import type { NewId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { entryOf, textOf } from '@/lib/sets/versionDraft';
import { statusesOn } from '@/lib/sets/versionStatus';
import { seenAndProven } from '../../fixtures/approval';
import { demoDatabase } from '../../setup/database';

const now = '2026-01-14T08:00:00.000Z';
const today = plainDate.parse('2026-01-14');
/** Later than any day on which this test can run: what the database's own clock says of it never changes. */
const farOff = plainDate.parse('2999-01-01');
let ids = 0;
const newId: NewId = (prefix) => `${prefix}_scheduled-${++ids}`;

async function draftBegun() {
  const db = await demoDatabase();
  const [lead, other] = (await listPeople(db)).filter(({ role }) => role === 'decontaminationLead');
  const row = (await listConfigurations(db)).find(
    ({ inForce, draft, sets }) => inForce && !draft && sets > 0,
  );
  if (!lead || !other || !row) throw new Error('the demo has two leads and a configuration with sets');
  await beginConfigurationDraft({ db, now, newId, person: lead, configurationId: row.id });
  const draft = await versionOf(db, row.id, 'draft');
  return { db, lead, other, id: row.id, draft, versionId: draft.content.id };
}

async function versionOf(db: Database, id: string, status: string) {
  const found = (await findConfiguration(db, id))?.versions.find(({ content }) => content.status === status);
  if (!found) throw new Error(`no version is ${status}`);
  return found;
}

async function approved() {
  const all = await draftBegun();
  const { db, other, draft, versionId } = all;
  const subject = { kind: 'configuration-version', id: versionId, change: 'putInForce' } as const;
  const agreed = await seenAndProven(db, other, subject, { now, today, newId });
  const asked = { db, now, today, person: other, versionId, baseRevision: draft.revision };
  const outcome = await putConfigurationInForce({ ...asked, from: farOff, ...agreed });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  return { ...all, revision: draft.revision + 1 };
}

describe('a version approved for a day to come', () => {
  it('waits: the one in force stays, no other draft can be begun, and nothing of it can be changed', async () => {
    const { db, id, lead, draft, versionId, revision } = await approved();
    const before = await versionOf(db, id, 'inForce');
    expect(before.content.version).toBe(draft.content.version - 1);
    expect((await versionOf(db, id, 'approved')).inForceFrom).toBe(farOff);
    expect([...(await keptVersions(db)).keys()]).not.toContain(versionId);
    const row = (await listConfigurations(db)).find((one) => one.id === id);
    expect(row).toMatchObject({ draft: null, approved: { version: draft.content.version, from: farOff } });

    const entry = entryOf(textOf(draft.content, 'Another note.'));
    const mine = { db, now, person: lead, versionId, baseRevision: revision };
    expect(await saveConfigurationDraft({ ...mine, entry })).toMatchObject({
      refusal: { because: 'frozen' },
    });
    expect(await discardConfigurationDraft(mine)).toMatchObject({ refusal: { because: 'frozen' } });
    expect(
      await beginConfigurationDraft({ db, now, newId, person: lead, configurationId: id }),
    ).toMatchObject({ refusal: { because: 'frozen' } });
  });

  it('is frozen by the database too: its content, its lines, and its being there', async () => {
    const { db, versionId } = await approved();
    const write = (work: Parameters<Database['tx']>[0]) => expect(db.tx(work)).rejects.toThrow();
    await write((tx) =>
      tx.update(configurationVersions).set({ note: 'x' }).where(eq(configurationVersions.id, versionId)),
    );
    await write((tx) =>
      tx.update(configurationLines).set({ expected: 9 }).where(eq(configurationLines.versionId, versionId)),
    );
    await write((tx) => tx.delete(configurationLines).where(eq(configurationLines.versionId, versionId)));
    await write((tx) => tx.delete(configurationVersions).where(eq(configurationVersions.id, versionId)));
  });

  it('is in force on its day for every reader, before anybody has written that down', async () => {
    const { db, id, versionId } = await approved();
    const rows = await db.read
      .select()
      .from(configurationVersions)
      .where(eq(configurationVersions.configurationId, id));
    const on = (day: string) => {
      const statuses = statusesOn(rows, plainDate.parse(day));
      return rows.map((row) => [row.version, statuses.get(row.id)]).sort();
    };
    const newest = rows.find((row) => row.id === versionId)?.version;
    expect(on('2998-12-31')).toContainEqual([newest, 'approved']);
    expect(on('2998-12-31').filter(([, status]) => status === 'inForce')).toHaveLength(1);
    expect(on('2999-01-01').filter(([, status]) => status === 'inForce')).toEqual([[newest, 'inForce']]);
    // by the database's own clock: its day moved into the past, past the program
    await db.tx((write) =>
      write
        .update(configurationVersions)
        .set({ inForceFrom: '2026-01-15' })
        .where(eq(configurationVersions.id, versionId)),
    );
    expect((await versionOf(db, id, 'inForce')).content.version).toBe(newest);
    expect((await keptVersions(db)).get(versionId)?.status).toBe('inForce');
    const row = (await listConfigurations(db)).find((one) => one.id === id);
    expect(row?.inForce?.version).toBe(newest);
  });

  it('is settled by the next write or start, once, and the ledger says so', async () => {
    const { db, id, versionId, lead, other } = await approved();
    const early = '2998-12-31T12:00:00.000Z';
    const late = '2999-01-01T12:00:00.000Z';
    expect(await settleConfigurations({ db, now: early })).toBe(0);
    expect(await settleConfigurations({ db, now: late })).toBe(1);
    expect(await settleConfigurations({ db, now: late })).toBe(0);
    const statuses = await db.read
      .select({ id: configurationVersions.id, status: configurationVersions.status })
      .from(configurationVersions)
      .where(eq(configurationVersions.configurationId, id));
    expect(statuses.filter(({ status }) => status === 'inForce')).toEqual([
      { id: versionId, status: 'inForce' },
    ]);
    const entries = await db.read.select().from(ledger).where(eq(ledger.subjectId, id));
    expect(entries.map(({ action }) => action).slice(-2)).toEqual([
      'approve-configuration',
      'configuration-comes-into-force',
    ]);
    expect(entries.at(-1)?.detail).toMatchObject({ from: farOff, approvedBy: other.id });
    expect(await findLedgerBreak(db.read)).toBeNull();
    const next = await beginConfigurationDraft({ db, now: late, newId, person: lead, configurationId: id });
    expect(next.ok).toBe(true);
  });

  it('is a draft again once its approval is taken back', async () => {
    const { db, id, other, versionId, revision } = await approved();
    const back = await takeApprovalBack({ db, now, person: other, versionId, baseRevision: revision });
    expect(back).toMatchObject({ ok: true });
    const draft = await versionOf(db, id, 'draft');
    expect(draft).toMatchObject({ approvedBy: null, inForceFrom: null, approvedAt: null });
    const again = await takeApprovalBack({ db, now, person: other, versionId, baseRevision: revision + 1 });
    expect(again).toMatchObject({ refusal: { because: 'frozen' } });
  });
});

describe('an approval of a version', () => {
  it('rests on the approver’s own trial and proof, and on a day not gone by', async () => {
    const { db, lead, other, draft, versionId } = await draftBegun();
    const subject = { kind: 'configuration-version', id: versionId, change: 'putInForce' } as const;
    const mine = await seenAndProven(db, other, subject, { now, today, newId });
    const theirs = await seenAndProven(db, lead, subject, { now, today, newId });
    const asked = {
      db,
      now,
      today,
      person: other,
      versionId,
      baseRevision: draft.revision,
      from: today,
      ...mine,
    };
    expect(await putConfigurationInForce({ ...asked, trialId: theirs.trialId })).toMatchObject({
      refusal: { because: 'invalid', problems: [{ code: 'not-tried' }] },
    });
    expect(await putConfigurationInForce({ ...asked, attestation: theirs.attestation })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    const yesterday = plainDate.parse('2026-01-13');
    expect(await putConfigurationInForce({ ...asked, from: yesterday })).toMatchObject({
      refusal: { problems: [{ path: ['from'], code: 'in-the-past' }] },
    });
    expect(await putConfigurationInForce(asked)).toMatchObject({ ok: true });
    const [entry] = (await db.read.select().from(ledger)).slice(-1);
    expect(entry?.detail).toMatchObject({ attested: { meaning: 'iApprove' }, trial: { id: mine.trialId } });
  });
});
