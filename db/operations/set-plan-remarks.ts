import { REMARKS, type RemarkName } from '@/lib/calculations/plateRemarks/schema';
import { failed, ok, type Result } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import type { Database } from '../client';
import { appendLedger } from '../ledger';
import type { Person } from '../queries/people';
import { settings } from '../schema';

interface SetPlanRemarks {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  /** Names of the remarks to be switched off; all others are shown. */
  off: readonly RemarkName[];
}

/** Sets which advisory remarks local policy has switched off. */
export async function setPlanRemarks({ db, now, person, off }: SetPlanRemarks): Promise<Result<null>> {
  if (!may(person, 'setRemarks')) {
    const message = 'A theatre manager or administrator sets which remarks are shown.';
    return failed({ path: [], code: 'not-permitted', message });
  }
  const value = REMARKS.filter((name) => off.includes(name));
  return db.tx(async (write) => {
    await write
      .insert(settings)
      .values({ key: 'remarksOff', value })
      .onConflictDoUpdate({ target: settings.key, set: { value } });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'set-plan-remarks',
      subjectKind: 'setting',
      subjectId: 'remarksOff',
      detail: { off: value },
    });
    return ok(null);
  });
}
