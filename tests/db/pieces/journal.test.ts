import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { asc, eq } from 'drizzle-orm';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { migrate } from '@/db/migrate';
import { recordMoves } from '@/db/operations/pieces/record-moves';
import { loadShelf } from '@/db/queries/bench/spares';
import { pieceMoves, usageMonths } from '@/db/schema';
import { demoDatabase } from '../../setup/database';
import { type Bench, begin, bench, close, countAll, enter } from '../bench/counting';
import { unbalanced } from './balance';

const AT = '2026-01-14T08:00:00.000Z';

describe('the journal of pieces', () => {
  it('comes to what lies in every heap and slot of the demo', async () => {
    expect(await unbalanced(await demoDatabase())).toEqual([]);
  });

  it('keeps pieces whatever a count finds, puts in, puts aside, takes home and takes back', async () => {
    let moved = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(deed, { maxLength: 14 }), { minLength: 1, maxLength: 3 }),
        async (counts) => {
          const at = await bench();
          const before = await journal(at);
          for (const deeds of counts) if (!(await countWith(at, deeds))) break;
          expect(await unbalanced(at.db)).toEqual([]);
          moved += (await journal(at)).length - before.length;
        },
      ),
      { numRuns: 12, seed: 20260114 },
    );
    expect(moved).toBeGreaterThan(50);
  });

  it('says where each piece of a count went, and which case the set was in since it was counted', async () => {
    const at = await bench();
    const [line] = at.set.lines;
    if (!line) throw new Error('the set has lines');
    const first = await begin(at, at.first);
    await close(at.db, at.first, first, await countAll(at, at.first, first));
    const known = (await journal(at)).length;
    const second = await begin(at, at.first);
    const ids = await countAll(at, at.first, second, { [line.id]: line.expected - 1 });
    await close(at.db, at.first, second, ids);
    const after = (await journal(at)).slice(known);
    expect(after).toMatchObject([
      { act: 'notFound', quantity: 1, fromLineId: line.id, reason: 'bench', source: second, caseId: null },
    ]);
  });

  it('is added to and never changed, and no slot holds less than nothing', async () => {
    const { db, set, first } = await bench();
    const [line] = set.lines;
    if (!line) throw new Error('the set has lines');
    await expect(db.tx((write) => write.update(pieceMoves).set({ lot: 'x' }))).rejects.toThrow(/append-only/);
    await expect(db.tx((write) => write.delete(pieceMoves))).rejects.toThrow(/append-only/);
    const move = {
      act: 'wasted' as const,
      itemId: line.itemId,
      lot: null,
      useBy: null,
      quantity: 1_000,
      from: { setId: set.id, lineId: line.id },
      personId: first.id,
      doneAt: AT,
      enteredAt: AT,
    };
    await expect(db.tx((write) => recordMoves(write, [move]))).rejects.toThrow(/CHECK/);
    expect(await unbalanced(db)).toEqual([]);
  });

  it('counts usage by the hospital’s own month, and takes off what turned out to be a use', async () => {
    const { db, set, first } = await bench();
    const [line] = set.lines;
    if (!line) throw new Error('the set has lines');
    const slot = { setId: set.id, lineId: line.id };
    // half past midnight in summer time is still the month before in universal time
    const doneAt = '2026-06-30T23:30:00.000Z';
    const base = {
      itemId: line.itemId,
      lot: null,
      useBy: null,
      quantity: 1,
      personId: first.id,
      doneAt,
      enteredAt: doneAt,
    };
    await db.tx((write) =>
      recordMoves(write, [
        { ...base, act: 'found', to: slot, quantity: 3 },
        { ...base, act: 'notFound', from: slot, quantity: 2 },
        { ...base, act: 'explained', to: slot },
        { ...base, act: 'wasted', from: slot },
      ]),
    );
    const months = await db.read.select().from(usageMonths).where(eq(usageMonths.itemId, line.itemId));
    expect(months).toEqual([
      { itemId: line.itemId, month: '2026-07', implanted: 0, wasted: 1, notFound: 1, refilled: 0 },
    ]);
    const [last] = (await journal({ db })).slice(-1);
    expect(last?.unitPence).not.toBeNull();
  });
});

