import { and, eq, gte } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { findLedgerBreak, sha256 } from '@/db/ledger';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { importList, type ListAnswer } from '@/db/operations/theatre/import-list';
import { rowDigest } from '@/db/operations/theatre/list-facts';
import { moveCase } from '@/db/operations/theatre/move-case';
import { promiseSet } from '@/db/operations/theatre/promise-set';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { listPeople, type Person } from '@/db/queries/people';
import { cases, ledger, listRows, notices, setPromises, sets, theatres } from '@/db/schema';
import { caseId, type NewId, setId } from '@/lib/identity/ids';
import { readListFile } from '@/lib/theatre/import/readList';
import type { RowChoices } from '@/lib/theatre/import/settle';
import { fhirBundle, PATIENT_WORDS } from '../../fixtures/fhirList';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
const round: RoundTimes = { leadMinutes: 60, roundMinutes: () => 345 };
const NONE: RowChoices = { dateOrder: null, repeatedHour: null, urgencyWhereNone: null };
const HEAD = 'Theatre,Date,Start,Minutes,Region,Side,Surgeon,Urgency,Case reference,Row id';
const FIRST = 'Theatre 1,2026-02-10,08:30,90,Ankle,Left,Tobias Wray,Booked,,list-a';
const SECOND = 'Theatre 1,2026-02-10,10:00,60,Hand,Right,Ines Halloran,Soon,,list-b';

let db: Database;
let people: Person[];
let manager: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  people = await listPeople(db);
  manager = people.find(({ role }) => role === 'theatreManager') as Person;
});

const csv = (...rows: string[]) => `${[HEAD, ...rows].join('\r\n')}\r\n`;

async function ask(
  text: string,
  digest: string | null,
  more: { person?: Person; choices?: RowChoices; now?: string } = {},
) {
  const bytes = new TextEncoder().encode(text);
  const read = await readListFile(bytes, { sheet: null, columns: {} });
  if (!read.ok) throw new Error(read.fault.code);
  return importList({
    db,
    now: NOW,
    newId,
    draw: () => [made, made >> 5, made >> 10, 7].map((n) => n % 32),
    hospitalLetters: 'LM',
    person: manager,
    round,
    bytes,
    list: read.list,
    choices: NONE,
    digest,
    ...more,
  });
}

async function tried(text: string): Promise<ListAnswer> {
  const answer = await ask(text, null);
  if (!answer.ok) throw new Error(JSON.stringify(answer.refusal));
  return answer.value;
}
async function imported(text: string): Promise<ListAnswer> {
  const answer = await ask(text, (await tried(text)).digest);
  if (!answer.ok) throw new Error(JSON.stringify(answer.refusal));
  return answer.value;
}

const onThe = (day: string) =>
  db.read.select().from(cases).where(eq(cases.caseDate, day)).orderBy(cases.startsAt);
const acts = (action: string) => db.read.select().from(ledger).where(eq(ledger.action, action));

/** Every row of every table that an import may write to, as text. */
async function everything(): Promise<string> {
  const tables = [cases, ledger, listRows, notices, setPromises];
  const rows = [];
  for (const table of tables) rows.push(await db.read.select().from(table));
  return JSON.stringify(rows);
}

describe('trying a theatre list', () => {
  it('keeps nothing, whatever it would do', async () => {
    const [booked] = await db.read.select().from(cases).where(gte(cases.startsAt, NOW)).limit(1);
    if (!booked) throw new Error('the demo has no case to come');
    const before = await everything();
    const answer = await tried(csv(FIRST, `,2026-02-12,09:00,,,,,,${booked.reference},`));
    expect(answer.problems).toEqual([]);
    expect(answer.outcomes.map(({ kind }) => kind)).toEqual(['new', 'moved']);
    expect(await everything()).toBe(before);
  });

  it('says every problem, and what it would do with the rows that have none', async () => {
    const answer = await tried(csv(FIRST, SECOND.replace('Hand', 'Shoulder').replace('Ines', 'Inés')));
    expect(answer.problems.map(({ row, field, fault }) => [row, field, fault.code])).toEqual([
      [3, 'region', 'region-unknown'],
      [3, 'surgeon', 'surgeon-unknown'],
    ]);
    expect(answer.outcomes).toHaveLength(1);
  });
});

