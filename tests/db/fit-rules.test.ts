import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { approveFitException } from '@/db/operations/approve-fit-exception';
import { approveFitRule } from '@/db/operations/approve-fit-rule';
import { askFitRuleWithdrawal } from '@/db/operations/ask-fit-rule-withdrawal';
import { discardFitRule } from '@/db/operations/discard-fit-rule';
import { draftFitException } from '@/db/operations/draft-fit-exception';
import { draftFitRule } from '@/db/operations/draft-fit-rule';
import { keepFitRule } from '@/db/operations/keep-fit-rule';
import { withdrawFitRule } from '@/db/operations/withdraw-fit-rule';
import { loadCatalogue } from '@/db/queries/catalogue';
import type { TrialSubject } from '@/db/queries/changes/trials';
import { fitRuleVersions, loadFitEngine } from '@/db/queries/fitRules';
import { listPeople, type Person } from '@/db/queries/people';
import { fitRules, items, ledger, settings } from '@/db/schema';
import type { DrillBit, DrillSleeve, Screw } from '@/lib/catalogue/item';
import { standingOn } from '@/lib/fit/standing';
import type { NewId } from '@/lib/identity/ids';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { seenAndProven } from '../fixtures/approval';
import { demoDatabase } from '../setup/database';

const now = '2026-01-14T06:30:00.000Z';
const today = plainDate.parse('2026-01-14');
const later = plainDate.parse('2026-02-01');
const CODE = 'bore-not-too-loose';

let db: Database;
let people: Person[];
let count = 0;
const newId: NewId = (prefix) => `${prefix}_test-${++count}`;
const who = (role: Person['role'], index = 0): Person => {
  const person = people.filter((one) => one.role === role)[index];
  if (!person) throw new Error(`nobody is ${role}`);
  return person;
};

beforeEach(async () => {
  db = await demoDatabase();
  people = await listPeople(db);
});

/** The starter rule with a tighter limit: the bore may be 0.05 wider, whatever the setting. */
const tighter = {
  code: CODE,
  relation: 'passes',
  severity: 'stops',
  appliesWhen: { all: [] },
  requires: { atMost: [{ minus: [{ fact: 'end.boreUm' }, { fact: 'tool.diameterUm' }] }, { value: 50 }] },
  sentence: 'Our sleeves may be 0.05 mm wider, no more.',
  source: { kind: 'localPolicy', owner: 'Theatre manager', date: '2026-01-10' },
};

