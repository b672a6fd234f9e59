import { and, eq, isNull } from 'drizzle-orm';
import type { ConfigurationId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { changeWords } from '@/lib/wording/changes';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { configurationRequests, configurations, configurationVersions, sets } from '../../schema';

interface DecideWithdrawal {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  configurationId: ConfigurationId;
  /** `turnedDown` needs no proof; whoever asked takes it back so. */
  decision: { agreed: true; attestation: Attestation } | { agreed: false };
}

/**
 * The second person agrees that a configuration goes out of use or comes back, or it is turned down. Out of use there is no
 * new set of it and no new version; its sets go on as they are, and the ledger names them.
 */
export async function decideConfigurationWithdrawal(
  request: DecideWithdrawal,
): Promise<Outcome<{ withdrawnAt: string | null }>> {
  const { db, now, person, configurationId, decision } = request;
  const act = decision.agreed ? 'approveConfiguration' : 'writeConfiguration';
  if (!may(person, act)) return refused('notPermitted', words.notPermitted(person.name));
  return db.tx(async (write) => {
    const [head] = await write.select().from(configurations).where(eq(configurations.id, configurationId));
    const [asked] = await write
      .select()
      .from(configurationRequests)
      .where(
        and(
          eq(configurationRequests.configurationId, configurationId),
          isNull(configurationRequests.decidedAt),
        ),
      );
    if (!head || !asked) return refused('frozen', words.notAsked);
    if (decision.agreed && asked.askedBy === person.id)
      return refused('notPermitted', words.askerAgrees(person.name));
    if (decision.agreed && !attests(decision.attestation, person.id, 'iApprove', now))
      return refused('notPermitted', changeWords.notProven);
    await write
      .update(configurationRequests)
      .set({ decidedBy: person.id, decidedAt: now, decision: decision.agreed ? 'agreed' : 'turnedDown' })
      .where(eq(configurationRequests.id, asked.id));
    const out = asked.kind === 'withdraw';
    const withdrawnAt = decision.agreed ? (out ? now : null) : head.withdrawnAt;
    if (decision.agreed)
      await write.update(configurations).set({ withdrawnAt }).where(eq(configurations.id, configurationId));
    const followers = await write
      .select({ code: sets.code })
      .from(sets)
      .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
      .where(eq(configurationVersions.configurationId, configurationId));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: decision.agreed
        ? out
          ? 'withdraw-configuration'
          : 'bring-configuration-back'
        : 'turn-configuration-request-down',
      subjectKind: 'configuration',
      subjectId: configurationId,
      detail: {
        requestId: asked.id,
        kind: asked.kind,
        askedBy: asked.askedBy,
        because: asked.because,
        sets: followers.map(({ code }) => code).sort(),
        ...(decision.agreed
          ? {
              attested: {
                meaning: decision.attestation.meaning,
                method: decision.attestation.method,
                at: decision.attestation.at,
              },
            }
          : {}),
      },
    });
    return { ok: true, value: { withdrawnAt } };
  });
}
