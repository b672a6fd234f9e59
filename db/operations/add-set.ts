import { and, eq, sql } from 'drizzle-orm';
import { isSetCode } from '@/lib/exchange/plans/sets';
import { type NewId, type SetId, setId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { exchangeWords as words } from '@/lib/wording/exchange';
import { exchangeRules as rules } from '@/lib/wording/exchange-rules';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { configurations, configurationVersions, places, sets, turnSteps, turns } from '../schema';
import { settleDueVersions } from './configurations/settle-due';

interface AddSet {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  code: string;
  configurationId: string;
  /** Where it is now; `null`: not stated. */
  placeId: string | null;
}

/**
 * Enters a physical set that was not here before, by the version in force. It is coming in: nobody has said that it is clean,
 * what it holds, or that it is sterile, so it is washed, counted and packed like any other before it goes anywhere.
 */
export async function addSet(request: AddSet): Promise<Outcome<{ id: SetId; revision: number }, never>> {
  const { db, now, newId, person, configurationId, placeId } = request;
  const code = request.code.trim().toUpperCase();
  if (!may(person, 'addSet')) return refused('notPermitted', words.mayNot(person.name));
  return db.tx(async (write) => {
    await settleDueVersions(write, now);
    const [kind] = await write.select().from(configurations).where(eq(configurations.id, configurationId));
    if (!kind) return refused('notFound', rules.noSuchConfiguration(configurationId));
    const [inForce] = await write
      .select({ id: configurationVersions.id, version: configurationVersions.version })
      .from(configurationVersions)
      .where(
        and(
          eq(configurationVersions.configurationId, configurationId),
          eq(configurationVersions.status, 'inForce'),
        ),
      );
    const [place] =
      placeId === null ? [null] : await write.select().from(places).where(eq(places.id, placeId));
    const [taken] = await write
      .select({ id: sets.id })
      .from(sets)
      .where(eq(sql`upper(${sets.code})`, code));
    const problems: Problem[] = [];
    const add = (path: string, name: string, message: string) =>
      problems.push({ path: [path], code: name, message });
    if (kind.loanId !== null) add('configuration', 'on-loan', rules.configurationOnLoan(kind.code));
    if (kind.withdrawnAt !== null) add('configuration', 'out-of-use', rules.configurationOut(kind.code));
    if (!inForce) add('configuration', 'not-in-force', rules.notInForce(kind.code));
    if (!isSetCode(code, kind.code)) add('code', 'set-code', rules.setCode(kind.code));
    if (taken) add('code', 'taken', words.setThere(code));
    if (place === undefined || place?.withdrawnAt)
      add('place', 'no-such-place', rules.noSuchPlace(placeId ?? ''));
    if (problems.length > 0 || !inForce) return refusedFor(problems);
    const id = setId.parse(newId('set'));
    const turnId = newId('turn');
    const step = 'comingBack';
    await write.insert(sets).values({
      id,
      code,
      versionId: inForce.id,
      owner: 'ours',
      step,
      stepSince: now,
      placeId,
      revision: 1,
    });
    await write.insert(turns).values({ id: turnId, setId: id, number: 1, beganAt: now });
    await write.insert(turnSteps).values({
      setId: id,
      turnId,
      fromStep: null,
      step,
      because: null,
      note: null,
      personId: person.id,
      workstationId: null,
      placeId,
      doneAt: now,
      enteredAt: now,
    });
    await write.update(sets).set({ turnId }).where(eq(sets.id, id));
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'add-set',
      subjectKind: 'set',
      subjectId: id,
      detail: { code, configurationId, version: inForce.version, placeId },
    });
    return { ok: true, value: { id, revision: 1 } };
  });
}