describe('importing a theatre list', () => {
  it('books each row as a person would, with one entry for the file', async () => {
    const text = csv(FIRST, SECOND);
    const { done } = await imported(text);
    const rows = await onThe('2026-02-10');
    expect(rows).toMatchObject([
      {
        theatreId: 'theatre_1',
        startsAt: '2026-02-10T08:30:00.000Z',
        region: 'ankle',
        limb: 'left',
        urgency: 'booked',
      },
      {
        startsAt: '2026-02-10T10:00:00.000Z',
        endsAt: '2026-02-10T11:00:00.000Z',
        region: 'hand',
        limb: 'right',
      },
    ]);
    expect(done).toEqual({ booked: rows.map(({ id }) => id), moved: [], linked: 2 });
    for (const { reference } of rows) expect(reference).toMatch(/^LM-26-[A-Z0-9]{4}$/);
    const booked = (await acts('book-case')).filter(({ subjectId }) => done?.booked.includes(subjectId));
    expect(booked).toHaveLength(2);
    expect(await acts('import-list')).toMatchObject([
      {
        personId: manager.id,
        subjectKind: 'theatreList',
        subjectId: sha256(text),
        detail: { format: 'csv', rows: 2, booked: done?.booked, moved: [], unchanged: 0, linked: 2 },
      },
    ]);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('does nothing the second time, also where cases were moved or cancelled meanwhile', async () => {
    const text = csv(FIRST, SECOND);
    const { digest } = await tried(text);
    await ask(text, digest);
    const before = await everything();
    // sent twice, as a lost answer makes a browser do
    expect(await ask(text, digest)).toMatchObject({
      ok: true,
      value: { done: { booked: [], moved: [], linked: 0 } },
    });
    expect(await everything()).toBe(before);
    const [first, second] = await onThe('2026-02-10');
    if (!first || !second) throw new Error('nothing was booked');
    const asking = (row: typeof first) => ({
      db,
      now: NOW,
      newId,
      person: manager,
      caseId: caseId.parse(row.id),
      baseRevision: row.revision,
    });
    await moveCase({
      ...asking(first),
      theatreId: 'theatre_3',
      startsAt: first.startsAt,
      endsAt: first.endsAt,
      round,
    });
    await cancelCase({ ...asking(second), because: 'fasting broken' });
    const then = await everything();
    const again = await tried(text);
    expect(again.importedBefore).toEqual({ at: NOW, by: manager.name });
    expect(await ask(text, again.digest)).toMatchObject({
      ok: true,
      value: { done: { booked: [], moved: [] } },
    });
    expect(await everything()).toBe(then);
  });

  it('knows rows again by their ids and by what they say, in another file', async () => {
    await imported(csv(FIRST, SECOND));
    const [first] = await onThe('2026-02-10');
    const moved = FIRST.replace('08:30', '13:00');
    const { outcomes, done } = await imported(csv(SECOND.replace(',list-b', ','), moved));
    expect(outcomes.map(({ kind }) => kind)).toEqual(['unchanged', 'moved']);
    expect(done).toMatchObject({ booked: [], moved: [first?.id] });
    expect(await onThe('2026-02-10')).toMatchObject([
      { startsAt: '2026-02-10T10:00:00.000Z' },
      { id: first?.id, revision: 2 },
    ]);
    // and a file that says what stands already does nothing, and writes nothing
    const before = await everything();
    expect((await imported(`${csv(moved, SECOND)}\r\n`)).done).toEqual({ booked: [], moved: [], linked: 0 });
    expect(await everything()).toBe(before);
  });

  it('keeps no row id, only its digest', async () => {
    await imported(csv(FIRST.replace('list-a', 'opaque-word-of-the-list')));
    expect(await db.read.select().from(listRows)).toMatchObject([
      { rowDigest: rowDigest('opaque-word-of-the-list') },
    ]);
    expect(await everything()).not.toContain('opaque-word-of-the-list');
  });

  it('lets cases change places, takes their sets along, and says first which sets are lost', async () => {
    await imported(csv(FIRST, SECOND));
    const [first, second] = await onThe('2026-02-10');
    if (!first || !second) throw new Error('nothing was booked');
    const asking = { db, now: NOW, newId, person: manager, caseId: caseId.parse(first.id), baseRevision: 1 };
    for (const set of ['set_sfs-02', 'set_sfl-02'])
      expect(await promiseSet({ ...asking, setId: setId.parse(set), round })).toMatchObject({ ok: true });
    const rival = await imported(csv('Theatre 2,2026-02-12,09:00,60,Foot,Left,Tobias Wray,Booked,,'));
    const [other] = await db.read
      .select()
      .from(cases)
      .where(eq(cases.id, rival.done?.booked[0] ?? ''));
    if (!other) throw new Error('nothing was booked');
    await promiseSet({ ...asking, caseId: caseId.parse(other.id), setId: setId.parse('set_sfs-02'), round });
    const text = csv(
      `,2026-02-12,08:30,,,,,,${first.reference},`,
      `,2026-02-10,08:30,,,,,,${second.reference},`,
    );
    const before = await everything();
    const { lost, digest } = await tried(text);
    expect(lost).toMatchObject([{ reference: first.reference, setCode: 'SFS-02' }]);
    expect(await everything()).toBe(before);
    expect(await ask(text, digest)).toMatchObject({ ok: true, value: { lost } });
    expect(await db.read.select().from(setPromises).where(eq(setPromises.caseId, first.id))).toMatchObject([
      { setId: 'set_sfl-02', fromAt: '2026-02-12T07:30:00.000Z' },
    ]);
    expect(await onThe('2026-02-10')).toMatchObject([
      { id: second.id, startsAt: '2026-02-10T08:30:00.000Z' },
    ]);
  });

  it('is all or nothing: one row that cannot be keeps the others out', async () => {
    const before = await everything();
    const text = csv(FIRST, SECOND, FIRST.replace('list-a', 'list-c'));
    const { digest, problems } = await tried(text);
    expect(problems.map(({ row, fault }) => [row, fault.code])).toEqual([
      [2, 'rows-collide'],
      [4, 'rows-collide'],
    ]);
    const answer = await ask(text, digest);
    expect(answer).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    if (!answer.ok)
      expect(answer.refusal.problems.map(({ path }) => path)).toEqual([
        ['rows', 2, 'start'],
        ['rows', 4, 'start'],
      ]);
    expect(await everything()).toBe(before);
  });

  it('takes everything back when a write fails in the middle', async () => {
    const text = csv(FIRST, SECOND);
    const { digest } = await tried(text);
    const before = await everything();
    let drawn = 0;
    const bytes = new TextEncoder().encode(text);
    const read = await readListFile(bytes, { sheet: null, columns: {} });
    if (!read.ok) throw new Error(read.fault.code);
    const asked = importList({
      db,
      now: NOW,
      newId,
      draw: () => {
        drawn += 1;
        if (drawn === 2) throw new Error('the disk is full');
        return [1, 2, 3, 4];
      },
      hospitalLetters: 'LM',
      person: manager,
      round,
      bytes,
      list: read.list,
      choices: NONE,
      digest,
    });
    await expect(asked).rejects.toThrow('the disk is full');
    expect(drawn).toBe(2);
    expect(await everything()).toBe(before);
  });

  it('is refused when it would come out otherwise than the try that was seen', async () => {
    await imported(csv(FIRST));
    const [first] = await onThe('2026-02-10');
    if (!first) throw new Error('nothing was booked');
    const text = csv(`,2026-02-12,09:00,,,,,,${first.reference},`);
    const { digest } = await tried(text);
    const later = new Date(Date.parse(first.startsAt) + 3_600_000).toISOString();
    const end = new Date(Date.parse(first.endsAt) + 3_600_000).toISOString();
    await moveCase({
      db,
      now: NOW,
      newId,
      person: manager,
      caseId: caseId.parse(first.id),
      baseRevision: 1,
      theatreId: first.theatreId,
      startsAt: later,
      endsAt: end,
      round,
    });
    const before = await everything();
    expect(await ask(text, digest)).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect(await ask(text, '0'.repeat(64))).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect(await everything()).toBe(before);
    // seen anew, it goes
    expect((await imported(text)).done).toMatchObject({ moved: [first.id] });
  });

  it('of two people who import at once one does, and the other sees why', async () => {
    const [a, b] = [csv(FIRST), csv(SECOND.replace('10:00', '09:00'))];
    const [first, second] = [(await tried(a)).digest, (await tried(b)).digest];
    const answers = await Promise.all([ask(a, first), ask(b, second)]);
    expect(answers.map(({ ok }) => ok)).toEqual([true, false]);
    expect(JSON.stringify(answers[1])).toContain('theatre-taken');
    expect(await onThe('2026-02-10')).toHaveLength(1);
  });

  it('never cancels a case that the file does not name', async () => {
    await imported(csv(FIRST, SECOND));
    const { notNamed } = await imported(csv(SECOND.replace('10:00', '10:30')));
    expect(notNamed.map(({ startsAt }) => startsAt)).toEqual(['2026-02-10T08:30:00.000Z']);
    expect(await onThe('2026-02-10')).toMatchObject([{ cancelledAt: null }, { cancelledAt: null }]);
  });

  it('moves no case whose set is in theatre', async () => {
    await imported(csv(FIRST));
    const [first] = await onThe('2026-02-10');
    if (!first) throw new Error('nothing was booked');
    await db.tx((write) =>
      write.update(sets).set({ caseId: first.id, step: 'inTheatre' }).where(eq(sets.id, 'set_sfs-02')),
    );
    const { problems } = await tried(csv(FIRST.replace('08:30', '13:00')));
    expect(problems.map(({ fault }) => fault.code)).toEqual(['case-begun']);
  });

  it('is for those who keep the theatre list', async () => {
    const text = csv(FIRST);
    for (const person of people) {
      const may = ['surgeon', 'scrubPractitioner', 'theatreManager', 'administrator'].includes(person.role);
      const answer = await ask(text, null, { person });
      expect([person.role, answer.ok]).toEqual([person.role, may]);
      if (!answer.ok) expect(answer.refusal.because).toBe('notPermitted');
    }
  });

  it.each(['R4', 'R5'] as const)(
    'of FHIR %s books the case and keeps no word of the patient',
    async (version) => {
      const bundle = fhirBundle({
        version,
        start: '2026-06-10T08:30:00+01:00',
        end: '2026-06-10T10:00:00+01:00',
        theatre: 'Theatre 1',
        surgeon: { given: ['Tobias'], family: 'Wray' },
      });
      const { done } = await imported(JSON.stringify(bundle));
      expect(await onThe('2026-06-10')).toMatchObject([
        {
          id: done?.booked[0],
          startsAt: '2026-06-10T07:30:00.000Z',
          region: 'distalRadius',
          limb: 'left',
          urgency: 'soon',
        },
      ]);
      const all = await everything();
      for (const word of PATIENT_WORDS) expect(all).not.toContain(word);
    },
  );

  it('of the most rows that are read is one transaction', async () => {
    const rooms = await db.read.select().from(theatres);
    const rows = Array.from({ length: 500 }, (_, at) => {
      const room = rooms[at % rooms.length]?.name ?? '';
      const day = new Date(Date.UTC(2026, 2, 1 + Math.floor(at / 40))).toISOString().slice(0, 10);
      const hour = String(7 + (Math.floor(at / rooms.length) % 10)).padStart(2, '0');
      return `"${room}",${day},${hour}:00,60,Ankle,Left,Tobias Wray,Booked,,row-${at}-x`;
    });
    const { done } = await imported(csv(...rows));
    expect(done?.booked).toHaveLength(500);
    expect(
      await db.read
        .select()
        .from(cases)
        .where(and(gte(cases.caseDate, '2026-03-01'), eq(cases.region, 'ankle'))),
    ).toHaveLength(500);
  });
});
