import { createHash } from 'node:crypto';
import { and, desc, eq } from 'drizzle-orm';
import { z } from 'zod';
import { EXCHANGE_LIMITS } from '@/lib/exchange/limits';
import type { ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { type ColumnChoice, type Mapping, mapColumns } from '@/lib/exchange/mapping';
import type { RowOutcome } from '@/lib/exchange/outcome';
import type { FileFault, ReadFile } from '@/lib/exchange/readFile';
import { type CellProblem, type RowsRead, readRows } from '@/lib/exchange/readRows';
import { importId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { canonicalJson } from '@/lib/ledger/canonical';
import { may } from '@/lib/people/permissions';
import { fileWords, headingOf, problemWords, exchangeWords as words } from '@/lib/wording/exchange';
import type { Database, Queries } from '../../client';
import { appendLedger, sha256 } from '../../ledger';
import { columnMappings, importEffects, imports, people } from '../../schema';
import { LIST_WORKS } from './list-works';
import type { Effect, ExchangeChoices, WorkRequest } from './work';

interface BringIn extends WorkRequest {
  db: Pick<Database, 'read' | 'tx'>;
  list: ListKind;
  /** The file as it is, for its digest, and as it was read. */
  bytes: Uint8Array;
  file: ReadFile;
  choices: ExchangeChoices;
  /** `null` tries it and writes nothing; else what the try that a person saw came to. */
  seen: Seen | null;
}

/** What a try came to: a digest of the whole, and of each outcome in the order of the file. */
export interface Seen {
  digest: string;
  marks: readonly string[];
}

export interface BroughtIn extends Seen {
  mapping: Mapping;
  /** Columns found by likeness only, that nobody has confirmed. */
  undecided: string[];
  read: RowsRead;
  outcomes: RowOutcome[];
  problems: CellProblem[];
  /** This very file, read the same way, came in before. */
  before: { at: string; by: string } | null;
  /** What was done; `null` after a try. */
  done: { importId: string; added: number; changed: number } | null;
}

/** Ends a write that is not to stand, with its refusal. */
class TakenBack extends Error {
  constructor(readonly refusal: Outcome<never, never>) {
    super('taken back');
  }
}

/**
 * Brings a list in, or says what that would do. Trying reads only. Bringing in is all or nothing: every row by the operation
 * of its screen, each with its own entry in the ledger, in one transaction; refused with every problem at once, and when
 * anything would come out otherwise than the try that was seen, which is then named.
 */
export async function bringIn(request: BringIn): Promise<Outcome<BroughtIn, never>> {
  const { db, person, list, seen } = request;
  if (!may(person, LISTS[list].bringIn)) return refused('notPermitted', words.mayNot(person.name));
  if (seen === null) return tried(db.read, request);
  try {
    return await db.tx(async (write) => {
      const now = await tried(write, request);
      if (!now.ok) return now;
      return applyAll(write, request, now.value, seen);
    });
  } catch (error) {
    if (error instanceof TakenBack) return error.refusal;
    throw error;
  }
}

async function tried(read: Queries, request: BringIn): Promise<Outcome<BroughtIn, never>> {
  const { list, file, choices, person, now, bytes } = request;
  const [info, work] = [LISTS[list], LIST_WORKS[list]];
  const bare = mapColumns(file.rows, info, { asked: choices.columns, remembered: null });
  if (bare === null) return fileRefused({ code: 'no-headings' });
  const remembered = await mappingOf(read, list, bare.signature);
  const mapping = remembered
    ? (mapColumns(file.rows, info, { asked: choices.columns, remembered }) ?? bare)
    : bare;
  const under = file.rows.filter(({ row }) => row > mapping.headingRow);
  if (under.length === 0) return fileRefused({ code: 'no-rows' });
  if (under.length > EXCHANGE_LIMITS.rows) return fileRefused({ code: 'too-many-rows', rows: under.length });
  const rows = readRows(file.rows, mapping, info, choices, await work.known(read));
  const planned = await work.plan(read, rows.rows, { choices, person, now });
  const marks = planned.outcomes.map(markOf);
  const fileSha256 = createHash('sha256').update(bytes).digest('hex');
  const readAs = readAsOf(mapping, choices);
  const value: BroughtIn = {
    mapping,
    undecided: Object.entries(mapping.chosen).flatMap(([key, { by }]) => (by === 'likely' ? [key] : [])),
    read: rows,
    outcomes: planned.outcomes,
    problems: [
      ...rows.problems,
      ...planned.problems.filter(notTold(rows.problems)),
      ...tooMany(planned.outcomes),
    ].sort((a, b) => (a.row ?? 0) - (b.row ?? 0)),
    digest: sha256(canonicalJson({ list, fileSha256, readAs, marks })),
    marks,
    before: await importedBefore(read, list, { fileSha256, readAs }),
    done: null,
  };
  return { ok: true, value };
}

/** What could not be read is told as that, and not once more by what it then lacks. */
function notTold(told: readonly CellProblem[]): (problem: CellProblem) => boolean {
  const cells = new Set(told.map(({ row, column }) => `${row} ${column}`));
  return ({ row, column }) => column === null || !cells.has(`${row} ${column}`);
}

/** One write holds up all others, so it has an end. */
function tooMany(outcomes: readonly RowOutcome[]): CellProblem[] {
  const changes = outcomes.filter(({ kind }) => kind !== 'unchanged').length;
  if (changes <= EXCHANGE_LIMITS.changes) return [];
  const sentence = words.tooManyChanges(changes);
  return [{ row: null, column: null, value: null, code: 'too-many-changes', fault: null, sentence }];
}

const fileRefused = (fault: FileFault): Outcome<never, never> =>
  refusedFor([{ path: ['file'], code: fault.code, message: fileWords(fault) }]);

const readAsOf = ({ chosen }: Mapping, { columns: _asked, ...choices }: ExchangeChoices): string =>
  sha256(
    canonicalJson({
      columns: Object.fromEntries(Object.entries(chosen).map(([key, { number }]) => [key, number])),
      choices,
    }),
  );

/** Of what one outcome does to what: words and places in the file are no part of it. */
const markOf = ({ kind, id, revision, changes, work }: RowOutcome): string =>
  sha256(canonicalJson({ kind, id, revision, changes, work })).slice(0, 16);

async function applyAll(
  write: Queries,
  request: BringIn,
  now: BroughtIn,
  seen: Seen,
): Promise<Outcome<BroughtIn, never>> {
  const { list, person, newId, bytes, choices } = request;
  const info = LISTS[list];
  if (now.undecided.length > 0)
    return refused('invalid', words.notDecided(now.undecided.map((key) => `“${headingOf(info, key)}”`)));
  if (now.read.questions.length > 0) return refused('invalid', words.notAnswered);
  if (now.problems.length > 0) return refusedFor(now.problems.map((problem) => asProblem(problem, list)));
  if (now.digest !== seen.digest) return refused('conflict', words.changedMeanwhile(nowOther(now, seen)));
  const effects: Effect[] = [];
  const problems: Problem[] = [];
  const changing = now.outcomes.filter(({ kind }) => kind !== 'unchanged');
  if (changing.length === 0) return refused('invalid', words.nothingToDo);
  for (const outcome of changing) {
    const done = await LIST_WORKS[list].apply(write, outcome, { ...request, choices });
    if (done.ok) effects.push(...done.value);
    else
      problems.push(
        ...done.refusal.problems.map((problem) => ({
          ...problem,
          path: ['rows', outcome.rows[0] ?? 0],
          message: `Row ${outcome.rows[0]}, ${outcome.name}: ${problem.message}`,
        })),
      );
  }
  if (problems.length > 0) throw new TakenBack(refusedFor(problems));
  const id = importId.parse(newId('import'));
  const count = (kind: RowOutcome['kind']) => now.outcomes.filter((one) => one.kind === kind).length;
  const counts = { added: count('new'), changed: count('changed'), unchanged: count('unchanged') };
  const fileSha256 = createHash('sha256').update(bytes).digest('hex');
  const readAs = readAsOf(now.mapping, choices);
  const at = request.now;
  await write
    .insert(imports)
    .values({ id, list, fileSha256, readAs, ...counts, broughtInBy: person.id, broughtInAt: at });
  await keepEffects(write, id, effects);
  await keepMapping(write, list, now.mapping, { by: person.id, at });
  await appendLedger(write, {
    doneAt: at,
    enteredAt: at,
    personId: person.id,
    action: 'bring-in-list',
    subjectKind: 'import',
    subjectId: id,
    detail: { list, fileSha256, readAs, rows: now.read.rows.length, ...counts },
  });
  return {
    ok: true,
    value: { ...now, done: { importId: id, added: counts.added, changed: counts.changed } },
  };
}

function asProblem(problem: CellProblem, list: ListKind): Problem {
  const heading = headingOf(LISTS[list], problem.column);
  const at = [
    ...(problem.row === null ? [] : [`row ${problem.row}`]),
    ...(heading ? [`“${heading}”`] : []),
  ].join(', ');
  const sentence = problemWords(problem, LISTS[list]);
  return {
    path: ['rows', problem.row ?? 0, ...(problem.column ? [problem.column] : [])],
    code: problem.code,
    message: at === '' ? sentence : `${at.charAt(0).toUpperCase()}${at.slice(1)}: ${sentence}`,
  };
}

const MOST_NAMED = 10;

/** What would come out otherwise than it was seen, by name. */
function nowOther({ outcomes, marks }: BroughtIn, seen: Seen): string[] {
  const known = new Set(seen.marks);
  const others = outcomes.flatMap(({ name }, at) => (known.has(marks[at] ?? '') ? [] : [name]));
  const more = others.length - MOST_NAMED;
  return more > 0 ? [...others.slice(0, MOST_NAMED), `${more} more`] : others;
}

const EFFECTS_AT_A_TIME = 500;

async function keepEffects(write: Queries, id: string, effects: readonly Effect[]): Promise<void> {
  const rows = effects.map((effect, at) => ({ importId: id, effectNo: at + 1, ...effect }));
  for (let from = 0; from < rows.length; from += EFFECTS_AT_A_TIME)
    await write.insert(importEffects).values(rows.slice(from, from + EFFECTS_AT_A_TIME));
}

/** Files with the same headings are read the same way from now on, until somebody decides otherwise. */
async function keepMapping(
  write: Queries,
  list: ListKind,
  { chosen, signature }: Mapping,
  { by, at }: { by: string; at: string },
): Promise<void> {
  const columns = Object.fromEntries(Object.entries(chosen).map(([key, { number }]) => [key, number]));
  const kept = { columns, keptBy: by, keptAt: at };
  await write
    .insert(columnMappings)
    .values({ list, signature: sha256(signature), ...kept })
    .onConflictDoUpdate({ target: [columnMappings.list, columnMappings.signature], set: kept });
}

const columnChoice = z.record(z.string(), z.number().int().min(1).nullable());

async function mappingOf(read: Queries, list: ListKind, signature: string): Promise<ColumnChoice | null> {
  const [row] = await read
    .select()
    .from(columnMappings)
    .where(and(eq(columnMappings.list, list), eq(columnMappings.signature, sha256(signature))));
  return row ? columnChoice.parse(row.columns) : null;
}

async function importedBefore(
  read: Queries,
  list: ListKind,
  { fileSha256, readAs }: { fileSha256: string; readAs: string },
): Promise<BroughtIn['before']> {
  const [row] = await read
    .select({ at: imports.broughtInAt, by: people.name })
    .from(imports)
    .innerJoin(people, eq(people.id, imports.broughtInBy))
    .where(and(eq(imports.list, list), eq(imports.fileSha256, fileSha256), eq(imports.readAs, readAs)))
    .orderBy(desc(imports.broughtInAt))
    .limit(1);
  return row ?? null;
}
