import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { readAs } from '@/db/client';
import { appendLedger, findLedgerBreak } from '@/db/ledger';
import { correctRecord } from '@/db/operations/ledger/correct-record';
import {
  correctionsQuery,
  type LedgerFilter,
  ledgerPageQuery,
  readLedgerPage,
  spanOf,
} from '@/db/queries/ledger/entries';
import { exportCsv } from '@/db/queries/ledger/exports';
import { type Person, personFromRow } from '@/db/queries/people';
import { NotPermitted } from '@/db/reader';
import { people } from '@/db/schema';
import { correctableValues } from '@/lib/ledger/correction';
import { latenessOf } from '@/lib/ledger/late';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import { demoDatabase, emptyDatabase } from '../../setup/database';

const DONE = '2026-01-14T06:30:00.000Z';
const NOW = '2026-01-14T08:00:00.000Z';
const EVERYTHING: LedgerFilter = { things: [], action: null, from: null, to: null };

async function hospital() {
  const db = await demoDatabase();
  const rows = (await db.read.select().from(people)).map(personFromRow);
  const of = (role: Person['role']) => rows.find((one) => one.role === role) as Person;
  const lead = of('decontaminationLead');
  const technician = of('technician');
  const { seq } = await db.tx(async (write) =>
    appendLedger(write, {
      doneAt: DONE,
      enteredAt: DONE,
      personId: technician.id,
      action: 'record-count',
      subjectKind: 'set',
      subjectId: 'set_sfs-01',
      detail: {
        countId: 'count_1',
        revision: 3,
        lines: [{ lineId: 'line_1', found: 2, unsound: 0 }],
        note: 'two sleeves',
        useBy: '2026-06-01',
        step: 'onBench',
        attested: { meaning: 'iCounted', method: 'pin', at: DONE },
      },
    }),
  );
  return { db, lead, technician, surgeon: of('surgeon'), seq };
}

const proof = (person: Person, meaning: Meaning = 'iCorrect'): Attestation => ({
  personId: person.id,
  meaning,
  method: 'password',
  at: NOW,
});
const FOUND = { kind: 'value' as const, pointer: '/lines/0/found' };

function correct(
  db: Database,
  person: Person,
  request: Record<string, unknown>,
  attestation = proof(person),
) {
  return correctRecord({ db, now: NOW, person, attestation, request });
}

