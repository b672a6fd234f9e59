import { and, eq, isNull } from 'drizzle-orm';
import { type ConfigurationId, type NewId, type RequestId, requestId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { may } from '@/lib/people/permissions';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { configurationRequests, configurations } from '../../schema';

interface AskWithdrawal {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  configurationId: ConfigurationId;
  /** Out of use: no new sets of it. `bringBack`: the other way round. */
  kind: 'withdraw' | 'bringBack';
  because: string;
}

/** The first of two people asks for a configuration to go out of use, or to come back. Nothing changes until another agrees. */
export async function askConfigurationWithdrawal(
  request: AskWithdrawal,
): Promise<Outcome<{ id: RequestId }>> {
  const { db, now, newId, person, configurationId, kind } = request;
  if (!may(person, 'writeConfiguration')) return refused('notPermitted', words.notPermitted(person.name));
  const because = request.because.trim();
  // as the store counts: one sign that takes two places of a text is one
  const signs = [...because].length;
  if (signs < 8 || signs > 300)
    return refusedFor([{ path: ['because'], code: 'no-reason', message: words.reason }]);
  return db.tx(async (write) => {
    const [head] = await write.select().from(configurations).where(eq(configurations.id, configurationId));
    if (!head) return refused('notFound', 'There is no such configuration.');
    if (kind === 'withdraw' && head.withdrawnAt) return refused('frozen', words.outAlready(head.name));
    if (kind === 'bringBack' && !head.withdrawnAt) return refused('frozen', words.inUse(head.name));
    const [open] = await write
      .select()
      .from(configurationRequests)
      .where(
        and(
          eq(configurationRequests.configurationId, configurationId),
          isNull(configurationRequests.decidedAt),
        ),
      );
    if (open) return refused('frozen', words.askedAlready);
    const id = requestId.parse(newId('request'));
    await write
      .insert(configurationRequests)
      .values({ id, configurationId, kind, because, askedBy: person.id, askedAt: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: kind === 'withdraw' ? 'ask-configuration-withdrawal' : 'ask-configuration-return',
      subjectKind: 'configuration',
      subjectId: configurationId,
      detail: { requestId: id, because },
    });
    return { ok: true, value: { id } };
  });
}
