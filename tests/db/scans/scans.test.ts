import { readFileSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { asc, eq, max, sql } from 'drizzle-orm';
import { describe, expect, it } from 'vitest';
import type { Database } from '@/db/client';
import { readAs } from '@/db/client';
import { recordScans, type ScannedBy } from '@/db/operations/scans/record-scans';
import { replyToScan } from '@/db/operations/scans/reply-to-scan';
import { listPeople } from '@/db/queries/people';
import { lastScans } from '@/db/queries/scans/lastScans';
import { counts, items, labelPrints, ledger, packs, people, scans, sets, sheetPrints } from '@/db/schema';
import { countId } from '@/lib/identity/ids';
import { packNumber } from '@/lib/packs/packNumber';
import { newBadgeCode } from '@/lib/people/badge';
import { type IncomingScan, incomingScan } from '@/lib/scanning/incoming';
import { packLabelText, placeText, stockText } from '@/lib/scanning/ownCodes';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = DEMO_NOW.toISOString();
const GTIN = '09525702746335';

let made = 0;
function nextNumber(): number {
  made += 1;
  return made;
}
const incoming = (text: string, more: Partial<IncomingScan> = {}): IncomingScan =>
  incomingScan.parse({
    id: `scan_${nextNumber()}`,
    text,
    how: 'scanner',
    doneAt: NOW,
    context: { kind: 'none' },
    separators: 'mayBeLost',
    session: null,
    ...more,
  });

async function by(db: Database, name: string): Promise<ScannedBy> {
  const person = (await listPeople(db)).find(({ id }) => id === `person_${name}`);
  if (!person) throw new Error(`nobody is ${name}`);
  return { person, sessionId: null, workstationId: null };
}

async function scanned(db: Database, ...given: IncomingScan[]) {
  const wren = { ok: true, value: await by(db, 'wren-adeyemi') } as const;
  const outcomes = await recordScans({ db, now: NOW, scans: given.map((scan) => ({ scan, by: wren })) });
  return outcomes.map((outcome) => {
    if (!outcome.ok) throw new Error(outcome.refusal.problems[0]?.message);
    return outcome.value;
  });
}

async function meaningOfText(db: Database, text: string, more: Partial<IncomingScan> = {}) {
  const [answer] = await scanned(db, incoming(text, more));
  if (!answer) throw new Error('no answer');
  return answer;
}

/** A set that is packed in the demo, with its pack. */
async function aPack(db: Database, state: string) {
  const [row] = await db.read
    .select({ pack: packs, code: sets.code })
    .from(packs)
    .innerJoin(sets, eq(sets.id, packs.setId))
    .where(eq(packs.state, state))
    .orderBy(asc(packs.number))
    .limit(1);
  if (!row) throw new Error(`the demo has no pack that is ${state}`);
  return { ...row, number: packNumber.parse(row.pack.number) };
}

const print = (db: Database, packId: string, copy: number) =>
  db.tx(async (write) => {
    await write.insert(labelPrints).values({
      id: `print_test-${packId.slice(5)}-${copy}`,
      packId,
      copy,
      because: copy === 1 ? null : 'the first one tore',
      printedBy: 'person_wren-adeyemi',
      printedAt: NOW,
    });
  });

describe('what a scan means', () => {
  it('finds whatever carries a code of ours, however the scanner marks it', async () => {
    const db = await demoDatabase();
    const kinds = await scanned(
      db,
      incoming('SFS-03'),
      incoming(']d1sfs-03'),
      incoming(placeText('place_store-a')),
      incoming(stockText('stock_demo-001')),
      incoming('LM-26-2HXD'),
      incoming('CR-P35-N-04'),
      incoming('L2-01451'),
    );
    expect(kinds.map(({ meaning }) => meaning.kind)).toEqual([
      'set',
      'set',
      'place',
      'stock',
      'case',
      'item',
      'load',
    ]);
    expect(kinds[0]).toMatchObject({
      meaning: { setId: 'set_sfs-03', code: 'SFS-03' },
      verdict: 'understood',
    });
    expect(kinds[2]).toMatchObject({ sentence: 'Place: Sterile store, bay A.' });
  });

  it('reads a maker’s code: item, lot, serial, use-by', async () => {
    const db = await demoDatabase();
    const answer = await meaningOfText(db, `]d201${GTIN}1728063010A1\u001d21S-9`);
    expect(answer).toMatchObject({
      verdict: 'understood',
      meaning: {
        kind: 'item',
        itemId: 'item_cr-p35-n-04',
        gtin: GTIN,
        lot: 'A1',
        serial: 'S-9',
        useBy: '2028-06-30',
      },
    });
    expect(answer.sentence).toContain('lot A1, serial S-9 and use-by 2028-06-30');
  });

  it.each([
    ['a code nobody knows', 'hello there', { kind: 'unknown', text: 'hello there', gtin: null }, 'unknown'],
    // GS1 General Specifications: check digit of 0952123454321 is 3; the number is in no demo catalogue
    [
      'a sound GTIN of nothing here',
      '(01)09521234543213',
      { kind: 'unknown', gtin: '09521234543213' },
      'unknown',
    ],
    ['a wrong check digit', `]d201${GTIN.slice(0, -1)}6`, { kind: 'refused', because: 'faulty' }, 'refused'],
    ['lost separators', `]d201${GTIN}10A213B1211234`, { kind: 'refused', because: 'ambiguous' }, 'refused'],
    // ANSI/HIBC 2: the last character is the sum modulo 43; here it is wrong
    [
      'HIBC with a wrong check character',
      '+A123BJC5D6E71H',
      { kind: 'refused', because: 'faulty' },
      'refused',
    ],
  ])('%s', async (_what, text, meaning, verdict) => {
    const answer = await meaningOfText(await demoDatabase(), text);
    expect(answer).toMatchObject({ meaning, verdict });
  });

  it('shows every reading of an ambiguous code, and reads it once the scanner is known to send separators', async () => {
    const db = await demoDatabase();
    const text = `]d201${GTIN}10A213B1211234`;
    const { meaning } = await meaningOfText(db, text);
    expect(meaning.kind === 'refused' && meaning.candidates).toContain(`(01)${GTIN}(10)A213B1(21)1234`);
    const sent = await meaningOfText(db, text, { separators: 'sent' });
    expect(sent.meaning).toMatchObject({ kind: 'item', lot: 'A213B1211234', serial: null });
  });

  it('takes the newest copy of a label only, and says the way out', async () => {
    const db = await demoDatabase();
    const { pack, number } = await aPack(db, 'sterile');
    const [printed] = await db.read
      .select({ copy: max(labelPrints.copy) })
      .from(labelPrints)
      .where(eq(labelPrints.packId, pack.id));
    const copy = (printed?.copy ?? 0) + 2;
    await print(db, pack.id, copy - 1);
    await print(db, pack.id, copy);
    expect(await meaningOfText(db, packLabelText(number, copy))).toMatchObject({
      verdict: 'understood',
      meaning: { kind: 'pack', packId: pack.id, copy, setId: pack.setId },
    });
    const old = await meaningOfText(db, packLabelText(number, copy - 1));
    expect(old).toMatchObject({ verdict: 'refused', meaning: { because: 'oldLabel', setId: pack.setId } });
    expect(old.sentence).toContain('scan the newest');
    expect(await meaningOfText(db, packLabelText(number, copy + 7))).toMatchObject({
      meaning: { kind: 'refused', because: 'noSuchCopy' },
    });
    // typed by hand, the copy cannot be told: that is said
    expect((await meaningOfText(db, number, { how: 'typed' })).sentence).toContain('copy was not checked');
  });

  it('takes no label of an opened pack', async () => {
    const db = await demoDatabase();
    const { number } = await aPack(db, 'opened');
    const answer = await meaningOfText(db, packLabelText(number, 1));
    expect(answer).toMatchObject({ verdict: 'refused', meaning: { because: 'packOpened' } });
  });

  it('takes no old count sheet: printed again, counted since, or of another version', async () => {
    const db = await demoDatabase();
    const [set] = await db.read.select().from(sets).where(eq(sets.id, 'set_sfs-09'));
    if (!set) throw new Error('no such set');
    const later = new Date(DEMO_NOW.getTime() + 60_000).toISOString();
    const sheet = (number: string, printedAt: string) =>
      db.tx(async (write) => {
        await write.insert(sheetPrints).values({
          number,
          setId: set.id,
          versionId: set.versionId,
          setRevision: set.revision,
          printedBy: 'person_wren-adeyemi',
          printedAt,
        });
      });
    await sheet('S9000001-1', NOW);
    expect((await meaningOfText(db, 'S9000001-1')).meaning).toMatchObject({ kind: 'sheet', setId: set.id });
    await sheet('S9000002-2', later);
    expect((await meaningOfText(db, 'S9000001-1')).meaning).toMatchObject({
      because: 'oldSheet',
      setId: set.id,
    });
    expect((await meaningOfText(db, 'S9000002-2')).meaning.kind).toBe('sheet');
    await db.tx(async (write) => {
      await write.insert(counts).values({
        id: 'count_later',
        setId: set.id,
        versionId: set.versionId,
        countedBy: 'person_wren-adeyemi',
        countedAt: new Date(DEMO_NOW.getTime() + 120_000).toISOString(),
        baseRevision: set.revision,
      });
    });
    expect((await meaningOfText(db, 'S9000002-2')).meaning).toMatchObject({ because: 'oldSheet' });
  });

  it('does not choose between two things of one name', async () => {
    const db = await demoDatabase();
    await db.tx(async (write) => {
      await write.update(items).set({ code: 'SFS-03' }).where(eq(items.id, 'item_cr-p35-n-04'));
    });
    expect((await meaningOfText(db, 'SFS-03')).meaning).toMatchObject({
      because: 'severalThings',
      candidates: ['set SFS-03', 'item SFS-03'],
    });
  });

  it('asks no table that has no index for it', async () => {
    const db = await demoDatabase();
    const looked: [string, string][] = [
      ['SELECT * FROM sets WHERE code = ?', 'sets'],
      ['SELECT * FROM items WHERE code = ?', 'items'],
      ['SELECT * FROM items WHERE gtin = ?', 'items'],
      ['SELECT * FROM loads WHERE number = ?', 'loads'],
      ['SELECT * FROM packs WHERE number = ?', 'packs'],
      ['SELECT * FROM label_prints WHERE pack_id = ? ORDER BY copy DESC LIMIT 1', 'label_prints'],
      ['SELECT * FROM sheet_prints WHERE set_id = ? AND printed_at > ?', 'sheet_prints'],
      ['SELECT * FROM cases WHERE reference = ?', 'cases'],
      ['SELECT * FROM scans WHERE id = ?', 'scans'],
      [
        'SELECT * FROM scans WHERE context_kind = ? AND context_id = ? AND thing = ? ORDER BY seq DESC LIMIT 1',
        'scans',
      ],
    ];
    for (const [query, table] of looked) {
      const plan = db.read.all(sql.raw(`EXPLAIN QUERY PLAN ${query.replaceAll('?', "'x'")}`)) as {
        detail: string;
      }[];
      const told = plan.map(({ detail }) => detail).join('; ');
      expect(told, query).toMatch(new RegExp(`SEARCH ${table} USING`));
      expect(told, query).not.toContain('SCAN');
      expect(told, query).not.toContain('TEMP B-TREE');
    }
  });
});

describe('twice', () => {
  const bench = { kind: 'bench', countId: countId.parse('count_bench-1') } as const;
  const other = { kind: 'bench', countId: countId.parse('count_bench-2') } as const;

  it('the same serial in one context does nothing twice; in another context it is new', async () => {
    const db = await demoDatabase();
    const text = `]d201${GTIN}21S-9`;
    const answers = await scanned(
      db,
      incoming(text, { context: bench, doneAt: '2026-01-14T06:12:00.000Z' }),
      incoming(text, { context: bench }),
      incoming(text, { context: other }),
      incoming(text),
      incoming(text),
    );
    expect(answers.map(({ verdict }) => verdict)).toEqual([
      'understood',
      'already',
      'understood',
      'understood',
      'understood',
    ]);
    expect(answers[1]?.sentence).toBe(
      'CR-P35-N-04 · serial S-9: already scanned 06:12 by Wren Adeyemi. Nothing was done twice.',
    );
  });

  it('the same article without a serial is asked about, and another lot is not the same', async () => {
    const db = await demoDatabase();
    const answers = await scanned(
      db,
      incoming(`]d201${GTIN}10A`, { context: bench }),
      incoming(`]d201${GTIN}10A`, { context: bench }),
      incoming(`]d201${GTIN}10B`, { context: bench }),
    );
    expect(answers.map(({ verdict }) => verdict)).toEqual(['understood', 'ask', 'understood']);
    const { person } = await by(db, 'wren-adeyemi');
    const asked = answers[1]?.id ?? '';
    const say = (reply: string, scan = asked) =>
      replyToScan({ db, now: NOW, person, scan, reply: { reply } });
    expect(await say('another')).toEqual({ ok: true, value: { id: asked, reply: 'another' } });
    expect(await say('another')).toMatchObject({ ok: true });
    expect(await say('same')).toMatchObject({ ok: false, refusal: { because: 'conflict' } });
    expect(await say('same', answers[0]?.id)).toMatchObject({ ok: false, refusal: { because: 'frozen' } });
    expect(await say('perhaps')).toMatchObject({ ok: false, refusal: { because: 'invalid' } });
    expect(await say('same', 'scan_none')).toMatchObject({ ok: false, refusal: { because: 'notFound' } });
  });

  it('the same scan sent again is stored once and answered the same, whatever changed meanwhile', async () => {
    const db = await demoDatabase();
    const { pack, number } = await aPack(db, 'sterile');
    const [had] = await db.read.select().from(labelPrints).where(eq(labelPrints.packId, pack.id));
    if (!had) await print(db, pack.id, 1);
    const scan = incoming(packLabelText(number, 1));
    const [first] = await scanned(db, scan);
    await print(db, pack.id, 2);
    const [again] = await scanned(db, scan);
    expect(again).toEqual(first);
    expect(first?.verdict).toBe('understood');
    expect(await db.read.select().from(scans).where(eq(scans.id, scan.id))).toHaveLength(1);
    const entries = await db.read.select().from(ledger).where(eq(ledger.subjectId, scan.id));
    expect(entries).toHaveLength(1);
    expect(entries[0]).toMatchObject({ action: 'record-scan', personId: 'person_wren-adeyemi' });
  });

  it('an id is one scan’s: another text, or another person, is refused', async () => {
    const db = await demoDatabase();
    const scan = incoming('SFS-03');
    await scanned(db, scan);
    const [wren, jolene] = [await by(db, 'wren-adeyemi'), await by(db, 'jolene-stott')];
    const outcomes = await recordScans({
      db,
      now: NOW,
      scans: [
        { scan: { ...scan, text: 'SFS-02' }, by: { ok: true, value: wren } },
        { scan, by: { ok: true, value: jolene } },
        { scan: incoming('SFS-02'), by: { ok: true, value: jolene } },
      ],
    });
    expect(outcomes.map((one) => (one.ok ? 'stored' : one.refusal.because))).toEqual([
      'conflict',
      'conflict',
      'stored',
    ]);
  });
});

describe('what is kept of a scan', () => {
  it('who, when it was done and when entered; late ones are marked, and a fast clock is not believed', async () => {
    const db = await demoDatabase();
    const at = (minutes: number) => new Date(DEMO_NOW.getTime() + minutes * 60_000).toISOString();
    const answers = await scanned(
      db,
      incoming('SFS-03', { doneAt: at(-9) }),
      incoming('SFS-03', { doneAt: at(-11) }),
      incoming('SFS-03', { doneAt: at(90) }),
    );
    expect(answers.map(({ late, doneAt }) => [late, doneAt])).toEqual([
      [false, at(-9)],
      [true, at(-11)],
      [false, NOW],
    ]);
    const [person] = await db.read.select().from(people).where(eq(people.id, 'person_wren-adeyemi'));
    const reading = readAs(db, (await by(db, 'wren-adeyemi')).person);
    const last = await lastScans(reading, { personId: (await by(db, 'wren-adeyemi')).person.id });
    expect(last).toHaveLength(3);
    expect(last[0]).toMatchObject({ by: person?.name, verdict: 'understood' });
  });

  it('never changes, nor goes', async () => {
    const db = await demoDatabase();
    await scanned(db, incoming('SFS-03'));
    const told = (query: string) => db.tx(async (write) => void write.run(sql.raw(query)));
    for (const query of [
      "UPDATE scans SET text = 'x'",
      'DELETE FROM scans',
      'INSERT OR REPLACE INTO scans SELECT * FROM scans',
    ])
      await expect(told(query), query).rejects.toMatchObject({
        cause: { message: 'scans are append-only' },
      });
  });

  it('a badge or a person’s number is refused without a word of it: not one byte gets into the file', async () => {
    const db = await demoDatabase();
    const badge = newBadgeCode(Uint8Array.from({ length: 26 }, (_, at) => (at * 7 + 3) % 32));
    const gsrn = '952123456789012348';
    const wren = { ok: true, value: await by(db, 'wren-adeyemi') } as const;
    const texts = [
      badge,
      badge.toLowerCase(),
      `]C0${badge}`,
      `]d28018${gsrn}`,
      `(8018)${gsrn}`,
      '9434765919',
    ];
    const outcomes = await recordScans({
      db,
      now: NOW,
      scans: [...texts.map((text) => incoming(text)), incoming('SFS-03')].map((scan) => ({ scan, by: wren })),
    });
    expect(outcomes.map(({ ok }) => ok)).toEqual([...texts.map(() => false), true]);
    expect(JSON.stringify(outcomes.slice(0, -1))).not.toMatch(new RegExp(`${badge}|${gsrn}|9434765919`, 'i'));
    const [{ file } = { file: '' }] = db.read.all(sql`PRAGMA database_list`) as { file: string }[];
    const bytes = ['', '-wal'].map((end) => readFileSync(file + end).toString('latin1')).join('');
    // the scan beside them is there, so the bytes looked at are those that were written
    expect(bytes).toContain('SFS-03');
    for (const secret of [badge, gsrn, '9434765919']) expect(bytes.toUpperCase()).not.toContain(secret);
  });

  it('the database refuses a badge itself, whatever the program sends', async () => {
    const db = await demoDatabase();
    await scanned(db, incoming('SFS-03'));
    const [{ file } = { file: '' }] = db.read.all(sql`PRAGMA database_list`) as { file: string }[];
    const connection = new Sqlite(file);
    try {
      const columns =
        'id, text, how, separators, person_id, context_kind, verdict, meaning, sentence, done_at, entered_at, late';
      const values = (text: string) =>
        `'scan_x', '${text}', 'scanner', 'mayBeLost', 'person_wren-adeyemi', 'none', 'unknown', '{}', 's', 'a', 'b', 0`;
      expect(() =>
        connection.exec(`INSERT INTO scans (${columns}) VALUES (${values(']C0kwbadge123')})`),
      ).toThrow(/CHECK/);
      expect(() =>
        connection.exec(`INSERT INTO scans (${columns}) VALUES (${values('other')})`),
      ).not.toThrow();
    } finally {
      connection.close();
    }
  });
});
