import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { addConfiguration } from '@/db/operations/add-configuration';
import { beginConfigurationDraft } from '@/db/operations/begin-configuration-draft';
import { discardConfigurationDraft } from '@/db/operations/discard-configuration-draft';
import { putConfigurationInForce } from '@/db/operations/put-configuration-in-force';
import { saveConfigurationDraft } from '@/db/operations/save-configuration-draft';
import { findConfiguration, listConfigurations } from '@/db/queries/configurations';
import { listPeople } from '@/db/queries/people';
import { configurationLines, ledger } from '@/db/schema';
import type { NewId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { compareVersions } from '@/lib/sets/compareVersions';
import { entryOf, textOf } from '@/lib/sets/versionDraft';
import { seenAndProven } from '../../fixtures/approval';
import { demoDatabase } from '../../setup/database';

const now = '2026-01-14T08:00:00.000Z';
const today = plainDate.parse('2026-01-14');
let ids = 0;
const newId: NewId = (prefix) => {
  ids += 1;
  return `${prefix}_test-${ids}`;
};

async function hospital() {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const [lead, other] = people.filter(({ role }) => role === 'decontaminationLead');
  const technician = people.find(({ role }) => role === 'technician');
  const row = (await listConfigurations(db)).find(({ inForce, draft }) => inForce && !draft);
  if (!lead || !other || !technician || !row)
    throw new Error('the demo has two leads and a configuration in force');
  return { db, lead, other, technician, id: row.id };
}

async function draftOf(db: Database, id: string) {
  const draft = (await findConfiguration(db, id))?.versions.find(({ content }) => content.status === 'draft');
  if (!draft) throw new Error('a draft was begun');
  return draft;
}

async function begun() {
  const all = await hospital();
  await beginConfigurationDraft({ ...all, now, newId, person: all.lead, configurationId: all.id });
  const draft = await draftOf(all.db, all.id);
  const entry = entryOf(textOf(draft.content, draft.note));
  return { ...all, draft, entry, versionId: draft.content.id };
}

describe('a draft of a configuration', () => {
  it('begins as a copy of the version in force; begun twice it is the same draft', async () => {
    const { db, id, lead, versionId } = await begun();
    const again = await beginConfigurationDraft({ db, now, newId, person: lead, configurationId: id });
    expect(again).toMatchObject({ ok: true, value: { versionId } });
    const versions = (await findConfiguration(db, id))?.versions ?? [];
    const inForce = versions.find(({ content }) => content.status === 'inForce');
    const draft = versions.find(({ content }) => content.status === 'draft');
    if (!inForce || !draft) throw new Error('both are there');
    expect(compareVersions(inForce.content, draft.content).lines).toEqual([]);
  });

  it('is saved whole, guarded by its revision: the second is refused with what stands, and nothing changes', async () => {
    const { db, lead, other, draft, entry, versionId, id } = await begun();
    const mine = { ...entry, note: 'One more of the first line.' };
    const one = await saveConfigurationDraft({
      db,
      now,
      person: lead,
      versionId,
      baseRevision: draft.revision,
      entry: mine,
    });
    expect(one).toMatchObject({ ok: true, value: { revision: draft.revision + 1 } });
    const theirs = { ...entry, lines: entry.lines.slice(1) };
    const two = await saveConfigurationDraft({
      db,
      now,
      person: other,
      versionId,
      baseRevision: draft.revision,
      entry: theirs,
    });
    expect(two).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', current: { revision: draft.revision + 1 } },
    });
    const stands = await draftOf(db, id);
    expect(stands.note).toBe('One more of the first line.');
    expect(stands.content.lines).toHaveLength(entry.lines.length);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('refuses all that is wrong at once: letters for numbers, circles, a line of another version', async () => {
    const { db, lead, draft, entry, versionId } = await begun();
    const save = (lines: unknown[]) =>
      saveConfigurationDraft({
        db,
        now,
        person: lead,
        versionId,
        baseRevision: draft.revision,
        entry: { ...entry, lines },
      });
    const [first, second, ...rest] = entry.lines;
    if (!first || !second) throw new Error('the demo’s configurations have lines');
    const letters = await save([{ ...first, expected: 'many', minimum: -1 }, second, ...rest]);
    expect(letters.ok ? [] : letters.refusal.problems.map(({ path }) => path.join('.'))).toEqual(
      expect.arrayContaining(['lines.0.expected', 'lines.0.minimum']),
    );
    const circle = await save([
      { ...first, substitutes: [second.itemId] },
      { ...second, substitutes: [first.itemId] },
      ...rest,
    ]);
    expect(circle.ok ? [] : circle.refusal.problems.map(({ code }) => code)).toContain('circular');
    const stranger = await db.read.query.configurationLines.findFirst({
      where: (line, { ne }) => ne(line.versionId, versionId),
    });
    const taken = await save([{ ...first, id: stranger?.id }, second, ...rest]);
    expect(taken.ok ? [] : taken.refusal.problems.map(({ code }) => code)).toContain('line-of-another');
  });

  it('is put in force by a second person only, and then never changes, not even past the program', async () => {
    const { db, lead, other, technician, draft, entry, versionId, id } = await begun();
    const put = async (person: typeof lead) => {
      const subject = { kind: 'configuration-version', id: versionId, change: 'putInForce' } as const;
      const agreed = await seenAndProven(db, person, subject, { now, today, newId });
      const asked = { db, now, today, person, versionId, baseRevision: draft.revision };
      return putConfigurationInForce({ ...asked, from: today, ...agreed });
    };
    expect(await put(lead)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    expect(await put(technician)).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    expect(await put(other)).toMatchObject({ ok: true });
    const versions = (await findConfiguration(db, id))?.versions ?? [];
    expect(versions.map(({ content }) => content.status).slice(0, 2)).toEqual(['inForce', 'superseded']);
    const late = await saveConfigurationDraft({
      db,
      now,
      person: lead,
      versionId,
      baseRevision: draft.revision + 1,
      entry,
    });
    expect(late).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    await expect(
      db.tx(async (write) => {
        await write.delete(configurationLines).where(eq(configurationLines.versionId, versionId));
      }),
    ).rejects.toThrow();
    const actions = await db.read.select().from(ledger).where(eq(ledger.subjectId, id));
    expect(actions.map(({ action }) => action)).toEqual([
      'begin-configuration-draft',
      'put-configuration-in-force',
    ]);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('is not put in force by anyone who wrote some of it, whoever saved it last', async () => {
    const { db, lead, other, entry, versionId, draft } = await begun();
    const manager = (await listPeople(db)).find(({ role }) => role === 'theatreManager');
    if (!manager) throw new Error('the demo has a theatre manager');
    const saved = await saveConfigurationDraft({
      db,
      now,
      person: other,
      versionId,
      baseRevision: draft.revision,
      entry,
    });
    if (!saved.ok) throw new Error('the draft is sound');
    const put = async (person: typeof lead) => {
      const subject = { kind: 'configuration-version', id: versionId, change: 'putInForce' } as const;
      const agreed = await seenAndProven(db, person, subject, { now, today, newId });
      const asked = { db, now, today, person, versionId, baseRevision: saved.value.revision };
      return putConfigurationInForce({ ...asked, from: today, ...agreed });
    };
    expect(await put(lead), 'who began it').toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    expect(await put(other), 'who saved it').toMatchObject({
      ok: false,
      refusal: { because: 'notPermitted' },
    });
    expect(await put(manager), 'who wrote none of it').toMatchObject({ ok: true });
  });

  it('is discarded whole, and what is in force stays', async () => {
    const { db, lead, draft, versionId, id } = await begun();
    const outcome = await discardConfigurationDraft({
      db,
      now,
      person: lead,
      versionId,
      baseRevision: draft.revision,
    });
    expect(outcome).toMatchObject({ ok: true });
    const versions = (await findConfiguration(db, id))?.versions ?? [];
    expect(versions.some(({ content }) => content.status === 'draft')).toBe(false);
    expect(versions.some(({ content }) => content.status === 'inForce')).toBe(true);
    expect(
      await db.read.select().from(configurationLines).where(eq(configurationLines.versionId, versionId)),
    ).toEqual([]);
  });
});

describe('addConfiguration', () => {
  it('adds an empty draft, and refuses a code that is taken or no code', async () => {
    const { db, lead } = await hospital();
    const add = (entry: unknown) => addConfiguration({ db, now, newId, person: lead, entry });
    const added = await add({ code: 'TST', name: 'A test set' });
    expect(added).toMatchObject({ ok: true });
    const twice = await add({ code: 'TST', name: 'Another' });
    expect(twice.ok ? [] : twice.refusal.problems.map(({ code }) => code)).toEqual(['code-taken']);
    const bad = await add({ code: 'x', name: 'n'.repeat(10_000) });
    expect(bad.ok ? [] : bad.refusal.problems.map(({ path }) => path.join('.'))).toEqual(['code', 'name']);
  });
});