async function drafted(person = who('theatreManager')) {
  const result = await draftFitRule({ db, now, newId, person, draft: tighter, basedOn: 1 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const seen = (person: Person, subject: TrialSubject) =>
  seenAndProven(db, person, subject, { now, today, newId });
const approveRule = async (person: Person, id: string, from: PlainDate) => {
  const agreed = await seen(person, { kind: 'fit-rule', id, change: 'putInForce' });
  return approveFitRule({ db, now, today, person, id, from, ...agreed });
};
const approveException = async (person: Person, id: string, from: PlainDate) => {
  const agreed = await seen(person, { kind: 'fit-exception', id, change: 'putInForce' });
  return approveFitException({ db, now, today, person, id, from, ...agreed });
};
const withdrawRule = async (person: Person, id: string, until = today) => {
  const agreed = await seen(person, { kind: 'fit-rule', id, change: 'withdraw' });
  return withdrawFitRule({ db, now, today, person, id, until, ...agreed });
};

const codes = (result: { ok: boolean; problems?: { code: string }[] }) =>
  result.problems?.map(({ code }) => code);

describe('drafting and approving', () => {
  it('changes nothing until a second person approves, and ends the version before', async () => {
    const draft = await drafted();
    expect(draft).toMatchObject({
      version: 2,
      status: 'draft',
      draftedBy: who('theatreManager').id,
      approvedBy: null,
    });
    const before = await loadFitEngine(db, today);
    expect(before.rules.find(({ code }) => code === CODE)?.version).toBe(1);

    const approved = await approveRule(who('decontaminationLead'), draft.id, today);
    expect(approved.ok).toBe(true);
    const after = await loadFitEngine(db, today);
    expect(after.rules.filter(({ code }) => code === CODE).map(({ version }) => version)).toEqual([2]);
    const versions = await fitRuleVersions(db, CODE);
    expect(versions.map((rule) => standingOn(rule, today))).toEqual(['inForce', 'ended']);
    const entries = (await db.read.select().from(ledger)).filter(
      ({ subjectKind }) => subjectKind === 'fit-rule',
    );
    expect(entries.map(({ action }) => action)).toEqual(['draft-fit-rule', 'try-change', 'approve-fit-rule']);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('takes effect on the day it says, the version before holding until then', async () => {
    const draft = await drafted();
    await approveRule(who('administrator'), draft.id, later);
    const on = async (day: string) =>
      (await loadFitEngine(db, plainDate.parse(day))).rules
        .filter(({ code }) => code === CODE)
        .map(({ version }) => version);
    expect(await on('2026-01-31')).toEqual([1]);
    expect(await on('2026-02-01')).toEqual([2]);
  });

  it('is refused to whoever drafted it, by the operation and by the database', async () => {
    const draft = await drafted();
    const own = await approveRule(who('theatreManager'), draft.id, today);
    expect(codes(own)).toEqual(['same-person']);
    const past = db.tx(async (write) => {
      await write
        .update(fitRules)
        .set({ approvedBy: who('theatreManager').id, status: 'inForce', inForceFrom: today })
        .where(eq(fitRules.id, draft.id));
    });
    await expect(past).rejects.toThrow();
    expect((await fitRuleVersions(db, CODE))[0]?.status).toBe('draft');
  });

  it('is refused to roles that may not, and for days gone by', async () => {
    const draft = await drafted();
    const technician = await approveRule(who('technician'), draft.id, today);
    expect(codes(technician)).toEqual(['not-permitted']);
    const surgeon = await draftFitRule({
      db,
      now,
      newId,
      person: who('surgeon'),
      draft: tighter,
      basedOn: 1,
    });
    expect(codes(surgeon)).toEqual(['not-permitted']);
    const yesterday = plainDate.parse('2026-01-13');
    const late = await approveRule(who('administrator'), draft.id, yesterday);
    expect(codes(late)).toEqual(['in-the-past']);
  });

  it('refuses a draft made from a version that is no longer the newest, and a code that is taken', async () => {
    const draft = await drafted();
    await approveRule(who('administrator'), draft.id, today);
    const person = who('theatreManager');
    expect(codes(await draftFitRule({ db, now, newId, person, draft: tighter, basedOn: 1 }))).toEqual([
      'changed-meanwhile',
    ]);
    expect(codes(await draftFitRule({ db, now, newId, person, draft: tighter, basedOn: 0 }))).toEqual([
      'code-taken',
    ]);
  });

  it('collects every problem of a bad draft, each with its path, and keeps nothing', async () => {
    const before = (await db.read.select().from(fitRules)).length;
    const result = await draftFitRule({
      db,
      now,
      newId,
      person: who('administrator'),
      basedOn: 0,
      draft: {
        code: 'Bad Code',
        relation: 'pilots',
        severity: 'maybe',
        sentence: 'no',
        source: { kind: 'standard' },
        appliesWhen: { sometimes: 1 },
        requires: { equal: [{ fact: 'bit.diameterUm' }] },
      },
    });
    if (result.ok) throw new Error('it was accepted');
    expect(result.problems.map(({ path }) => path.join('.'))).toEqual([
      'code',
      'severity',
      'sentence',
      'source.number',
      'source.clause',
      'appliesWhen',
      'requires.equal',
    ]);
    expect((await db.read.select().from(fitRules)).length).toBe(before);
  });

  it('replaces a draft by a later one, whose drafter may then not approve', async () => {
    const first = await drafted(who('theatreManager'));
    const second = await drafted(who('administrator'));
    expect((await fitRuleVersions(db, CODE)).map(({ id }) => id)).not.toContain(first.id);
    const own = await approveRule(who('administrator'), second.id, today);
    expect(codes(own)).toEqual(['same-person']);
  });

  it('throws a draft away, and never what is in force', async () => {
    const draft = await drafted();
    const person = who('theatreManager');
    expect((await discardFitRule({ db, now, today, person, id: draft.id })).ok).toBe(true);
    const [inForce] = await fitRuleVersions(db, CODE);
    if (!inForce) throw new Error('version 1 is there');
    expect(codes(await discardFitRule({ db, now, today, person, id: inForce.id }))).toEqual(['not-a-draft']);
  });
});

describe('an approval', () => {
  const stillDraft = async () => expect((await fitRuleVersions(db, CODE))[0]?.status).toBe('draft');

  it('rests on a trial of the approver’s own, of this draft, against what is in force, not long ago', async () => {
    const draft = await drafted();
    const person = who('administrator');
    const subject = { kind: 'fit-rule', id: draft.id, change: 'putInForce' } as const;
    const mine = await seen(person, subject);
    const asked = { db, now, today, person, id: draft.id, from: today };
    const others = await seen(who('decontaminationLead'), subject);
    expect(codes(await approveFitRule({ ...asked, ...mine, trialId: others.trialId }))).toEqual([
      'not-tried',
    ]);
    expect(codes(await approveFitRule({ ...asked, ...mine, trialId: 'trial_none' }))).toEqual(['not-tried']);
    const late = '2026-01-14T07:31:00.000Z';
    const proven = { ...mine.attestation, at: late };
    expect(codes(await approveFitRule({ ...asked, ...mine, attestation: proven, now: late }))).toEqual([
      'tried-long-ago',
    ]);
    await db.tx(async (write) => {
      await write.insert(settings).values({ key: 'fit', value: { sleeveToleranceUm: 150 } });
    });
    expect(codes(await approveFitRule({ ...asked, ...mine }))).toEqual(['basis-changed']);
    await stillDraft();
  });

  it('names another draft than the one that was tried, and is refused', async () => {
    const first = await drafted();
    const mine = await seen(who('administrator'), { kind: 'fit-rule', id: first.id, change: 'putInForce' });
    await db.tx(async (write) => {
      await write
        .update(fitRules)
        .set({ sentence: 'Our sleeves may be half as wide.' })
        .where(eq(fitRules.id, first.id));
    });
    const asked = { db, now, today, person: who('administrator'), id: first.id, from: today };
    expect(codes(await approveFitRule({ ...asked, ...mine }))).toEqual(['draft-changed']);
  });

  it('is proven by the approver for this meaning and this moment, and the ledger says so', async () => {
    const draft = await drafted();
    const person = who('administrator');
    const mine = await seen(person, { kind: 'fit-rule', id: draft.id, change: 'putInForce' });
    const asked = { db, now, today, person, id: draft.id, from: today, ...mine };
    for (const wrong of [
      { personId: who('theatreManager').id },
      { meaning: 'iCounted' as const },
      { at: '2026-01-14T06:20:00.000Z' },
    ]) {
      const attestation = { ...mine.attestation, ...wrong };
      expect(codes(await approveFitRule({ ...asked, attestation }))).toEqual(['not-proven']);
    }
    await stillDraft();
    expect((await approveFitRule(asked)).ok).toBe(true);
    const entry = (await db.read.select().from(ledger)).find(({ action }) => action === 'approve-fit-rule');
    expect(entry?.detail).toMatchObject({
      from: today,
      trial: { id: mine.trialId },
      attested: { meaning: 'iApprove', method: 'password', at: now },
    });
  });
});

describe('a rule approved for a later day', () => {
  it('gives its place back when it is withdrawn before that day, so that no day is without the rule', async () => {
    const draft = await drafted();
    await approveRule(who('administrator'), draft.id, later);
    const asking = { db, now, today, person: who('theatreManager'), id: draft.id };
    await askFitRuleWithdrawal({ ...asking, because: 'it was drafted for other sleeves' });
    expect((await withdrawRule(who('administrator'), draft.id)).ok).toBe(true);
    for (const day of ['2026-01-14', '2026-01-31', '2026-02-01', '2026-06-01']) {
      const engine = await loadFitEngine(db, plainDate.parse(day));
      expect(engine.rules.filter(({ code }) => code === CODE).map(({ version }) => version)).toEqual([1]);
    }
  });
});

describe('a rule in force', () => {
  it('never changes and is never deleted, whoever asks the database', async () => {
    const [inForce] = await fitRuleVersions(db, CODE);
    if (!inForce) throw new Error('version 1 is there');
    const sentence = 'Another sentence altogether.';
    const change = db.tx(async (write) => {
      await write.update(fitRules).set({ sentence }).where(eq(fitRules.id, inForce.id));
    });
    await expect(change).rejects.toThrow();
    const removal = db.tx(async (write) => {
      await write.delete(fitRules).where(eq(fitRules.id, inForce.id));
    });
    await expect(removal).rejects.toThrow();
    expect(await fitRuleVersions(db, CODE)).toEqual([inForce]);
  });

  it('is withdrawn by two people, from a day', async () => {
    const [rule] = await fitRuleVersions(db, CODE);
    if (!rule) throw new Error('version 1 is there');
    const asking = { db, now, today, person: who('theatreManager'), id: rule.id };
    expect(codes(await withdrawRule(asking.person, rule.id))).toEqual(['not-asked']);
    expect(codes(await askFitRuleWithdrawal({ ...asking, because: ' ' }))).toEqual(['no-reason']);
    expect((await askFitRuleWithdrawal({ ...asking, because: 'our sleeves are worn wider' })).ok).toBe(true);
    expect(codes(await withdrawRule(asking.person, rule.id))).toEqual(['same-person']);
    expect((await loadFitEngine(db, today)).rules.some(({ code }) => code === CODE)).toBe(true);
    expect((await withdrawRule(who('administrator'), rule.id)).ok).toBe(true);
    expect((await loadFitEngine(db, today)).rules.some(({ code }) => code === CODE)).toBe(false);
  });

  it('stays when the withdrawal is turned down', async () => {
    const [rule] = await fitRuleVersions(db, CODE);
    if (!rule) throw new Error('version 1 is there');
    const asking = { db, now, today, person: who('theatreManager'), id: rule.id };
    await askFitRuleWithdrawal({ ...asking, because: 'our sleeves are worn wider' });
    expect((await keepFitRule({ ...asking, person: who('administrator') })).ok).toBe(true);
    expect((await fitRuleVersions(db, CODE))[0]).toMatchObject({
      status: 'inForce',
      withdrawalAskedBy: null,
    });
  });
});

describe('a named exception', () => {
  it('is drafted, approved by another, and holds for every length of the screw’s family', async () => {
    const catalogue = await loadCatalogue(db);
    const screws = catalogue.filter(
      (item): item is Screw =>
        item.kind === 'screw' && item.screwKind === 'cortical' && item.threadUm === 3500,
    );
    const [named, ...others] = screws.filter(({ screwFamily }) => screwFamily === screws[0]?.screwFamily);
    const bit = catalogue.find(
      (item): item is DrillBit => item.kind === 'drillBit' && item.diameterUm === 3500,
    );
    const other = others.at(-1);
    if (!named || !other || !bit) throw new Error('the demo has 3.5 cortical screws and a 3.5 bit');
    const ask = async (screw: Screw) =>
      (await loadFitEngine(db, today)).ask({ relation: 'pilots', bit, screw }).outcome;
    expect(await ask(other)).toBe('doesNotFit');

    const draft = {
      relation: 'pilots',
      firstItemId: named.id,
      secondItemId: bit.id,
      answer: 'allow',
      sentence: 'Allowed for this test alone.',
      source: { kind: 'commonPractice' },
    };
    const made = await draftFitException({ db, now, newId, person: who('theatreManager'), draft });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    expect(await ask(other)).toBe('doesNotFit');
    const own = await approveException(who('theatreManager'), made.value.id, today);
    expect(codes(own)).toEqual(['same-person']);
    await approveException(who('administrator'), made.value.id, today);
    expect(await ask(named)).toBe('fits');
    expect(await ask(other)).toBe('fits');
  });

  it('names two items that the catalogue has', async () => {
    const draft = {
      relation: 'passes',
      firstItemId: 'item_nowhere',
      secondItemId: 'item_neither',
      answer: 'deny',
      sentence: 'Neither of them exists.',
      source: { kind: 'commonPractice' },
    };
    const result = await draftFitException({ db, now, newId, person: who('administrator'), draft });
    if (result.ok) throw new Error('it was accepted');
    expect(result.problems.map(({ path }) => path)).toEqual([['firstItemId'], ['secondItemId']]);
  });
});

describe('the engine in force', () => {
  it('is kept until something changes, and notices a change of a setting or an item’s family', async () => {
    const first = await loadFitEngine(db, today);
    expect(await loadFitEngine(db, today)).toBe(first);
    const { settings } = await import('@/db/schema');
    await db.tx(async (write) => {
      await write.insert(settings).values({ key: 'fit', value: { sleeveToleranceUm: 100 } });
    });
    const second = await loadFitEngine(db, today);
    expect(second).not.toBe(first);
    expect(second.settings.sleeveToleranceUm).toBe(100);
  });

  it('answers worked example B1 on the demo: no plain sleeve of it passes the 2.8 bit', async () => {
    const catalogue = await loadCatalogue(db);
    const engine = await loadFitEngine(db, today);
    const bit = catalogue.find(
      (item): item is DrillBit => item.kind === 'drillBit' && item.diameterUm === 2800,
    );
    const plain = catalogue.filter(
      (item): item is DrillSleeve =>
        item.kind === 'drillSleeve' &&
        item.form === 'doubleEnded' &&
        item.ends.some(({ boreUm }) => boreUm === 2500 || boreUm === 3500),
    );
    if (!bit) throw new Error('the demo has a 2.8 bit');
    expect(plain.length).toBeGreaterThan(0);
    for (const sleeve of plain) {
      sleeve.ends.forEach((end, endIndex) => {
        expect(engine.ask({ relation: 'passes', tool: bit, by: { sleeve, end, endIndex } }).outcome).toBe(
          'doesNotFit',
        );
      });
    }
    expect((await db.read.select({ id: items.id }).from(items)).length).toBe(catalogue.length);
  });
});
