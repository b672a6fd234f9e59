import { eq } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { appendLedger } from '@/db/ledger';
import { bookCase } from '@/db/operations/book-case';
import { cancelCase } from '@/db/operations/theatre/cancel-case';
import { markListSeen } from '@/db/operations/theatre/mark-list-seen';
import { moveCase } from '@/db/operations/theatre/move-case';
import { promiseSet } from '@/db/operations/theatre/promise-set';
import { chooseNotices } from '@/db/operations/turns/choose-notices';
import { tellPerson } from '@/db/operations/turns/tell-person';
import { listPeople, type Person } from '@/db/queries/people';
import { listChanges } from '@/db/queries/theatre/listChanges';
import { kindsOff, noticesFor } from '@/db/queries/turns/notices';
import { cases, ledger } from '@/db/schema';
import { caseId, type NewId, personId, setId, theatreId } from '@/lib/identity/ids';
import { plainDate } from '@/lib/quantities/plainDate';
import { LIST_ACTS, listChangeFrom } from '@/lib/theatre/listChange';
import { MAY_BE_OFF, NOTICE_KINDS } from '@/lib/turns/notice';
import { listChangeSentence } from '@/lib/wording/list-changes';
import { demoDatabase } from '../../setup/database';

const NOW = '2026-01-14T07:00:00.000Z';
const LATER = '2026-01-14T08:00:00.000Z';
/** Ines Halloran's, tomorrow. */
const CASE = caseId.parse('case_lm-26-m4vq');
const round = { leadMinutes: 60, roundMinutes: () => 345 };

let db: Database;
let ines: Person;
let tobias: Person;
let manager: Person;
let wren: Person;
let made = 0;
const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

beforeEach(async () => {
  db = await demoDatabase();
  const people = await listPeople(db);
  const one = (id: string) => people.find((person) => person.id === `person_${id}`) as Person;
  [ines, tobias, manager, wren] = [
    one('ines-halloran'),
    one('tobias-wray'),
    one('gwen-sallis'),
    one('wren-adeyemi'),
  ];
});

async function asking(person: Person, now = NOW) {
  const [row] = await db.read.select().from(cases).where(eq(cases.id, CASE));
  return { db, now, newId, person, caseId: CASE, baseRevision: row?.revision ?? 0 };
}
const move = async (person: Person, day: string) =>
  moveCase({
    ...(await asking(person)),
    theatreId: 'theatre_2',
    startsAt: `${day}T15:30:00.000Z`,
    endsAt: `${day}T17:00:00.000Z`,
    round,
  });
const kinds = async (person: Person, now = NOW) =>
  (await listChanges(db, person, now)).cases.flatMap(({ changes }) =>
    changes.map(({ change }) => change.kind),
  );

const names = ({ names: { theatres, sets } }: Awaited<ReturnType<typeof listChanges>>) => ({
  theatre: (id: string) => theatres.find((one) => one.id === id)?.name ?? id,
  set: (id: string) => sets.find((one) => one.id === id)?.name ?? id,
});