describe('a database from before the journal', () => {
  it('begins it with what lies there: lots of the shelf are known, lots in slots are not', () => {
    const path = beforeJournal((db) => {
      db.exec(`
        INSERT INTO makers (id, name) VALUES ('maker_a', 'A');
        INSERT INTO items (id, code, kind, name, maker_id, use, pack_multiple, parts_per_piece, status, detail, search_text, revision)
          VALUES ('item_a', 'A', 'screw', 'A screw', 'maker_a', 'singleUse', 1, 1, 'current', '{}', '', 1);
        INSERT INTO places (id, name, metres) VALUES ('place_a', 'A', 1);
        INSERT INTO people (id, name, role) VALUES ('person_a', 'A', 'technician');
        INSERT INTO configurations (id, code, name) VALUES ('configuration_a', 'A', 'A');
        INSERT INTO configuration_versions (id, configuration_id, version, status, layers, promises, revision)
          VALUES ('version_a', 'configuration_a', 1, 'draft', '[]', '[]', 1);
        INSERT INTO configuration_lines (id, version_id, item_id, layer, row, slot, expected, minimum, must_have_class, substitutes)
          VALUES ('line_a', 'version_a', 'item_a', 1, 1, 1, 6, 4, 1, '[]'), ('line_b', 'version_a', 'item_a', 1, 1, 2, 2, 1, 3, '[]');
        INSERT INTO sets (id, code, version_id, owner, step, step_since, revision)
          VALUES ('set_a', 'A-01', 'version_a', 'ours', 'onBench', 's', 1);
        INSERT INTO set_contents (set_id, line_id, found, unsound, condition)
          VALUES ('set_a', 'line_a', 5, 0, 'sound'), ('set_a', 'line_b', 0, 0, 'sound');
        INSERT INTO stock (id, item_id, form, lot, use_by, quantity, owner, place_id, revision)
          VALUES ('stock_a', 'item_a', 'sterilePacked', 'L1', '2027-01-01', 4, 'consignment', 'place_a', 1),
                 ('stock_b', 'item_a', 'unsterile', NULL, NULL, 0, 'ours', 'place_a', 1);`);
    });
    migrate(path);
    const db = new Sqlite(path);
    onTestFinished(() => void db.close());
    expect(
      db
        .prepare(
          'SELECT act, lot, use_by, quantity, owner, to_stock_id, to_set_id, to_line_id FROM piece_moves ORDER BY seq',
        )
        .all(),
    ).toEqual([
      {
        act: 'opening',
        lot: 'L1',
        use_by: '2027-01-01',
        quantity: 4,
        owner: 'consignment',
        to_stock_id: 'stock_a',
        to_set_id: null,
        to_line_id: null,
      },
      {
        act: 'opening',
        lot: null,
        use_by: null,
        quantity: 5,
        owner: 'ours',
        to_stock_id: null,
        to_set_id: 'set_a',
        to_line_id: 'line_a',
      },
    ]);
    expect(db.prepare('SELECT line_id, quantity FROM slot_holdings ORDER BY line_id').all()).toEqual([
      { line_id: 'line_a', quantity: 5 },
      { line_id: 'line_b', quantity: 0 },
    ]);
    expect(db.pragma('foreign_key_check')).toEqual([]);
  });
});

const deed = fc.record({
  line: fc.nat({ max: 5 }),
  kind: fc.constantFrom('found', 'found', 'fault', 'refill', 'refillOther', 'surplusHome', 'undo'),
  pieces: fc.integer({ min: 1, max: 4 }),
});
type Deed = typeof deed extends fc.Arbitrary<infer D> ? D : never;

/** One count with these deeds after every line was counted; `false` where it could not be closed. */
async function countWith(at: Bench, deeds: readonly Deed[]): Promise<boolean> {
  const items = at.set.lines.map(({ itemId }) => itemId);
  const shelf = await loadShelf(at.db, items, { setId: at.set.id, now: AT });
  const onShelf = (itemId: string) => shelf.find((lot) => lot.itemId === itemId);
  const lines = [
    ...at.set.lines.filter(({ itemId }) => onShelf(itemId)).slice(0, 3),
    ...at.set.lines.filter(({ itemId }) => !onShelf(itemId)).slice(0, 3),
  ];
  const count = await begin(at, at.first);
  const ids = await countAll(at, at.first, count);
  const refills: string[] = [];
  for (const { line: index, kind, pieces } of deeds) {
    const line = lines[index % lines.length];
    const act = line && actOf(kind, { lineId: line.id, pieces, lot: onShelf(line.itemId), refills });
    if (!act) continue;
    try {
      const id = await enter(at.db, at.first, count, act);
      ids.push(id);
      if (kind === 'refill' || kind === 'refillOther') refills.push(id);
    } catch (refusal) {
      // the shelf ran out: that is refused, and nothing has moved
      expect(String(refusal)).toMatch(/stock-/);
    }
  }
  return (await close(at.db, at.first, count, ids)).ok;
}

interface Doing {
  lineId: string;
  pieces: number;
  lot: Awaited<ReturnType<typeof loadShelf>>[number] | undefined;
  refills: string[];
}

function actOf(kind: Deed['kind'], { lineId, pieces, lot, refills }: Doing): object | null {
  switch (kind) {
    case 'found':
      return { kind, lineId, pieces };
    case 'fault':
      return { kind, lineId, pieces: 1, condition: 'bent', route: 'discard' };
    case 'refill':
      if (!lot) return null;
      return {
        kind,
        lineId,
        pieces,
        from: { kind: 'stock', stockId: lot.stockId, form: lot.form, lot: lot.lot, useBy: lot.useBy },
      };
    case 'refillOther':
      return { kind: 'refill', lineId, pieces, from: { kind: 'other', where: 'the spares drawer' } };
    case 'surplusHome':
      return { kind, lineId, pieces: 1, home: { kind: 'elsewhere', where: 'a drawer' } };
    case 'undo': {
      const entryId = refills.pop();
      return entryId ? { kind, entryId } : null;
    }
  }
}

const journal = ({ db }: Pick<Bench, 'db'>) => db.read.select().from(pieceMoves).orderBy(asc(pieceMoves.seq));

/** A database as it was before the journal, with what `fill` puts into it; answers its path. */
function beforeJournal(fill: (db: Sqlite.Database) => void): string {
  const folder = mkdtempSync(join(tmpdir(), 'pieces-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const earlier = join(folder, 'migrations');
  cpSync(join(process.cwd(), 'db', 'migrations'), earlier, { recursive: true });
  for (const name of readdirSync(earlier)) if (name >= '0016') rmSync(join(earlier, name));
  const path = join(folder, 'hospital.sqlite');
  migrate(path, earlier);
  const db = new Sqlite(path);
  db.pragma('foreign_keys = ON');
  fill(db);
  db.close();
  return path;
}
