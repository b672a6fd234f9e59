import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { beginConfigurationDraft } from '@/db/operations/begin-configuration-draft';
import { recordTrial } from '@/db/operations/changes/record-trial';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { loadConfigurationChange, tryConfigurationChange } from '@/db/queries/changes/configurationTrial';
import { loadFitChange, tryFitChange } from '@/db/queries/changes/fitTrial';
import { trialsOf } from '@/db/queries/changes/trials';
import { listConfigurations } from '@/db/queries/configurations';
import { listFitRules } from '@/db/queries/fitRules';
import { listPeople } from '@/db/queries/people';
import { cases, changeTrials, configurationLines, plans } from '@/db/schema';
import type { Trial } from '@/lib/changes/trial';
import type { NewId } from '@/lib/identity/ids';
import { kitSummary } from '@/lib/kits/summary';
import { plainDate } from '@/lib/quantities/plainDate';
import { EMPTY_TRIAL } from '../../fixtures/approval';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

let now = DEMO_NOW.toISOString();
const today = plainDate.parse('2026-01-14');
let ids = 0;
const newId: NewId = (prefix) => `${prefix}_trial-${++ids}`;
let db: Database;

/** Few enough cases that a test takes no longer than it must; every one of them goes the whole way. */
const CASES = 6;

beforeEach(async () => {
  db = await demoDatabase();
  const ends = (await db.read.select().from(cases)).map(({ endsAt }) => endsAt).sort();
  now = ends.at(-CASES - 1) ?? now;
});

/** Drives a trial to its end; `steps` is how often it let others have their turn. */
async function driven(steps: AsyncGenerator<unknown, Trial>): Promise<{ trial: Trial; steps: number }> {
  for (let count = 0; ; count += 1) {
    const step = await steps.next();
    if (step.done) return { trial: step.value, steps: count };
  }
}

async function tryRule(code: string) {
  const rule = (await listFitRules(db)).find((one) => one.code === code);
  if (!rule) throw new Error(`the starter rules have ${code}`);
  const change = await loadFitChange(db, { kind: 'fit-rule', id: rule.id, change: 'withdraw' }, today);
  if (!change) throw new Error('a rule in force can be withdrawn');
  return { rule, change, ...(await driven(tryFitChange(db, change, { now, solver: null }))) };
}

describe('a trial of a fit rule', () => {
  it('looks at every booked case, saved start and promised construct, and changes nothing', async () => {
    const before = await db.read.select().from(changeTrials);
    const { trial, steps } = await tryRule('bore-not-too-loose');
    const booked = (await db.read.select().from(cases)).filter(({ endsAt }) => endsAt > now);
    const planned = new Set((await db.read.select().from(plans)).map(({ caseId }) => caseId));
    const withPlan = booked.filter(({ id }) => planned.has(id)).length;
    expect(trial.looked).toMatchObject({ cases: withPlan, unplanned: booked.length - withPlan });
    expect(trial.looked.promises).toBeGreaterThan(10);
    expect(steps).toBeGreaterThan(trial.looked.cases);
    expect(trial.pairs?.counts).toEqual([expect.objectContaining({ before: 'doesNotFit', after: 'fits' })]);
    expect(trial.changed.length).toBeGreaterThan(0);
    expect(await db.read.select().from(changeTrials)).toEqual(before);
  });

  it('says of each case what its own kit says now, and leaves out cases a rule never touches', async () => {
    const { trial } = await tryRule('bore-not-too-loose');
    for (const one of trial.changed.filter(({ kind }) => kind === 'case')) {
      const id = one.href?.split('/').at(-1) ?? '';
      const loaded = await loadKitOfCase(db, id, { solver: null, lengthCover: 'none' });
      if (loaded.kind !== 'kit') throw new Error('a case that changes has a kit');
      const { kit, catalogue } = loaded.answer;
      expect(one.before.tone, one.label).toBe(kitSummary(kit, catalogue).tone);
    }
    // 'countersink-plain-heads-only' concerns countersinks alone: no chain without one is made up otherwise
    const { trial: other } = await tryRule('countersink-plain-heads-only');
    const abouts = other.changed.flatMap(({ changes }) => changes.map(({ about }) => about));
    expect(abouts.filter((about) => /^(Drilling|Driving|Measuring)/.test(about))).toEqual([]);
  });

  it('is kept as it was shown, found again for the same words only, and is nobody’s to rewrite', async () => {
    const { rule, change, trial } = await tryRule('countersink-plain-heads-only');
    const people = await listPeople(db);
    const manager = people.find(({ role }) => role === 'theatreManager');
    const technician = people.find(({ role }) => role === 'technician');
    if (!manager || !technician) throw new Error('the demo has both');
    const subject = { kind: 'fit-rule', id: rule.id, change: 'withdraw' } as const;
    const { contentDigest, basisDigest } = change;
    const request = { db, now, newId, subject, contentDigest, basisDigest, result: trial };
    expect(await recordTrial({ ...request, person: technician })).toMatchObject({
      refusal: { because: 'notPermitted' },
    });
    expect((await recordTrial({ ...request, person: manager })).ok).toBe(true);
    const [kept] = await trialsOf(db, subject, contentDigest);
    expect(kept?.result).toEqual(trial);
    expect(kept?.by.name).toBe(manager.name);
    expect(await trialsOf(db, subject, 'f'.repeat(64))).toEqual([]);
    await expect(db.tx((write) => write.update(changeTrials).set({ result: EMPTY_TRIAL }))).rejects.toThrow();
    await expect(db.tx((write) => write.delete(changeTrials))).rejects.toThrow();
    expect(await findLedgerBreak(db.read)).toBeNull();
  });
});

