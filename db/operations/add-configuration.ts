import { eq, sql } from 'drizzle-orm';
import { z } from 'zod';
import { type ConfigurationId, configurationId, type NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { configurationWords as words } from '@/lib/wording/configurations';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { configurations, configurationVersions } from '../schema';

export const configurationEntry = z.strictObject({
  code: z
    .string()
    .trim()
    .regex(/^[A-Z0-9]{2,8}$/, words.codeForm),
  name: z.string().trim().min(1, words.nameNeeded).max(80, words.nameTooLong),
});

interface AddConfiguration {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** As sent from outside: code and name. */
  entry: unknown;
}

/** Adds a configuration with an empty draft of its first version. Its code begins the codes of its sets and is its own. */
export async function addConfiguration(request: AddConfiguration): Promise<Outcome<{ id: ConfigurationId }>> {
  const { db, now, newId, person } = request;
  if (!may(person, 'writeConfiguration')) return refused('notPermitted', words.notPermitted(person.name));
  const parsed = configurationEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const { code, name } = parsed.data;
  return db.tx(async (write) => {
    const [taken] = await write
      .select()
      .from(configurations)
      .where(eq(sql`upper(${configurations.code})`, code.toUpperCase()));
    if (taken) {
      return refusedFor([{ path: ['code'], code: 'code-taken', message: words.codeTaken(code, taken.name) }]);
    }
    const id = configurationId.parse(newId('configuration'));
    const versionId = newId('version');
    await write.insert(configurations).values({ id, code, name });
    await write.insert(configurationVersions).values({
      id: versionId,
      configurationId: id,
      version: 1,
      status: 'draft',
      layers: [{ layer: 1, name: 'Instruments' }],
      promises: [],
      draftedBy: person.id,
      revision: 1,
    });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'add-configuration',
      subjectKind: 'configuration',
      subjectId: id,
      detail: { code, name, versionId },
    });
    return { ok: true, value: { id } };
  });
}
