import { and, eq } from 'drizzle-orm';
import type { TheatreCountId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { canonicalJson } from '@/lib/ledger/canonical';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { sentTheatreEntry, type TheatreAct } from '@/lib/theatreCounts/act';
import { theatreStateOf } from '@/lib/theatreCounts/state';
import { theatreCountWords as words } from '@/lib/wording/theatre-counts';
import type { Database, Queries } from '../../client';
import type { Person } from '../../queries/people';
import {
  lastClosed,
  setsInTheatreFor,
  type TheatreCountRow,
  theatreEntriesOf,
} from '../../queries/theatreCounts/counted';
import { configurationLines, items, sets, theatreCountEntries } from '../../schema';
import { ownTheatreCount } from './own-theatre-count';

interface RecordTheatreEntry {
  db: Pick<Database, 'tx'>;
  now: string;
  person: Person;
  sessionId: string | null;
  countId: TheatreCountId;
  /** As sent from outside; parsed here. */
  entry: unknown;
}

/** Makes one figure of a count in theatre durable; sent again it is answered as before. Figures are never refused here. */
export async function recordTheatreEntry(
  request: RecordTheatreEntry,
): Promise<Outcome<{ id: string; enteredAt: string }, never>> {
  const { db, now, person, sessionId, countId } = request;
  const parsed = sentTheatreEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  return db.tx(async (write) => {
    const [before] = await write
      .select()
      .from(theatreCountEntries)
      .where(eq(theatreCountEntries.id, entry.id));
    if (before) {
      const same =
        before.countId === countId &&
        before.personId === person.id &&
        canonicalJson(before.act) === canonicalJson(entry.act);
      return same
        ? { ok: true, value: { id: entry.id, enteredAt: before.enteredAt } }
        : refused('conflict', words.idTaken);
    }
    if (!may(person, 'countInTheatre'))
      return refused('notPermitted', words.mayNot(person.name, 'count in theatre'));
    const own = await ownTheatreCount(write, countId, person);
    if (!own.ok) return own;
    const wrong = await whatIsWrong(write, own.value, entry.act);
    if (wrong) return wrong;
    await write.insert(theatreCountEntries).values({
      id: entry.id,
      countId,
      act: entry.act,
      personId: person.id,
      sessionId,
      doneAt: entry.doneAt,
      enteredAt: now,
    });
    return { ok: true, value: { id: entry.id, enteredAt: now } };
  });
}

/** What an act names must be there. */
async function whatIsWrong(
  write: Queries,
  count: TheatreCountRow,
  act: TheatreAct,
): Promise<Outcome<never, never> | null> {
  const invalid = (code: string, message: string) => refusedFor([{ path: ['act'], code, message }]);
  if (act.kind === 'added') {
    const inText = textProblems(act.name, ['act', 'name']);
    if (inText.length > 0) return refusedFor(inText);
    if (act.itemId === null) return null;
    const [item] = await write.select({ id: items.id }).from(items).where(eq(items.id, act.itemId));
    return item ? null : invalid('unknown-item', words.unknownItem);
  }
  if ((act.kind === 'implanted' || act.kind === 'discarded') && count.moment === 'first')
    return invalid('not-in-first', words.notInFirst);
  const there = new Set((await setsInTheatreFor(write, count.caseId)).map(({ id }) => id));
  if (act.kind === 'notOpened')
    return there.has(act.setId) ? null : invalid('unknown-set', words.unknownLine);
  if (act.thing.kind === 'line') {
    const { setId, lineId } = act.thing;
    const [line] = await write
      .select({ id: configurationLines.id })
      .from(configurationLines)
      .innerJoin(sets, eq(sets.versionId, configurationLines.versionId))
      .where(and(eq(configurationLines.id, lineId), eq(sets.id, setId)));
    return line && there.has(setId) ? null : invalid('unknown-line', words.unknownLine);
  }
  const { key } = act.thing;
  const own = theatreStateOf(await theatreEntriesOf(write, count.id));
  if (own.added.has(key)) return null;
  const first = await lastClosed(write, count.caseId, 'first');
  const before = first && theatreStateOf(await theatreEntriesOf(write, first.id));
  return before?.added.has(key) ? null : invalid('unknown-added', words.unknownAdded);
}
