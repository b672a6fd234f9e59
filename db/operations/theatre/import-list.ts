import { createHash } from 'node:crypto';
import { and, eq } from 'drizzle-orm';
import { type NewId, personId, theatreId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { canonicalJson } from '@/lib/ledger/canonical';
import { may } from '@/lib/people/permissions';
import type { ReadList } from '@/lib/theatre/import/readList';
import type { RowChoices } from '@/lib/theatre/import/settle';
import { type ListTried, tryList } from '@/lib/theatre/import/tryList';
import { HOSPITAL_ZONE, wallClock } from '@/lib/theatre/localTime';
import { importProblemOf, listImportWords as words } from '@/lib/wording/list-import';
import { theatreListWords } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import { appendLedger, sha256 } from '../../ledger';
import type { Person } from '../../queries/people';
import { cases, ledger, listRows, people } from '../../schema';
import { bookInside } from '../book-case';
import { hospitalNames, listNow, rowDigest } from './list-facts';
import { type LostPromise, moveInside } from './move-inside';
import type { RoundTimes } from './promises';

interface ImportList {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  /** Four whole numbers from 0 to 31, drawn at random, for each new reference. */
  draw: () => number[];
  hospitalLetters: string;
  person: Person;
  round: RoundTimes;
  /** The file as it is, for its digest, and as it was read. */
  bytes: Uint8Array;
  list: ReadList;
  choices: RowChoices;
  /** `null` tries it and keeps nothing; else the digest of the try that a person has seen. */
  digest: string | null;
  zone?: string;
}

export interface ListAnswer extends ListTried {
  /** Of all that importing would do. It is other once anything is. */
  digest: string;
  /** Promised sets that moved cases could no longer count on. */
  lost: LostPromise[];
  /** This very file, read the same way, is imported already; then nothing is done. */
  importedBefore: { at: string; by: string | null } | null;
  /** Every theatre, by name. */
  theatres: readonly { id: string; name: string }[];
  /** What was done; `null` after a try. */
  done: { booked: string[]; moved: string[]; linked: number } | null;
}

/** Ends a transaction whose writes are not to stand, with what they came to. */
class TakenBack extends Error {
  constructor(readonly answer: Outcome<ListAnswer, never>) {
    super('taken back');
  }
}

/**
 * Imports a theatre list, or says what that would do: all of it or nothing. Each case is booked and moved as a person would
 * do it; none is cancelled. An import is refused with every problem at once, and when anything would come out otherwise than
 * the try that was seen. The same file a second time does nothing.
 */
export async function importList(request: ImportList): Promise<Outcome<ListAnswer, never>> {
  const { db, person, bytes, choices, list } = request;
  if (!may(person.role, 'keepTheatreList') || !may(person.role, 'bookCase'))
    return refused('notPermitted', theatreListWords.mayNotKeepList(person.name));
  const fileSha256 = createHash('sha256').update(bytes).digest('hex');
  const { understood } = list;
  const columns = understood.format === 'fhir' ? null : understood.columns.chosen;
  const sheet = understood.format === 'xlsx' ? understood.sheet : null;
  const readAs = sha256(canonicalJson({ choices, columns, sheet }));
  try {
    return await db.tx((write) => importInside(write, request, { fileSha256, readAs }));
  } catch (error) {
    if (error instanceof TakenBack) return error.answer;
    throw error;
  }
}

interface FileId {
  fileSha256: string;
  /** Digest of how the file was read. */
  readAs: string;
}

async function importInside(
  write: Queries,
  request: ImportList,
  file: FileId,
): Promise<Outcome<ListAnswer, never>> {
  const { now, list, choices, digest, zone = HOSPITAL_ZONE } = request;
  const stands = await listNow(write, list, now);
  const tried = tryList(list, await hospitalNames(write, zone, now), stands, choices);
  const importedBefore = await imported(write, file);
  const answer = (lost: LostPromise[], done: ListAnswer['done'] = null): ListAnswer => ({
    ...tried,
    digest: digestOf(file, tried, lost),
    lost,
    importedBefore,
    theatres: stands.theatres,
    done,
  });
  const { outcomes, problems } = tried;
  const nothing = outcomes.every((one) => one.kind === 'unchanged' && !one.links);
  if (importedBefore !== null || (problems.length === 0 && nothing)) {
    const done = digest === null ? null : { booked: [], moved: [], linked: 0 };
    return { ok: true, value: answer([], done) };
  }
  if (problems.length > 0)
    return digest === null ? { ok: true, value: answer([]) } : refusedFor(problems.map(importProblemOf));
  const lost = await moveAll(write, request, tried);
  if (digest === null) throw new TakenBack({ ok: true, value: answer(lost) });
  if (digestOf(file, tried, lost) !== digest)
    throw new TakenBack(refused('conflict', words.changedMeanwhile));
  const booked = await bookAll(write, request, tried);
  const linked = await linkAll(write, request, tried, booked);
  const moved = outcomes.flatMap((one) => (one.kind === 'moved' ? [one.listed.id] : []));
  await appendLedger(write, {
    doneAt: now,
    enteredAt: now,
    personId: request.person.id,
    action: 'import-list',
    subjectKind: 'theatreList',
    subjectId: file.fileSha256,
    detail: {
      format: list.understood.format,
      readAs: file.readAs,
      rows: list.rows.length,
      booked: [...booked.values()],
      moved,
      unchanged: outcomes.length - booked.size - moved.length,
      linked,
    },
  });
  return { ok: true, value: answer(lost, { booked: [...booked.values()], moved, linked }) };
}

/** Of what importing would do, case by case: the order of rows and their words are no part of it. */
function digestOf(
  { fileSha256, readAs }: FileId,
  { outcomes }: ListTried,
  lost: readonly LostPromise[],
): string {
  const effects = outcomes.map((one) => {
    if (one.kind === 'unchanged')
      return { row: one.row, id: one.listed.id, revision: one.listed.revision, links: one.links };
    const { theatre, startsAt, endsAt } = one.to;
    const to = { theatreId: theatre.id, startsAt, endsAt };
    if (one.kind === 'moved') return { row: one.row, id: one.listed.id, revision: one.listed.revision, to };
    const { region, limb, surgeon, urgency } = one;
    return { row: one.row, to, region, limb, surgeonId: surgeon.id, urgency };
  });
  const gone = lost.map(({ caseId, setId }) => `${caseId} ${setId}`).sort();
  return sha256(canonicalJson({ fileSha256, readAs, effects, gone }));
}

/** When and by whom this file was imported, read the same way. */
async function imported(
  write: Queries,
  { fileSha256, readAs }: FileId,
): Promise<ListAnswer['importedBefore']> {
  const entries = await write
    .select({ at: ledger.doneAt, detail: ledger.detail, by: people.name })
    .from(ledger)
    .leftJoin(people, eq(people.id, ledger.personId))
    .where(and(eq(ledger.subjectKind, 'theatreList'), eq(ledger.subjectId, fileSha256)));
  const same = entries.find(({ detail }) => (detail as { readAs?: unknown }).readAs === readAs);
  return same ? { at: same.at, by: same.by } : null;
}

async function moveAll(write: Queries, request: ImportList, { outcomes }: ListTried): Promise<LostPromise[]> {
  const moves = [];
  for (const one of outcomes) {
    if (one.kind !== 'moved') continue;
    const [row] = await write.select().from(cases).where(eq(cases.id, one.listed.id));
    if (!row) throw new Error(`${one.listed.reference} was there a moment ago`);
    const { theatre, startsAt, endsAt } = one.to;
    moves.push({ row, theatreId: theatre.id, startsAt, endsAt });
  }
  if (moves.length === 0) return [];
  const { lost } = await moveInside(write, { ...request, moves });
  return lost;
}

/** Books the new cases; their ids by row. The list has been looked at in this transaction, so none can be in the way. */
async function bookAll(
  write: Queries,
  request: ImportList,
  { outcomes }: ListTried,
): Promise<ReadonlyMap<number, string>> {
  const booked = new Map<number, string>();
  for (const one of outcomes) {
    if (one.kind !== 'new') continue;
    const { region, limb, urgency, to } = one;
    const { date, time } = wallClock(to.startsAt, request.zone);
    const answer = await bookInside(write, {
      ...request,
      booking: {
        theatreId: theatreId.parse(to.theatre.id),
        surgeonId: personId.parse(one.surgeon.id),
        date,
        time,
        minutes: (Date.parse(to.endsAt) - Date.parse(to.startsAt)) / 60_000,
        startsAt: to.startsAt,
        endsAt: to.endsAt,
        region,
        limb,
        urgency,
        startId: null,
      },
    });
    if (!answer.ok) throw new TakenBack(refusedFor(answer.problems));
    booked.set(one.row, answer.value.id);
  }
  return booked;
}

/** From now on each row that has an id is known by it. */
async function linkAll(
  write: Queries,
  { now }: ImportList,
  { outcomes }: ListTried,
  booked: ReadonlyMap<number, string>,
): Promise<number> {
  let linked = 0;
  for (const one of outcomes) {
    if (one.rowId === null || (one.kind === 'unchanged' && !one.links)) continue;
    const caseId = one.kind === 'new' ? booked.get(one.row) : one.listed.id;
    if (caseId === undefined) throw new Error(`row ${one.row} was not booked`);
    const made = await write
      .insert(listRows)
      .values({ rowDigest: rowDigest(one.rowId), caseId, knownSince: now })
      .onConflictDoNothing()
      .returning({ caseId: listRows.caseId });
    linked += made.length;
  }
  return linked;
}
