import { and, eq } from 'drizzle-orm';
import { type BenchAct, benchAct, type SentEntry, sentEntry } from '@/lib/bench/act';
import { routesFor } from '@/lib/bench/routes';
import type { CountId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { canonicalJson } from '@/lib/ledger/canonical';
import type { Attestation } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { stockOwner } from '@/lib/stock/stock';
import { benchWords as words } from '@/lib/wording/bench';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { keptCatalogue } from '../../queries/caseKit';
import type { Person } from '../../queries/people';
import { benchEntries, configurationLines, items, sets, stock } from '../../schema';
import { addToHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { type OwnCount, ownOpenCount } from './own-count';
import { type PutIn, putIn } from './put-in';

interface RecordEntry {
  db: Pick<Database, 'tx' | 'read' | 'reader'>;
  now: string;
  /** Of the session the entry was made in, not of whoever is at the screen when it arrives. */
  person: Person;
  sessionId: string | null;
  countId: CountId;
  /** As sent from outside; parsed here. */
  entry: unknown;
  /** The other person who stood for a refill at the same screen. */
  second?: { person: Person; attestation: Attestation } | null;
}

export interface RecordedEntry {
  id: string;
  seq: number;
  enteredAt: string;
}

/**
 * Makes one act at the bench durable. The same entry sent again is answered as it was the first time, whatever happened
 * to the count since; nothing else is ever changed or taken back: an undo is an entry too.
 */
export async function recordEntry(request: RecordEntry): Promise<Outcome<RecordedEntry>> {
  const { db, now, person, countId, second = null } = request;
  const parsed = sentEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  const catalogue = entry.act.kind === 'refill' ? await keptCatalogue(db) : [];
  return db.tx(async (write) => {
    const before = await recordedBefore(write, countId, person, entry);
    if (before) return before;
    if (!mayEnter(person, entry.act))
      return refused('notPermitted', words.notPermitted(person.name, 'enter this'));
    const own = await ownOpenCount(write, countId, person);
    if (!own.ok) return own;
    const wrong = await whatIsWrong(write, own.value, entry.act);
    if (wrong) return wrong;
    let done: PutIn = { needsSecond: false };
    if (entry.act.kind === 'refill') {
      const moved = await putIn(write, {
        ...own.value,
        entry,
        act: entry.act,
        person,
        second,
        now,
        catalogue,
      });
      if (!moved.ok) return moved;
      done = moved.value;
    }
    if (entry.act.kind === 'undo') {
      const back = await takeBack(write, own.value, entry.act.entryId, person, entry, now);
      if (!back.ok) return back;
    }
    const [row] = await write
      .insert(benchEntries)
      .values({
        id: entry.id,
        countId,
        act: entry.act,
        personId: person.id,
        secondPersonId: second?.person.id ?? null,
        sessionId: request.sessionId,
        scanId: entry.scanId ?? null,
        needsSecond: done.needsSecond,
        doneAt: entry.doneAt,
        enteredAt: now,
      })
      .returning({ seq: benchEntries.seq });
    return { ok: true, value: { id: entry.id, seq: row?.seq ?? 0, enteredAt: now } };
  });
}

const mayEnter = ({ role }: Person, { kind }: BenchAct) =>
  kind === 'refill' ? may({ role }, 'refillSet') : may({ role }, 'countSet') || may({ role }, 'checkCount');

async function recordedBefore(
  write: Queries,
  countId: string,
  person: Person,
  entry: SentEntry,
): Promise<Outcome<RecordedEntry> | null> {
  const [row] = await write.select().from(benchEntries).where(eq(benchEntries.id, entry.id));
  if (!row) return null;
  const same =
    row.countId === countId &&
    row.personId === person.id &&
    row.doneAt === entry.doneAt &&
    canonicalJson(row.act) === canonicalJson(entry.act);
  return same
    ? { ok: true, value: { id: row.id, seq: row.seq, enteredAt: row.enteredAt } }
    : refused('conflict', words.entryTaken);
}

/** What an act names must be there. Figures are never refused here: what was counted is kept, and judged at closing. */
async function whatIsWrong(
  write: Queries,
  { count, set }: OwnCount,
  act: BenchAct,
): Promise<Outcome<never> | null> {
  const text = act.kind === 'note' ? act.text : act.kind === 'foreign' ? (act.note ?? '') : textOfPlace(act);
  const inText = textProblems(text, ['act', 'text']);
  if (inText.length > 0) return refusedFor(inText);
  if ('lineId' in act) {
    const [row] = await write
      .select({ kind: items.kind, use: items.use })
      .from(configurationLines)
      .innerJoin(items, eq(items.id, configurationLines.itemId))
      .where(and(eq(configurationLines.id, act.lineId), eq(configurationLines.versionId, set.versionId)));
    if (!row) return invalid(['act', 'lineId'], 'unknown-line', words.unknownLine);
    if (act.kind === 'fault' && !routesFor(row as never).includes(act.route))
      return invalid(['act', 'route'], 'route-not-open', words.routeNotOpen);
  }
  if ('itemId' in act) {
    const [row] = await write.select({ id: items.id }).from(items).where(eq(items.id, act.itemId));
    if (!row) return invalid(['act', 'itemId'], 'unknown-item', words.unknownItem);
  }
  if ('home' in act && act.home.kind === 'set') {
    const [row] = await write.select({ id: sets.id }).from(sets).where(eq(sets.id, act.home.setId));
    if (!row) return invalid(['act', 'home'], 'unknown-set', words.unknownSet);
  }
  if (act.kind === 'undo') {
    const [row] = await write.select().from(benchEntries).where(eq(benchEntries.id, act.entryId));
    const undoing = row && benchAct.parse(row.act).kind === 'undo';
    if (!row || row.countId !== count.id || undoing)
      return invalid(['act', 'entryId'], 'unknown-entry', words.unknownEntry);
  }
  return null;
}

function textOfPlace(act: BenchAct): string {
  if ('home' in act) return act.home.kind === 'elsewhere' ? act.home.where : '';
  return act.kind === 'refill' && act.from.kind === 'other' ? act.from.where : '';
}

const invalid = (path: string[], code: string, message: string) => refusedFor([{ path, code, message }]);

/** Undoing a refill puts its pieces back on the shelf they came from. */
async function takeBack(
  write: Queries,
  { count, set }: OwnCount,
  entryId: string,
  person: Person,
  undo: SentEntry,
  now: string,
): Promise<Outcome<null, never>> {
  const rows = await write.select().from(benchEntries).where(eq(benchEntries.countId, count.id));
  const undone = rows.some(({ act }) => {
    const one = benchAct.parse(act);
    return one.kind === 'undo' && one.entryId === entryId;
  });
  if (undone) return invalid(['act', 'entryId'], 'undone-already', words.undoneAlready);
  const target = rows.find(({ id }) => id === entryId);
  const act = target ? benchAct.parse(target.act) : null;
  if (act?.kind !== 'refill') return { ok: true, value: null };
  const [line] = await write.select().from(configurationLines).where(eq(configurationLines.id, act.lineId));
  if (!line) throw new Error(`${act.lineId} was refilled and is not on record`);
  if (act.from.kind === 'stock') await addToHeap(write, act.from.stockId, act.pieces);
  const [heap] =
    act.from.kind === 'stock' ? await write.select().from(stock).where(eq(stock.id, act.from.stockId)) : [];
  await recordMoves(write, [
    {
      act: 'takenOut',
      itemId: line.itemId,
      lot: heap?.lot ?? null,
      useBy: heap?.useBy ?? null,
      quantity: act.pieces,
      owner: heap ? stockOwner.parse(heap.owner) : 'ours',
      from: { setId: set.id, lineId: act.lineId },
      ...(heap ? { to: { stockId: heap.id } } : {}),
      reason: 'undone',
      source: undo.id,
      personId: person.id,
      doneAt: undo.doneAt,
      enteredAt: now,
    },
  ]);
  await appendLedger(write, {
    doneAt: undo.doneAt,
    enteredAt: now,
    personId: person.id,
    action: 'undo-refill',
    subjectKind: 'set',
    subjectId: set.id,
    detail: {
      countId: count.id,
      entryId: undo.id,
      undone: entryId,
      lineId: act.lineId,
      pieces: act.pieces,
      from: act.from,
    },
  });
  return { ok: true, value: null };
}
