import { randomUUID } from 'node:crypto';
import { eq, sql } from 'drizzle-orm';
import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { actingNow, setActing } from '@/app/_ui/acting-store';
import type { Database } from '@/db/client';
import { findLedgerBreak } from '@/db/ledger';
import { addPerson } from '@/db/operations/people/add-person';
import { type BegunSession, beginSession } from '@/db/operations/people/begin-session';
import { changePassword } from '@/db/operations/people/change-password';
import { changeRole } from '@/db/operations/people/change-role';
import { checkSecret } from '@/db/operations/people/check-secret';
import { enrolWorkstation } from '@/db/operations/people/enrol-workstation';
import { issueBadge } from '@/db/operations/people/issue-badge';
import { leavePerson } from '@/db/operations/people/leave-person';
import { nameFirstAdministrator } from '@/db/operations/people/name-first-administrator';
import { offerFirstRun } from '@/db/operations/people/offer-first-run';
import { signIn } from '@/db/operations/people/sign-in';
import { claimedByBadge, claimedById, claimedByName } from '@/db/queries/credentials';
import { sessionOfTicket, sessionOfToken } from '@/db/queries/peopleSessions';
import { benchCounts, benchEntries, credentials, ledger, scans, sessions, sets } from '@/db/schema';
import { hashSecret, isSecret, newToken } from '@/db/secrets';
import { personId } from '@/lib/identity/ids';
import { DEMO_BADGES, DEMO_PASSWORD, DEMO_PIN } from '@/lib/people/demo';
import type { Role } from '@/lib/people/role';
import { entryInSession } from '@/lib/people/ticket';
import { DEMO_NOW, demoDatabase, emptyDatabase } from '../../setup/database';

const newId = <P extends string>(prefix: P) => `${prefix}_${randomUUID()}` as `${P}_${string}`;
const at = (seconds: number) => new Date(DEMO_NOW.getTime() + seconds * 1000).toISOString();
const NOW = at(0);
const WREN = personId.parse('person_wren-adeyemi');
const ELSEWHERE = { key: 'elsewhere', workstationId: null };
const who = (role: Role, id = 'person_edda-winslow') => ({
  id: personId.parse(id),
  name: 'Edda Winslow',
  role,
});

let db: Database;
beforeEach(async () => {
  db = await demoDatabase();
});

const byName = async (name: string, password: string, now = NOW, place = ELSEWHERE) =>
  signIn({
    db,
    now,
    newId,
    newToken,
    claimed: await claimedByName(db, name),
    given: { password },
    place,
    present: null,
  });

