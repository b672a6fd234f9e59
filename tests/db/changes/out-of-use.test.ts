import { eq } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { beginConfigurationDraft } from '@/db/operations/begin-configuration-draft';
import { askConfigurationWithdrawal } from '@/db/operations/configurations/ask-withdrawal';
import { decideConfigurationWithdrawal } from '@/db/operations/configurations/decide-withdrawal';
import { findConfiguration, listConfigurations } from '@/db/queries/configurations';
import { listPeople } from '@/db/queries/people';
import { configurationRequests, configurations, ledger, sets } from '@/db/schema';
import type { NewId } from '@/lib/identity/ids';
import type { Attestation } from '@/lib/people/attestation';
import { demoDatabase } from '../../setup/database';

const now = '2026-01-14T08:00:00.000Z';
let ids = 0;
const newId: NewId = (prefix) => `${prefix}_use-${++ids}`;
const because = 'replaced by the larger configuration';

async function asked() {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const [lead, other] = people.filter(({ role }) => role === 'decontaminationLead');
  const technician = people.find(({ role }) => role === 'technician');
  const row = (await listConfigurations(db)).find(
    ({ inForce, draft, sets: count }) => inForce && !draft && count > 1,
  );
  if (!lead || !other || !technician || !row) throw new Error('the demo has all of them');
  const request = { db, now, configurationId: row.id };
  const outcome = await askConfigurationWithdrawal({
    ...request,
    newId,
    person: lead,
    kind: 'withdraw',
    because,
  });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  return { db, lead, other, technician, row, request };
}

const proofOf = (person: { id: Attestation['personId'] }): Attestation => ({
  personId: person.id,
  meaning: 'iApprove',
  method: 'password',
  at: now,
});
const agreedBy = (person: { id: Attestation['personId'] }) =>
  ({ agreed: true, attestation: proofOf(person) }) as const;

describe('a configuration out of use', () => {
  it('takes two people, the second of whom proves who they are', async () => {
    const { db, lead, other, technician, row, request } = await asked();
    const decide = (person: typeof lead, attested = person) =>
      decideConfigurationWithdrawal({ ...request, person, decision: agreedBy(attested) });
    for (const refused of [await decide(lead), await decide(technician), await decide(other, lead)])
      expect(refused).toMatchObject({ ok: false, refusal: { because: 'notPermitted' } });
    expect((await findConfiguration(db, row.id))?.withdrawnAt).toBeNull();
    expect(await decide(other)).toMatchObject({ ok: true, value: { withdrawnAt: now } });
    const entry = (await db.read.select().from(ledger)).find(
      ({ action }) => action === 'withdraw-configuration',
    );
    expect(entry?.detail).toMatchObject({ because, askedBy: lead.id, attested: { meaning: 'iApprove' } });
    const { sets: named } = (entry?.detail ?? {}) as { sets?: string[] };
    expect(named).toHaveLength(row.sets);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('gets no new set and no new version, while its sets go on', async () => {
    const { db, lead, other, row, request } = await asked();
    await decideConfigurationWithdrawal({ ...request, person: other, decision: agreedBy(other) });
    expect(await beginConfigurationDraft({ ...request, newId, person: lead })).toMatchObject({
      refusal: { because: 'frozen' },
    });
    const [follower] = (await findConfiguration(db, row.id))?.sets ?? [];
    if (!follower) throw new Error('it has sets');
    const [kept] = await db.read.select().from(sets).where(eq(sets.id, follower.id));
    if (!kept) throw new Error('the set is there');
    await expect(
      db.tx((write) =>
        write
          .insert(sets)
          .values({ ...kept, id: 'set_another', code: 'ANOTHER 1', turnId: null, packId: null }),
      ),
    ).rejects.toThrow();
    await db.tx((write) => write.update(sets).set({ ownerNote: 'still in use' }).where(eq(sets.id, kept.id)));
  });

  it('comes back by two people, with both on record', async () => {
    const { db, lead, other, row, request } = await asked();
    await decideConfigurationWithdrawal({ ...request, person: other, decision: agreedBy(other) });
    const back = {
      ...request,
      newId,
      kind: 'bringBack' as const,
      because: 'the larger one did not fit the washers',
    };
    expect((await askConfigurationWithdrawal({ ...back, person: other })).ok).toBe(true);
    expect(
      await decideConfigurationWithdrawal({ ...request, person: other, decision: agreedBy(other) }),
    ).toMatchObject({ refusal: { because: 'notPermitted' } });
    expect(
      await decideConfigurationWithdrawal({ ...request, person: lead, decision: agreedBy(lead) }),
    ).toMatchObject({ ok: true, value: { withdrawnAt: null } });
    expect(
      (await findConfiguration(db, row.id))?.requests.map(({ kind, decision }) => [kind, decision]),
    ).toEqual(
      expect.arrayContaining([
        ['withdraw', 'agreed'],
        ['bringBack', 'agreed'],
      ]),
    );
  });

  it('is turned down by either, asked once at a time, and only where there is something to ask', async () => {
    const { lead, other, request } = await asked();
    const ask = (kind: 'withdraw' | 'bringBack', reason = because) =>
      askConfigurationWithdrawal({ ...request, newId, person: other, kind, because: reason });
    expect(await ask('withdraw')).toMatchObject({ refusal: { because: 'frozen' } });
    expect(await ask('bringBack')).toMatchObject({ refusal: { because: 'frozen' } });
    const down = { ...request, person: lead, decision: { agreed: false } } as const;
    expect(await decideConfigurationWithdrawal(down)).toMatchObject({
      ok: true,
      value: { withdrawnAt: null },
    });
    expect(await decideConfigurationWithdrawal(down)).toMatchObject({ refusal: { because: 'frozen' } });
    expect(await ask('withdraw', 'short')).toMatchObject({ refusal: { problems: [{ path: ['because'] }] } });
  });

  it('is kept by the database: not without two people, and what was decided stays', async () => {
    const { db, row, other, request } = await asked();
    const alone = db.tx((write) =>
      write.update(configurations).set({ withdrawnAt: now }).where(eq(configurations.id, row.id)),
    );
    await expect(alone).rejects.toThrow();
    await decideConfigurationWithdrawal({ ...request, person: other, decision: agreedBy(other) });
    const rewrite = db.tx((write) => write.update(configurationRequests).set({ because: 'another reason' }));
    await expect(rewrite).rejects.toThrow();
    await expect(db.tx((write) => write.delete(configurationRequests))).rejects.toThrow();
  });
});
