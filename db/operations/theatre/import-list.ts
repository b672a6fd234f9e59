import { createHash } from 'node:crypto';
import { and, eq } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { canonicalJson } from '@/lib/ledger/canonical';
import { may } from '@/lib/people/permissions';
import type { ReadList } from '@/lib/theatre/import/readList';
import type { RowChoices } from '@/lib/theatre/import/settle';
import { type ListTried, tryList } from '@/lib/theatre/import/tryList';
import { HOSPITAL_ZONE } from '@/lib/theatre/localTime';
import { importProblemOf, listImportWords as words } from '@/lib/wording/list-import';
import { theatreListWords } from '@/lib/wording/theatre-list';
import type { Database, Queries } from '../../client';
import { appendLedger, sha256 } from '../../ledger';
import type { Person } from '../../queries/people';
import { ledger, people } from '../../schema';
import type { BookedCase } from '../book-case';
import { hospitalNames, listNow } from './list-facts';
import { bookRows, linkRows, moveRows } from './list-writes';
import type { LostPromise } from './move-inside';
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
  /** The cases that were booked, by row of the file; none after a try. */
  bookedRows: ReadonlyMap<number, BookedCase>;
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
  if (!may(person, 'keepTheatreList') || !may(person, 'bookCase'))
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
  const answer = (
    lost: LostPromise[],
    done: ListAnswer['done'] = null,
    bookedRows: ListAnswer['bookedRows'] = new Map(),
  ): ListAnswer => ({
    ...tried,
    digest: digestOf(file, tried, lost),
    lost,
    importedBefore,
    theatres: stands.theatres,
    bookedRows,
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
  const lost = await moveRows(write, request, outcomes);
  if (digest === null) throw new TakenBack({ ok: true, value: answer(lost) });
  if (digestOf(file, tried, lost) !== digest)
    throw new TakenBack(refused('conflict', words.changedMeanwhile));
  const booked = await bookRows(write, request, outcomes);
  if (!booked.ok) throw new TakenBack(refusedFor(booked.problems));
  const ids = [...booked.value.values()].map(({ id }) => id);
  const linked = await linkRows(write, now, outcomes, booked.value);
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
      booked: ids,
      moved,
      unchanged: outcomes.length - ids.length - moved.length,
      linked,
    },
  });
  return { ok: true, value: answer(lost, { booked: ids, moved, linked }, booked.value) };
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