describe('signing in', () => {
  test('goes by a name however it is spaced, and by the demo’s own secrets, kept as argon2id', async () => {
    const signed = await byName('  wren   ADEYEMI ', DEMO_PASSWORD);
    if (!signed.ok) throw new Error('refused');
    expect(signed.value.person.id).toBe(WREN);
    expect((await sessionOfToken(db, signed.value.token))?.person.id).toBe(WREN);
    const [kept] = await db.read.select().from(credentials).where(eq(credentials.personId, WREN));
    expect(await isSecret(kept?.pinHash ?? null, DEMO_PIN)).toBe(true);
    // OWASP Password Storage Cheat Sheet: argon2id with at least m=19456 (19 MiB), t=2, p=1
    expect(kept?.passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(await hashSecret('any')).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  });

  test('keeps no token, ticket, password, PIN or badge anywhere in the store', async () => {
    const signed = await byName('Wren Adeyemi', DEMO_PASSWORD);
    if (!signed.ok) throw new Error('refused');
    const all = JSON.stringify([
      await db.read.select().from(sessions),
      await db.read.select().from(credentials),
      await db.read.select().from(ledger),
    ]);
    const { token, ticket } = signed.value;
    for (const secret of [token, ticket, DEMO_PASSWORD, DEMO_PIN, DEMO_BADGES[WREN] ?? ''])
      expect(all).not.toContain(secret);
  });

  test('slows the guesser at one place, and nobody elsewhere; a right one clears it', async () => {
    const waits: number[] = [];
    for (let now = 0, tries = 0; tries < 6; tries += 1) {
      const wrong = await byName('Wren Adeyemi', 'a wrong password', at(now));
      if (wrong.ok) throw new Error('let in');
      waits.push(wrong.check.waitSeconds);
      now += wrong.check.waitSeconds;
      if (tries === 5) {
        expect(await byName('Wren Adeyemi', DEMO_PASSWORD, at(now - 1))).toMatchObject({
          ok: false,
          check: { tooSoon: true, waitSeconds: 1 },
        });
        const other = { key: 'workstation_bench-2', workstationId: null };
        expect(await byName('Wren Adeyemi', DEMO_PASSWORD, at(now - 1), other)).toMatchObject({ ok: true });
        expect(await byName('Tomas Birkett', DEMO_PASSWORD, at(now - 1))).toMatchObject({ ok: true });
        expect(await byName('Wren Adeyemi', DEMO_PASSWORD, at(now))).toMatchObject({ ok: true });
        expect(await byName('Wren Adeyemi', 'a wrong password', at(now))).toMatchObject({
          check: { tooSoon: false, waitSeconds: 0 },
        });
      }
    }
    expect(waits).toEqual([0, 0, 1, 2, 4, 8]);
  });

  test('counts tries before it looks at them, so that many at once are not one', async () => {
    const claimed = await claimedById(db, WREN);
    const tried = { personKey: claimed.key, placeKey: 'elsewhere', kept: claimed.passwordHash };
    const answers = await Promise.all(
      Array.from({ length: 8 }, () => checkSecret({ db, now: NOW, ...tried, secret: 'a wrong password' })),
    );
    expect(answers.filter((answer) => !answer.right && !answer.tooSoon)).toHaveLength(3);
    expect(answers.filter((answer) => !answer.right && answer.tooSoon)).toHaveLength(5);
  });

  test('takes as long for a name or badge nobody has', async () => {
    const claims = [
      await claimedByName(db, 'Wren Adeyemi'),
      await claimedByName(db, 'Nobody At All'),
      await claimedByBadge(db, 'KWBADGE'),
    ];
    await byName('Nobody At All', 'x'); // the hash nobody has is made once
    // in turn, and the quickest of each: other work on the machine only ever adds
    const quickest = claims.map(() => Number.POSITIVE_INFINITY);
    for (let run = 0; run < 9; run += 1) {
      for (const [at, claimed] of claims.entries()) {
        const began = performance.now();
        const place = { key: `place-${run}`, workstationId: null };
        const given = { password: 'a wrong password' };
        await signIn({ db, now: NOW, newId, newToken, claimed, given, place, present: null });
        quickest[at] = Math.min(quickest[at] ?? 0, performance.now() - began);
      }
    }
    const [known = 0, ...unknown] = quickest;
    for (const one of unknown) expect(one / known).toBeGreaterThan(0.6);
    for (const one of unknown) expect(one / known).toBeLessThan(1.7);
  });

  test('with a badge and its PIN ends the session that was there', async () => {
    const first = await byName('Wren Adeyemi', DEMO_PASSWORD);
    if (!first.ok) throw new Error('refused');
    const claimed = await claimedByBadge(db, DEMO_BADGES['person_tomas-birkett'] ?? '');
    const second = await signIn({
      db,
      now: at(60),
      newId,
      newToken,
      claimed,
      given: { pin: DEMO_PIN },
      place: ELSEWHERE,
      present: first.value.id,
    });
    expect(second).toMatchObject({ ok: true, value: { person: { id: 'person_tomas-birkett' } } });
    expect((await sessionOfToken(db, first.value.token))?.times.endedAt).toBe(at(60));
  });
});

describe('what is entered keeps its person', () => {
  test('in 10,000 interleavings of scans, changes of person and late arrivals, no entry is somebody else’s', async () => {
    const people = Object.keys(DEMO_BADGES).map((id) => personId.parse(id));
    const begun: (BegunSession & { by: string; from: number; to: number })[] = [];
    // one person after the other at one workstation, each for ten minutes
    for (let turn = 0; turn < 12; turn += 1) {
      const by = people[turn % people.length] ?? WREN;
      const from = turn * 600;
      const method = 'badgeAndPin' as const;
      const session = await db.tx((write) =>
        beginSession(write, { now: at(from), newId, newToken, personId: by, method, workstationId: null }),
      );
      begun.push({ ...session, by, from, to: from + 600 });
      await db.tx(async (write) => {
        await write
          .update(sessions)
          .set({ endedAt: at(from + 600), seenAt: at(from + 600) })
          .where(eq(sessions.id, session.id));
      });
    }
    const known = new Map<string, ReturnType<typeof sessionOfTicket>>();
    const lookUp = (id: string, ticket: string) => {
      const key = `${id}:${ticket}`;
      const found = known.get(key) ?? sessionOfTicket(db, id, ticket);
      known.set(key, found);
      return found;
    };
    let taken = 0;
    let forged = 0;
    const step = fc.record({
      what: fc.constantFrom('scan', 'scan', 'scan', 'change', 'deliver', 'forge'),
      seconds: fc.nat(90),
    });
    await fc.assert(
      fc.asyncProperty(
        fc.nat(begun.length - 4),
        fc.array(step, { minLength: 4, maxLength: 14 }),
        async (first, steps) => {
          let turn = first;
          let second = (begun[turn]?.from ?? 0) + 1;
          const outbox: { sessionId: string; ticket: string; doneAt: string; truth: string }[] = [];
          const sitDown = () => {
            const { id, ticket, by } = begun[turn] as (typeof begun)[number];
            setActing({ person: { id: by, name: by, role: '' }, sessionId: id, ticket });
          };
          const deliver = async () => {
            for (const { sessionId, ticket, doneAt, truth } of outbox.splice(0)) {
              const found = await lookUp(sessionId, ticket);
              if (!found || entryInSession(found.times, doneAt, at(second)) !== 'good') continue;
              taken += 1;
              expect(found.person.id).toBe(truth);
            }
          };
          sitDown();
          for (const { what, seconds } of steps) {
            const { to, by } = begun[turn] as (typeof begun)[number];
            second = Math.min(second + seconds, to);
            const acting = actingNow();
            if (what === 'scan' && acting)
              outbox.push({
                sessionId: acting.sessionId,
                ticket: acting.ticket,
                doneAt: at(second),
                truth: by,
              });
            if (what === 'change' && turn < begun.length - 1) {
              turn += 1;
              second = (begun[turn]?.from ?? 0) + 1;
              sitDown();
            }
            if (what === 'forge') {
              // the present session's id with the ticket of another: nobody's
              const other = begun[(turn + 1) % begun.length] as (typeof begun)[number];
              expect(await lookUp(begun[turn]?.id ?? '', other.ticket)).toBeNull();
              forged += 1;
            }
            if (what === 'deliver') await deliver();
          }
          await deliver();
        },
      ),
      { seed: 20260114, numRuns: 10_000 },
    );
    setActing(null);
    expect(taken).toBeGreaterThan(20_000);
    expect(forged).toBeGreaterThan(5_000);
  }, 60_000);
});

describe('sessions that are long over', () => {
  const DAY = 86_400;
  const begun = (from: number) =>
    db.tx((write) =>
      beginSession(write, {
        now: at(from),
        newId,
        newToken,
        personId: WREN,
        method: 'password',
        workstationId: null,
      }),
    );
  const kept = async () => new Set((await db.read.select().from(sessions)).map(({ id }) => id));

  test('go as somebody signs in, thirty days after their absolute limit; what was done in one keeps it', async () => {
    const head = (await db.read.select().from(ledger)).length;
    // the demo's absolute limit is twelve hours: those of day 0 end half a day later
    const [idle, signedOut, scanned, counted] = [
      await begun(0),
      await begun(10),
      await begun(20),
      await begun(30),
    ];
    const young = await begun(3 * DAY);
    await db.tx(async (write) => {
      await write
        .update(sessions)
        .set({ endedAt: at(60) })
        .where(eq(sessions.id, signedOut.id));
      await write.insert(scans).values({
        id: 'scan_of-a-session',
        text: 'ABC',
        how: 'typed',
        separators: 'sent',
        personId: WREN,
        sessionId: scanned.id,
        contextKind: 'none',
        verdict: 'unknown',
        meaning: {},
        sentence: 'Not known.',
        doneAt: at(25),
        enteredAt: at(25),
        late: false,
      } as never);
      const set = (await write.select().from(sets))[0];
      await write.insert(benchCounts).values({
        id: 'count_of-a-session',
        setId: set?.id,
        turnId: set?.turnId,
        versionId: set?.versionId,
        personId: WREN,
        purpose: 'count',
        baseRevision: 1,
        beganAt: at(35),
      } as never);
      await write.insert(benchEntries).values({
        id: 'entry_of-a-session',
        countId: 'count_of-a-session',
        act: { kind: 'note', text: 'two racks' },
        personId: WREN,
        sessionId: counted.id,
        needsSecond: false,
        doneAt: at(35),
        enteredAt: at(35),
      } as never);
    });
    const all = [idle, signedOut, scanned, counted, young];
    // to the second: thirty days after the limit of the first alone
    await byName('Tomas Birkett', DEMO_PASSWORD, at(30.5 * DAY - 1));
    for (const { id } of all) expect((await kept()).has(id)).toBe(true);
    await byName('Tomas Birkett', DEMO_PASSWORD, at(30.5 * DAY));
    expect((await kept()).has(idle.id)).toBe(false);
    expect((await kept()).has(signedOut.id)).toBe(true);
    await byName('Tomas Birkett', DEMO_PASSWORD, at(31 * DAY));
    const left = await kept();
    expect(all.map(({ id }) => left.has(id))).toEqual([false, false, true, true, true]);
    // an entry that names one of them still can be asked whose it is
    expect((await sessionOfTicket(db, scanned.id, scanned.ticket))?.person.id).toBe(WREN);
    expect(await sessionOfToken(db, idle.token)).toBeNull();
    expect(await findLedgerBreak(db.read)).toBeNull();
    expect((await db.read.select().from(ledger)).length).toBe(head);
  });

  test('cost a sign-in nothing that grows: what is asked goes by index', () => {
    const plan = db.read
      .all<{ detail: string }>(
        sql`EXPLAIN QUERY PLAN DELETE FROM sessions WHERE ends_at > '' AND ends_at <= ${NOW}
          AND NOT EXISTS (SELECT 1 FROM scans WHERE session_id = sessions.id)
          AND NOT EXISTS (SELECT 1 FROM bench_entries WHERE session_id = sessions.id)`,
      )
      .map(({ detail }) => detail);
    expect(plan.some((step) => /SEARCH sessions USING .*INDEX sessions_by_end/.test(step))).toBe(true);
    expect(plan.filter((step) => /^SCAN/.test(step))).toEqual([]);
  });
});

describe('an administrator', () => {
  const entry = { name: 'Odile Farrant', role: 'technician' };
  const add = (person = who('administrator'), given: object = entry) =>
    addPerson({ db, now: NOW, newId, person, firstPassword: 'AAAA-BBBB-CCCC-DDDD', entry: given });

  test('adds a person, whose given password must be changed and whose name is theirs alone', async () => {
    const added = await add();
    if (!added.ok) throw new Error('refused');
    const signed = await byName('odile farrant', 'AAAA-BBBB-CCCC-DDDD');
    if (!signed.ok) throw new Error('refused');
    expect((await sessionOfToken(db, signed.value.token))?.mustChangePassword).toBe(true);
    const change = {
      db,
      now: NOW,
      person: signed.value.person,
      sessionId: signed.value.id,
      placeKey: 'elsewhere',
      hospital: 'Saint Osyth’s',
    };
    const weak = await changePassword({ ...change, present: 'AAAA-BBBB-CCCC-DDDD', next: 'tea rose lathe' });
    expect(weak).toMatchObject({ refusal: { problems: [{ path: ['next'], code: 'tooShort' }] } });
    for (const ofPlace of ['Saint Osyth’s 2026', 'odile farrant osyth', 'Osyth: theatre 2, theatre 1'])
      expect(
        await changePassword({ ...change, present: 'AAAA-BBBB-CCCC-DDDD', next: ofPlace }),
        ofPlace,
      ).toMatchObject({ refusal: { problems: [{ path: ['next'], code: 'place' }] } });
    expect(
      await changePassword({ ...change, present: 'AAAA-BBBB-CCCC-DDDD', next: 'sunshine-sunshine 7' }),
    ).toMatchObject({ refusal: { problems: [{ path: ['next'], code: 'common' }] } });
    const next = 'tea rose lathe moss';
    expect(await changePassword({ ...change, present: 'AAAA-BBBB-CCCC-DDDD', next })).toMatchObject({
      ok: true,
    });
    expect((await sessionOfToken(db, signed.value.token))?.mustChangePassword).toBe(false);
    expect(await add(who('administrator'), { ...entry, name: ' odile  FARRANT' })).toMatchObject({
      refusal: { problems: [{ code: 'name-taken' }] },
    });
  });

  test('alone may do so', async () => {
    for (const role of ['technician', 'decontaminationLead', 'theatreManager', 'incidentLead'] as const) {
      expect(await add(who(role))).toMatchObject({ refusal: { because: 'notPermitted' } });
      const request = { db, now: NOW, person: who(role), personId: WREN };
      expect(await leavePerson(request)).toMatchObject({ refusal: { because: 'notPermitted' } });
      expect(await issueBadge({ ...request, random: new Uint8Array(26) })).toMatchObject({ ok: false });
      const enrol = { db, now: NOW, newId, newToken, person: who(role), sessionId: 'session_x', name: 'B' };
      expect(await enrolWorkstation(enrol)).toMatchObject({ refusal: { because: 'notPermitted' } });
    }
  });

  test('lets somebody leave: their session, password and badge let nobody in, and their name stays', async () => {
    const signed = await byName('Wren Adeyemi', DEMO_PASSWORD);
    if (!signed.ok) throw new Error('refused');
    await leavePerson({ db, now: at(1), person: who('administrator'), personId: WREN });
    expect((await sessionOfToken(db, signed.value.token))?.times.endedAt).toBe(at(1));
    expect(await byName('Wren Adeyemi', DEMO_PASSWORD, at(2))).toMatchObject({ ok: false });
    expect((await claimedByBadge(db, DEMO_BADGES[WREN] ?? '')).person).toBeNull();
  });

  test('issues a badge once: the one before stops working, and the ledger has no code', async () => {
    const random = new Uint8Array(26).fill(7);
    const request = { db, now: NOW, person: who('administrator'), personId: WREN };
    const issued = await issueBadge({ ...request, random });
    if (!issued.ok) throw new Error('refused');
    expect((await claimedByBadge(db, issued.value.code)).person?.id).toBe(WREN);
    expect((await claimedByBadge(db, DEMO_BADGES[WREN] ?? '')).person).toBeNull();
    expect(JSON.stringify(await db.read.select().from(ledger))).not.toContain(issued.value.code);
  });

  test('who is the last one stays it', async () => {
    const edda = who('administrator');
    const ravi = who('administrator', 'person_ravi-thorne');
    expect(await leavePerson({ db, now: NOW, person: edda, personId: ravi.id })).toMatchObject({ ok: true });
    expect(await leavePerson({ db, now: NOW, person: edda, personId: edda.id })).toMatchObject({
      refusal: { because: 'frozen' },
    });
    const demote = { db, now: NOW, person: edda, personId: edda.id, role: 'technician' as const };
    expect(await changeRole(demote)).toMatchObject({ refusal: { because: 'frozen' } });
  });
});

test('the first administrator is named once, by the code of this start, within the hour', async () => {
  const empty = emptyDatabase();
  const name = (code: string, now = NOW, password = 'tea rose lathe moss') =>
    nameFirstAdministrator({
      db: empty,
      now,
      newId,
      newToken,
      placeKey: `place-${now}`,
      hospital: 'Saint Osyth’s',
      code,
      name: 'Odile Farrant',
      password,
    });
  expect(await name('AAAA-BBBB-CCCC')).toMatchObject({ because: 'wrongCode' });
  expect(await offerFirstRun({ db: empty, now: NOW, code: 'AAAA-BBBB-CCCC' })).toBe(true);
  expect(await offerFirstRun({ db: empty, now: NOW, code: 'DDDD-EEEE-FFFF' })).toBe(true);
  expect(await name('AAAA-BBBB-CCCC'), 'a later start makes another code').toMatchObject({
    because: 'wrongCode',
  });
  expect(await name('DDDD-EEEE-FFFF', at(3601))).toMatchObject({ because: 'wrongCode' });
  expect(await name('DDDD-EEEE-FFFF', at(3598), 'Saint Osyth’s 2026')).toMatchObject({
    because: 'invalid',
    problems: [{ path: ['password'], code: 'place' }],
  });
  expect(await name(' dddd-eeee-ffff ', at(3599))).toMatchObject({ ok: true });
  expect(await name('DDDD-EEEE-FFFF', at(3600))).toMatchObject({ because: 'over' });
  const probe = await name('DDDD-EEEE-FFFF', at(3601), 'Saint Osyth’s 2026');
  expect(probe, 'nobody learns by asking what the place is called').toMatchObject({ because: 'over' });
  expect(await offerFirstRun({ db: empty, now: NOW, code: 'GGGG-HHHH-JJJJ' })).toBe(false);
  empty.close();
});
