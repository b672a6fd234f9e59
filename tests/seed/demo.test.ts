import { describe, expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { itemFromRow } from '@/db/mappers/item';
import * as schema from '@/db/schema';
import { construct } from '@/lib/plans/plan';
import { turnStep } from '@/lib/sets/setState';
import { isDemo, isEmpty, loadDemo } from '@/seed/load';
import { DEMO_NOW, demoDatabase, emptyDatabase } from '../setup/database';

describe('the demo hospital', () => {
  it('loads once, with an entry in the ledger for itself and for each act of the program in it', async () => {
    const db = emptyDatabase();
    expect(await isEmpty(db)).toBe(true);
    expect(await isDemo(db)).toBe(false);
    await loadDemo({ db, now: DEMO_NOW });
    expect(await isEmpty(db)).toBe(false);
    expect(await isDemo(db)).toBe(true);

    const before = await db.read.select().from(schema.sets);
    await loadDemo({ db, now: DEMO_NOW });
    expect(await db.read.select().from(schema.sets)).toEqual(before);
    const entries = await db.read.select().from(schema.ledger);
    expect(entries.map((entry) => entry.action)).toEqual([
      'propose-restock',
      'approve-restock',
      'receive-order',
      'open-recall',
      'acknowledge-recall',
      'acknowledge-recall',
      'load-demo',
    ]);
    expect(await findLedgerBreak(db.read)).toBeNull();
  });

  it('is never loaded over a hospital of its own, and then leaves nothing behind', async () => {
    const db = emptyDatabase();
    await db.tx(async (write) => {
      await write
        .insert(schema.people)
        .values({ id: 'person_somebody', name: 'Somebody', role: 'technician' });
    });
    await expect(loadDemo({ db, now: DEMO_NOW })).rejects.toThrow('only loaded into an empty database');
    expect(await db.read.select().from(schema.items)).toEqual([]);
  });

  it('has the sizes promised: items, configurations, sets, cases', async () => {
    const { read } = await demoDatabase();
    const items = await read.select().from(schema.items);
    expect(items.length).toBeGreaterThanOrEqual(350);
    expect(items.map(itemFromRow).length).toBe(items.length);
    const versions = await read.select().from(schema.configurationVersions);
    expect(versions.filter((version) => version.status === 'inForce').length).toBeGreaterThanOrEqual(14);
    expect(versions.some((version) => version.status === 'superseded')).toBe(true);
    expect(versions.some((version) => version.status === 'draft')).toBe(true);
    expect((await read.select().from(schema.sets)).length).toBeGreaterThanOrEqual(40);
    expect((await read.select().from(schema.cases)).length).toBeGreaterThanOrEqual(25);
  });

  it('has sets at every step of the turn, each held one with its because', async () => {
    const { read } = await demoDatabase();
    const sets = await read.select().from(schema.sets);
    expect(new Set(sets.map((set) => set.step))).toEqual(new Set(turnStep.options));
    for (const set of sets) expect(set.heldBecause !== null, set.code).toBe(set.step === 'held');
    expect(sets.some((set) => set.owner === 'loan')).toBe(true);
  });

  it('has sets short in each must-have class, and foreign pieces in one', async () => {
    const { read } = await demoDatabase();
    const lines = new Map(
      (await read.select().from(schema.configurationLines)).map((line) => [line.id, line]),
    );
    const contents = await read.select().from(schema.setContents);
    const short = contents.flatMap(({ lineId, found }) => {
      const line = lines.get(lineId);
      return line && found < line.expected ? [line.mustHaveClass] : [];
    });
    expect([...new Set(short)].sort()).toEqual([1, 2, 3, 4]);
    expect((await read.select().from(schema.setForeignPieces)).length).toBeGreaterThan(0);
  });

  it('stands every rack cell where it belongs: one screw family to a row, one length to a column', async () => {
    const { read } = await demoDatabase();
    const screws = new Map((await read.select().from(schema.items)).map((row) => [row.id, row]));
    const lines = (await read.select().from(schema.configurationLines)).filter(
      (line) => line.rackItemId !== null,
    );
    expect(lines.length).toBeGreaterThan(100);
    const rows = new Map<string, Set<unknown>>();
    const columns = new Map<string, Set<unknown>>();
    const put = (map: Map<string, Set<unknown>>, key: string, value: unknown) =>
      map.set(key, (map.get(key) ?? new Set()).add(value));
    for (const line of lines) {
      const screw = screws.get(line.itemId);
      const rack = itemFromRow(screws.get(line.rackItemId ?? '') as never);
      if (rack.kind !== 'rack') throw new Error(`${rack.code} is no rack`);
      expect(line.slot, `${line.id} in ${rack.code}`).toBeLessThanOrEqual(rack.columns);
      put(rows, `${line.versionId}/${line.layer}/${line.row}`, screw?.screwFamily);
      put(columns, `${line.versionId}/${line.layer}/${line.slot}`, screw?.lengthUm);
    }
    for (const families of rows.values()) expect(families.size).toBe(1);
    for (const lengths of columns.values()) expect(lengths.size).toBe(1);
  });

  it('books cases from today on, by the hospital’s own clock, and no theatre twice at once', async () => {
    const { read } = await demoDatabase();
    const cases = await read.select().from(schema.cases);
    const night = cases.find((one) => one.reference === 'LM-26-7K2P');
    // DEMO_NOW is 06:30 in winter, when London keeps UTC
    expect(night).toMatchObject({ caseDate: '2026-01-15', startsAt: '2026-01-15T02:10:00.000Z' });
    for (const one of cases) {
      expect(one.startsAt > DEMO_NOW.toISOString(), one.reference).toBe(true);
      const clash = cases.find(
        (other) =>
          other.id !== one.id &&
          other.theatreId === one.theatreId &&
          other.startsAt < one.endsAt &&
          one.startsAt < other.endsAt,
      );
      expect(clash?.reference, one.reference).toBeUndefined();
    }
  });

  it('keeps wall-clock times over the change to summer time', async () => {
    const db = emptyDatabase();
    // Europe/London goes from UTC to UTC+1 on 29 March 2026 at 01:00 UTC (IANA time zone database)
    await loadDemo({ db, now: new Date('2026-03-28T12:00:00Z') });
    const cases = await db.read.select().from(schema.cases);
    expect(cases.find((one) => one.reference === 'LM-26-7K2P')).toMatchObject({
      caseDate: '2026-03-29',
      startsAt: '2026-03-29T01:10:00.000Z',
    });
    expect(cases.find((one) => one.reference === 'LM-26-M4VQ')?.startsAt).toBe('2026-03-29T07:30:00.000Z');
  });

  it('plans only what its plates have: known holes, families and plates', async () => {
    const { read } = await demoDatabase();
    const items = new Map(
      (await read.select().from(schema.items)).map((row) => [row.id, itemFromRow(row)] as const),
    );
    const families = new Set(
      [...items.values()].flatMap((one) => (one.kind === 'screw' ? [one.screwFamily] : [])),
    );
    const bodies = [
      ...(await read.select().from(schema.plans)).map((row) => row.body),
      ...(await read.select().from(schema.planStarts)).map((row) => row.body),
      ...(await read.select().from(schema.configurationVersions)).flatMap((row) =>
        (row.promises as { construct: unknown }[]).map((promise) => promise.construct),
      ),
    ].map((body) => construct.parse(body));
    expect(bodies.length).toBeGreaterThan(40);
    for (const body of bodies) {
      for (const planned of body.plates) {
        const plate = items.get(planned.plateItemId as never);
        if (plate?.kind !== 'plate') throw new Error(`no plate ${planned.plateItemId}`);
        const known = plate.holes.map((hole) => hole.id);
        for (const [hole, fill] of Object.entries(planned.fills)) {
          expect(known, `${plate.code} ${hole}`).toContain(hole);
          if ('screwFamily' in fill) expect(families).toContain(fill.screwFamily);
        }
        if (planned.zone && plate.lengthUm)
          expect(planned.zone.toUm, plate.code).toBeLessThanOrEqual(plate.lengthUm);
      }
    }
    const kinds = bodies.flatMap((body) =>
      body.plates.flatMap((one) => Object.values(one.fills).map((fill) => fill.purpose)),
    );
    expect([...new Set(kinds)].sort()).toEqual([
      'empty',
      'lag',
      'locked',
      'neutral',
      'offset',
      'temporaryWire',
    ]);
  });
});