describe('a correction', () => {
  it('keeps old, new, who, why and the proof, leaves the entry as it was, and is shown with it from both sides', async () => {
    const { db, lead, seq } = await hospital();
    const before = (await readLedgerPage(db, EVERYTHING, { before: null, limit: 5 })).rows[0];
    const outcome = await correct(db, lead, {
      seq,
      target: FOUND,
      old: 2,
      new: 3,
      reason: 'one lay under the rack',
    });
    expect(outcome).toEqual({ ok: true, value: { seq: seq + 1 } });
    const { rows } = await readLedgerPage(db, EVERYTHING, { before: null, limit: 5 });
    const [correction, original] = rows;
    expect(original).toEqual({
      ...before,
      corrections: [
        expect.objectContaining({
          seq: seq + 1,
          by: lead.name,
          old: 2,
          new: 3,
          reason: 'one lay under the rack',
        }),
      ],
    });
    expect(correction).toMatchObject({
      action: 'correct-record',
      person: { id: lead.id },
      subject: { kind: 'set', id: 'set_sfs-01' },
      corrects: { seq, action: 'record-count', doneAt: DONE },
      detail: {
        corrects: seq,
        entryHash: original?.hash,
        attested: { meaning: 'iCorrect', method: 'password', at: NOW },
      },
    });
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('of the same statement again follows the one before it, and nobody’s correction is written over unseen', async () => {
    const { db, lead, seq } = await hospital();
    await correct(db, lead, { seq, target: FOUND, old: 2, new: 3, reason: 'first' });
    const stale = await correct(db, lead, { seq, target: FOUND, old: 2, new: 4, reason: 'second' });
    expect(stale).toMatchObject({ ok: false, refusal: { because: 'conflict', current: { stands: 3 } } });
    expect(await correct(db, lead, { seq, target: FOUND, old: 3, new: 4, reason: 'second' })).toMatchObject({
      ok: true,
    });
  });

  it.each<[string, Record<string, unknown>, string]>([
    ['what it says already', { target: FOUND, old: 2, new: 2 }, 'same'],
    ['words for a number', { target: FOUND, old: 2, new: 'two' }, 'other-kind'],
    ['half a piece', { target: FOUND, old: 2, new: 2.5 }, 'not-whole'],
    ['less than none', { target: FOUND, old: 2, new: -1 }, 'negative'],
    [
      'a day that is none',
      { target: { kind: 'value', pointer: '/useBy' }, old: '2026-06-01', new: 'summer' },
      'not-a-date',
    ],
    [
      'a time after it was entered',
      { target: { kind: 'time' }, old: DONE, new: '2026-01-14T07:00:00.000Z' },
      'after-entry',
    ],
    ['a time to come', { target: { kind: 'time' }, old: DONE, new: '2027-01-14T07:00:00.000Z' }, 'in-future'],
    ['no time', { target: { kind: 'time' }, old: DONE, new: 'early' }, 'not-a-time'],
    ['an empty remark', { target: { kind: 'remark' }, old: null, new: ' ' }, 'empty'],
    [
      'a step, which is what the entry is',
      { target: { kind: 'value', pointer: '/step' }, old: 'onBench', new: 'packed' },
      'no-such-value',
    ],
    ['a proof', { target: { kind: 'value', pointer: '/attested/at' }, old: DONE, new: NOW }, 'no-such-value'],
    [
      'an id',
      { target: { kind: 'value', pointer: '/countId' }, old: 'count_1', new: 'count_2' },
      'no-such-value',
    ],
    [
      'a patient’s data',
      { target: { kind: 'remark' }, old: null, new: 'for Mrs Jones, born 03/04/1951' },
      'looks-like-patient-data',
    ],
  ])('refuses %s', async (_, request, code) => {
    const { db, lead, seq } = await hospital();
    const outcome = await correct(db, lead, { seq, reason: 'a reason', ...request });
    expect(outcome).toMatchObject({
      ok: false,
      refusal: { problems: expect.arrayContaining([expect.objectContaining({ code })]) },
    });
  });

  it('takes a time that was earlier, a remark, and no reason for an answer', async () => {
    const { db, lead, seq } = await hospital();
    const earlier = {
      seq,
      target: { kind: 'time' },
      old: DONE,
      new: '2026-01-14T06:10:00.000Z',
      reason: 'from memory',
    };
    expect(await correct(db, lead, earlier)).toMatchObject({ ok: true });
    const remark = {
      seq,
      target: { kind: 'remark' },
      old: null,
      new: 'this was the count of the other set',
      reason: 'mixed up',
    };
    expect(await correct(db, lead, remark)).toMatchObject({ ok: true });
    expect(await correct(db, lead, { ...remark, reason: ' ' })).toMatchObject({
      ok: false,
      refusal: { because: 'invalid' },
    });
  });

  it('is made only by who may, with their own fresh proof, of an entry that people made', async () => {
    const { db, lead, technician, seq } = await hospital();
    const request = { seq, target: FOUND, old: 2, new: 3, reason: 'a reason' };
    const refused = async (outcome: ReturnType<typeof correct>) => {
      const answer = await outcome;
      return answer.ok ? 'taken' : answer.refusal.because;
    };
    expect(await refused(correct(db, technician, request))).toBe('notPermitted');
    expect(await refused(correct(db, lead, request, proof(technician)))).toBe('notPermitted');
    expect(await refused(correct(db, lead, request, proof(lead, 'iCounted')))).toBe('notPermitted');
    expect(
      await refused(correct(db, lead, request, { ...proof(lead), at: '2026-01-14T07:50:00.000Z' })),
    ).toBe('notPermitted');
    expect(await refused(correct(db, lead, { ...request, seq: 9999 }))).toBe('notFound');
    expect(await refused(correct(db, lead, { ...request, seq: 1 }))).toBe('frozen');
  });

  it('offers what people state and never what an entry is', () => {
    const detail = {
      lines: [{ lineId: 'line_1', found: 2, 'a/b~c': 1 }],
      turnId: 'turn_1',
      from: 'washing',
      note: 'n',
      revision: 2,
      attested: { at: DONE },
      packedAt: DONE,
      second: { personId: 'person_1', count: 2 },
      text: null,
      sound: true,
    };
    expect(correctableValues(detail).map(({ pointer }) => pointer)).toEqual([
      '/lines/0/found',
      '/lines/0/a~1b~0c',
      '/note',
      '/packedAt',
      '/text',
      '/sound',
    ]);
  });
});

describe('the ledger’s pages', () => {
  it('are read by set, person, act and time, the newest first, and not by who may not', async () => {
    const { db, lead, technician, surgeon, seq } = await hospital();
    await correct(db, lead, { seq, target: FOUND, old: 2, new: 3, reason: 'a reason' });
    const seqs = async (filter: Partial<LedgerFilter>) =>
      (await readLedgerPage(db, { ...EVERYTHING, ...filter }, { before: null, limit: 9 })).rows.map(
        (row) => row.seq,
      );
    expect(await seqs({ things: ['set_sfs-01'] })).toEqual([seq + 1, seq]);
    expect(await seqs({ things: ['set_sfs-01', technician.id] })).toEqual([seq]);
    expect(await seqs({ things: [lead.id] })).toEqual([seq + 1]);
    expect(await seqs({ action: 'record-count' })).toEqual([seq]);
    expect(await seqs({ from: '2026-01-14T07:00:00.000Z' })).toEqual([seq + 1]);
    expect(await seqs({ to: DONE })).toEqual([]);
    const first = await readLedgerPage(db, EVERYTHING, { before: null, limit: 2 });
    expect(first.older).toBe(seq);
    const next = await readLedgerPage(db, EVERYTHING, { before: first.older, limit: 2 });
    expect(next.rows.map((row) => row.seq)).toEqual([seq - 1]);
    expect(next.older).toBeNull();
    await expect(readLedgerPage(readAs(db, surgeon), EVERYTHING, { before: null, limit: 2 })).rejects.toThrow(
      NotPermitted,
    );
  });

  it('go out as CSV that no office program takes for formulas', async () => {
    const { db } = await hospital();
    await db.tx(async (write) =>
      appendLedger(write, {
        doneAt: DONE,
        enteredAt: DONE,
        personId: null,
        action: 'print-label',
        subjectKind: 'pack',
        subjectId: '=1+1',
        detail: { note: 'a "b", c' },
      }),
    );
    let text = '';
    for await (const part of exportCsv(db, EVERYTHING)) text += part;
    const [head, newest] = text.split('\r\n');
    expect(head).toMatch(/^\uFEFFentry,done at,entered at,/);
    expect(newest).toContain(",'=1+1,");
    expect(newest).toContain('"{""note"":""a \\""b\\"", c""}"');
  });
});

describe('late entries', () => {
  const of = (minutes: number, after = 10) =>
    latenessOf(
      { doneAt: DONE, enteredAt: new Date(Date.parse(DONE) + minutes * 60_000).toISOString() },
      after,
    );
  it('are those entered more than the setting after they were done; the setting itself is not late', () => {
    expect(of(0)).toEqual({ kind: 'atOnce' });
    expect(of(10)).toEqual({ kind: 'atOnce' });
    expect(of(10.02)).toEqual({ kind: 'late', minutes: 10 });
    expect(of(600, 1440)).toEqual({ kind: 'atOnce' });
    expect(of(-2)).toEqual({ kind: 'atOnce' });
    expect(of(-30)).toEqual({ kind: 'ahead', minutes: 30 });
  });
});

describe('a long ledger', () => {
  type Plan = { detail: string }[];
  it('is paged by an index whatever is asked: no page scans the table, none is sorted', async () => {
    const db = emptyDatabase();
    const plan = async (query: { toSQL(): { sql: string; params: unknown[] } }) => {
      const { sql: text, params } = query.toSQL();
      const { $client } = db.read as unknown as {
        $client: { prepare(text: string): { all(...p: unknown[]): Plan } };
      };
      return $client
        .prepare(`EXPLAIN QUERY PLAN ${text}`)
        .all(...params)
        .map(({ detail }) => detail)
        .join(' | ');
    };
    const span = { first: 1, last: 99 };
    const cases: [string, Parameters<typeof ledgerPageQuery>[1], RegExp][] = [
      ['all', EVERYTHING, /SEARCH ledger USING INTEGER PRIMARY KEY/],
      [
        'a thing',
        { ...EVERYTHING, things: ['set_1'] },
        /SEARCH ledger_things USING PRIMARY KEY \(thing=\? AND seq<\?\)/,
      ],
      [
        'two things',
        { ...EVERYTHING, things: ['set_1', 'person_1'] },
        /SEARCH other (EXISTS )?USING PRIMARY KEY \(thing=\? AND seq=\?\)/,
      ],
      [
        'an act',
        { ...EVERYTHING, action: 'pack-set' },
        /SEARCH ledger USING INDEX ledger_by_action \(action=\? AND (seq|rowid)<\?\)/,
      ],
    ];
    for (const [what, filter, expected] of cases) {
      const text = await plan(ledgerPageQuery(db.read, filter, null, 500, 51));
      expect(text, what).toMatch(expected);
      expect(text, what).not.toMatch(/SCAN|TEMP B-TREE/);
    }
    const timed = await plan(ledgerPageQuery(db.read, { ...EVERYTHING, from: DONE, to: NOW }, span, 500, 51));
    expect(timed).toMatch(/SEARCH ledger USING INTEGER PRIMARY KEY \(rowid>\? AND rowid<\?\)/);
    expect(timed).not.toMatch(/SCAN|TEMP B-TREE/);
    expect(await plan(correctionsQuery(db.read, [1, 2, 3]))).toMatch(/USING INDEX ledger_corrections/);
    expect(await spanOf(db.read, EVERYTHING)).toBeNull();
  });
});
