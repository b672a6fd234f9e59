import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { may } from '@/lib/people/permissions';
import { readEntry } from '@/lib/settings/entry';
import { parseSetting, type SettingKey, type SettingValue } from '@/lib/settings/local';
import { settingWords } from '@/lib/wording/settings';
import type { Database } from '../../client';
import { appendLedger } from '../../ledger';
import type { Person } from '../../queries/people';
import { settings } from '../../schema';

interface ChangeSetting<K extends SettingKey> {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  key: K;
  /** The revision that was looked at; 0 where the hospital had set nothing. */
  baseRevision: number;
  /** Every field of it as a form holds it, unread. */
  entry: unknown;
  because: string;
}

const MOST_REASON = 300;

/**
 * Changes one local setting, whole, and records the old value, the new one, who and why. What was saved meanwhile is not
 * overwritten: the refusal carries the value as it stands.
 */
export async function changeSetting<K extends SettingKey>(
  request: ChangeSetting<K>,
): Promise<Outcome<{ revision: number }, { revision: number; value: SettingValue<K> }>> {
  const { db, now, person, key, baseRevision } = request;
  if (!may(person, 'changeSettings')) return refused('notPermitted', settingWords.notPermitted(person.name));
  const read = readEntry(key, request.entry);
  const because = request.because.trim();
  const problems: Problem[] = [
    ...(read.ok ? [] : read.problems),
    ...(because.length < 8 || because.length > MOST_REASON
      ? [{ path: ['because'], code: 'no-reason', message: settingWords.reason(MOST_REASON) }]
      : []),
  ];
  if (!read.ok || problems.length > 0) return refusedFor(problems);
  return db.tx(async (write) => {
    const [row] = await write.select().from(settings).where(eq(settings.key, key));
    const before = parseSetting(key, row?.value);
    const revision = row?.revision ?? 0;
    if (revision !== baseRevision)
      return refused('conflict', settingWords.changed, { revision, value: before });
    const after = read.value;
    if (JSON.stringify(before) === JSON.stringify(after)) return refused('frozen', settingWords.same);
    const next = { value: after, revision: revision + 1, changedBy: person.id, changedAt: now };
    if (row)
      await write
        .update(settings)
        .set(next)
        .where(and(eq(settings.key, key), eq(settings.revision, revision)));
    else await write.insert(settings).values({ key, ...next });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'change-setting',
      subjectKind: 'setting',
      subjectId: key,
      detail: { before, after, because, revision: revision + 1 },
    });
    return { ok: true, value: { revision: revision + 1 } };
  });
}