describe('what changed on one’s list', () => {
  it('is what others did about one’s cases since one last looked, and nothing twice', async () => {
    expect(await kinds(ines)).toEqual([]);
    expect(
      await promiseSet({ ...(await asking(manager)), setId: setId.parse('set_clo-02'), round }),
    ).toMatchObject({ ok: true });
    expect(await move(manager, '2026-01-22')).toMatchObject({ ok: true });
    // of one case the newest first; what another surgeon's list is does not concern her
    expect(await kinds(ines)).toEqual(['moved', 'promised']);
    expect(await kinds(tobias)).toEqual([]);
    // who did it is not told of it, and who has no cases has the whole list
    expect(await kinds(manager)).toEqual([]);
    expect(await kinds(wren)).toEqual(['moved', 'promised']);

    const { upTo, own, since } = await listChanges(db, ines, NOW);
    expect([own, since]).toEqual([true, null]);
    await markListSeen({ db, now: LATER, person: ines, upTo });
    expect(await kinds(ines)).toEqual([]);
    expect((await listChanges(db, ines, LATER)).since).toBe(LATER);
    expect(await kinds(wren)).toHaveLength(2);
    await cancelCase({ ...(await asking(manager, LATER)), because: 'the theatre is flooded' });
    expect(await kinds(ines)).toEqual(['cancelled']);
  });

  it('keeps what came while one was looking', async () => {
    await move(manager, '2026-01-22');
    const { upTo } = await listChanges(db, ines, NOW);
    await cancelCase({ ...(await asking(manager)), because: 'the theatre is flooded' });
    await markListSeen({ db, now: LATER, person: ines, upTo });
    expect(await kinds(ines)).toEqual(['cancelled']);
    // a mark never goes back, and never past what there is
    const [head] = await db.read.select({ seq: ledger.seq }).from(ledger).orderBy(ledger.seq);
    await markListSeen({ db, now: LATER, person: ines, upTo: head?.seq ?? 0 });
    expect(await kinds(ines)).toEqual(['cancelled']);
    await markListSeen({ db, now: LATER, person: ines, upTo: 1_000_000 });
    expect(await kinds(ines)).toEqual([]);
    await move(tobias, '2026-01-23');
    expect(await kinds(ines)).toEqual([]);
  });

  it('leaves out cases that are over', async () => {
    await move(manager, '2026-01-22');
    expect(await kinds(ines, '2026-01-22T16:59:00.000Z')).toEqual([]);
    await markListSeen({ db, now: NOW, person: ines, upTo: 0 });
    expect(await kinds(ines, '2026-01-22T16:59:00.000Z')).toEqual(['moved']);
    expect(await kinds(ines, '2026-01-22T17:00:00.000Z')).toEqual([]);
  });

  it('reads each act as the operations write it', async () => {
    const booked = await bookCase({
      db,
      now: NOW,
      newId,
      draw: () => [1, 2, 3, 4],
      hospitalLetters: 'LM',
      person: manager,
      booking: {
        theatreId: theatreId.parse('theatre_4'),
        date: plainDate.parse('2026-02-02'),
        time: '08:30',
        minutes: 60,
        region: 'ankle',
        limb: 'left',
        surgeonId: personId.parse(ines.id),
        urgency: 'booked',
        startId: null,
        startsAt: '2026-02-02T08:30:00.000Z',
        endsAt: '2026-02-02T09:30:00.000Z',
      } as Parameters<typeof bookCase>[0]['booking'],
    });
    expect(booked).toMatchObject({ ok: true });
    await move(manager, '2026-01-22');
    await cancelCase({ ...(await asking(manager)), because: 'the theatre is flooded' });
    const changes = await listChanges(db, ines, NOW);
    const said = changes.cases.flatMap((one) =>
      one.changes.map(({ change, by }) => listChangeSentence(change, names(changes), by)),
    );
    // times by the hospital's clock: winter, so UTC
    expect(said).toEqual([
      'Cancelled by Gwen Sallis: the theatre is flooded',
      expect.stringMatching(
        /^Moved by Gwen Sallis from Theatre 1 to Theatre 2, from Thursday 15 January 08:30 to Thursday 22 January 15:30\./,
      ),
      'Booked by Gwen Sallis for Monday 2 February 08:30.',
    ]);
  });

  it('calls sets by their codes that planning gave to a case and took from it', async () => {
    await db.tx((write) =>
      appendLedger(write, {
        doneAt: NOW,
        enteredAt: NOW,
        personId: manager.id,
        action: 'plan-sets',
        subjectKind: 'case',
        subjectId: CASE,
        detail: { given: ['set_clo-02', 'set_sfs-02'], taken: ['set_sfl-05'] },
      }),
    );
    const changes = await listChanges(db, ines, NOW);
    expect(
      changes.cases.flatMap((one) =>
        one.changes.map(({ change, by }) => listChangeSentence(change, names(changes), by)),
      ),
    ).toEqual(['Planning the list, Gwen Sallis gave it CLO-02 and SFS-02 and took SFL-05 from it.']);
  });

  it('says that there was something even where it can’t be read', () => {
    for (const action of LIST_ACTS) {
      const change = listChangeFrom(action, 'no detail of ours');
      expect(change).toEqual({ kind: 'other', action });
      expect(listChangeSentence(change, { theatre: String, set: String }, 'somebody')).toMatch(
        /^[A-Z].*, by somebody\.$/,
      );
    }
  });
});

describe('kinds of notice', () => {
  const choose = (off: (typeof NOTICE_KINDS)[number][]) => chooseNotices({ db, now: NOW, person: wren, off });
  const tell = () =>
    db.tx((write) =>
      tellPerson(write, {
        personId: wren.id,
        kind: 'shortageFixed',
        detail: { setCode: 'SFS-01', itemName: 'Driver', quantity: 1, by: 'somebody' },
        href: null,
        now: NOW,
        newId,
      }),
    );

  it('that nothing rests on can be switched off, and on again', async () => {
    const before = (await noticesFor(db, wren.id, 100)).length;
    expect(await choose(['shortageFixed'])).toMatchObject({ ok: true });
    expect(await kindsOff(db, wren.id)).toEqual(['shortageFixed']);
    await tell();
    expect(await noticesFor(db, wren.id, 100)).toHaveLength(before);
    await choose([]);
    await tell();
    expect(await noticesFor(db, wren.id, 100)).toHaveLength(before + 1);
    const entries = await db.read.select().from(ledger).where(eq(ledger.action, 'choose-notices'));
    expect(entries.map(({ detail }) => detail)).toEqual([{ off: ['shortageFixed'] }, { off: [] }]);
    await choose([]);
    expect(await db.read.select().from(ledger).where(eq(ledger.action, 'choose-notices'))).toHaveLength(2);
  });

  it('that a case may rest on are told in any case', async () => {
    const never = NOTICE_KINDS.filter((kind) => !MAY_BE_OFF[kind]);
    // what only says that something is well again; our own choice, no source
    expect(NOTICE_KINDS.filter((kind) => MAY_BE_OFF[kind])).toEqual([
      'shortageFixed',
      'holdLifted',
      'asideSettled',
    ]);
    for (const kind of never)
      expect(await choose(['shortageFixed', kind])).toMatchObject({
        refusal: { problems: [{ code: 'never-off' }] },
      });
    expect(await kindsOff(db, wren.id)).toEqual([]);
  });
});