describe('a trial of a configuration', () => {
  async function draftOf(code: string) {
    const row = (await listConfigurations(db)).find((one) => one.code === code);
    const lead = (await listPeople(db)).find(({ role }) => role === 'decontaminationLead');
    if (!row || !lead) throw new Error(`the demo has ${code} and a lead`);
    const begun = await beginConfigurationDraft({ db, now, newId, person: lead, configurationId: row.id });
    if (!begun.ok) throw new Error(JSON.stringify(begun));
    return { row, versionId: begun.value.versionId };
  }
  async function tried(versionId: string) {
    const change = await loadConfigurationChange(db, versionId, today);
    if (!change) throw new Error('there is a draft');
    return { change, ...(await driven(tryConfigurationChange(db, change, { now, today, solver: null }))) };
  }

  it('of an unchanged copy finds nothing: no warning, no plan, no other mass', async () => {
    const free = (await listConfigurations(db)).find(
      ({ inForce, draft, sets }) => inForce && !draft && sets > 0,
    );
    const { row, versionId } = await draftOf(free?.code ?? '');
    const { trial } = await tried(versionId);
    expect(trial.changed.filter(({ kind }) => kind !== 'case')).toEqual([]);
    expect(trial.version?.warnings).toEqual([]);
    expect(trial.version?.mass.before).toEqual(trial.version?.mass.after);
    expect(trial.version?.sets).toHaveLength(row.sets);
  });

  it('of one that takes every bit out names the back-ups and must-haves, the sets, and what is not buildable any more', async () => {
    const rows = await listConfigurations(db);
    const free = rows.find(({ code, draft, inForce }) => code === 'SFS' && inForce && !draft);
    const { versionId } = await draftOf(
      free?.code ?? rows.find((one) => one.inForce && !one.draft)?.code ?? '',
    );
    const change = await loadConfigurationChange(db, versionId, today);
    if (!change) throw new Error('there is a draft');
    const bits = change.draft.lines.filter(({ itemId }) => /^item_\w+-b\d/.test(itemId));
    expect(bits.length).toBeGreaterThan(0);
    await db.tx(async (write) => {
      for (const { id } of bits) await write.delete(configurationLines).where(eq(configurationLines.id, id));
    });
    const { trial } = await tried(versionId);
    const warned = new Set(trial.version?.warnings.map(({ itemId }) => itemId));
    for (const { itemId, mustHaveClass } of bits) if (mustHaveClass < 4) expect(warned).toContain(itemId);
    expect(trial.changed.some(({ kind, turn }) => kind === 'promise' && turn === 'worse')).toBe(true);
    for (const set of trial.version?.sets ?? []) {
      const over = new Set(set.over.map(({ itemId }) => itemId));
      const follower = change.followers.find(({ code }) => code === set.code);
      const counted =
        follower?.lines.filter(({ found }) => (found ?? 0) > 0).map(({ itemId }) => itemId) ?? [];
      for (const { itemId } of bits) if (counted.includes(itemId)) expect(over).toContain(itemId);
    }
    expect(trial.version?.mass.after.grams).toBeLessThan(trial.version?.mass.before?.grams ?? 0);
  });
});
