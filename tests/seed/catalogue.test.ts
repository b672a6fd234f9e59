import { describe, expect, it } from 'vitest';
import { checkItem } from '@/lib/catalogue/check';
import { ITEM_KINDS, type Item, type ItemKind, type ItemOf, item } from '@/lib/catalogue/item';
import { missingValues } from '@/lib/catalogue/missing';
import { catalogueEntries } from '@/seed/catalogue/catalogue';
import published from '../fixtures/screw-threads.json';

const catalogue: Item[] = catalogueEntries().map((entry) => item.parse(entry));
const of = <K extends ItemKind>(kind: K) => catalogue.filter((one): one is ItemOf<K> => one.kind === kind);
const um = (mm: number) => Math.round(mm * 1000);

describe('the demo catalogue', () => {
  it('has at least 350 items and every kind', () => {
    expect(catalogue.length).toBeGreaterThanOrEqual(350);
    for (const kind of ITEM_KINDS) expect(of(kind).length, kind).toBeGreaterThan(0);
  });

  it('has no item with a problem', () => {
    const problems = catalogue.flatMap((one) =>
      checkItem(one).map((problem) => `${one.code}: ${problem.message}`),
    );
    expect(problems).toEqual([]);
  }, 60_000);

  it('names every code and GTIN once, and every id after its code', () => {
    expect(new Set(catalogue.map((one) => one.code.toLowerCase())).size).toBe(catalogue.length);
    expect(new Set(catalogue.map((one) => one.gtin)).size).toBe(catalogue.length);
    for (const { id, code } of catalogue) expect(id).toBe(`item_${code.toLowerCase().replace(/[./]/g, '-')}`);
  });

  it('keeps its GTINs under 952, the GS1 prefix for examples', () => {
    for (const { gtin } of catalogue) expect(gtin).toMatch(/^0952\d{10}$/);
  });

  it('uses all hole classes and plate shapes, sides mirrored', () => {
    const holes = of('plate').flatMap((plate) => plate.holes);
    expect([...new Set(holes.map((hole) => hole.holeClass))].sort()).toEqual([
      'compressionSlot',
      'elongatedSlot',
      'polyaxialThreaded',
      'round',
      'threaded',
      'twoZone',
      'wireHole',
    ]);
    expect(new Set(of('plate').map((plate) => plate.shape)).size).toBe(10);
    for (const left of of('plate').filter((plate) => plate.side === 'left')) {
      const right = of('plate').find(
        (plate) => plate.code === left.code.replace(/-L-(\d+)$/, '-R-$1') && plate.side === 'right',
      );
      expect(right?.lookAlikeOf).toBe(left.lookAlikeOf);
      // a mirror image: the same distance across, on the other side
      expect(right?.holes.map((hole) => hole.acrossUm)).toEqual(
        left.holes.map((hole) => 0 - hole.acrossUm || 0),
      );
      expect(right?.holes.map((hole) => hole.alongUm)).toEqual(left.holes.map((hole) => hole.alongUm));
    }
  });

  it('leaves a handful of values open, and has withdrawn and recalled items', () => {
    const open = catalogue.filter((one) => missingValues(one).length > 0);
    expect(open.length).toBeGreaterThanOrEqual(5);
    expect(open.length).toBeLessThan(20);
    expect(catalogue.some((one) => one.status === 'withdrawn')).toBe(true);
    expect(catalogue.some((one) => one.status === 'recalled')).toBe(true);
  });

  it('hides less of every bit in its sleeve than leaves room for the longest screw it is for', () => {
    // found by hand once: 50 mm bits under 60 mm sleeves; a bit must come out of the sleeve by 15 mm at least
    const tooLong = of('drillSleeve').flatMap((sleeve) =>
      sleeve.ends.flatMap((end) =>
        of('drillBit')
          .filter((bit) => bit.diameterUm === end.boreUm && bit.makerId === sleeve.makerId)
          .filter((bit) => (bit.lengthUm ?? 0) - (sleeve.lengthUm ?? 0) < 15_000)
          .map((bit) => `${bit.code} in ${sleeve.code}`),
      ),
    );
    expect(tooLong).toEqual([]);
  });
});

describe('screws by ISO 5835 (tests/fixtures/screw-threads.json says which values were seen and which are from memory)', () => {
  for (const row of published.rows) {
    it(`${row.code}: thread, core, pitch and head as published`, () => {
      const [form, size] = row.code.split(' ');
      const screws = of('screw').filter(
        (screw) => screw.threadForm === form && screw.threadUm === um(Number(size)),
      );
      expect(screws.length).toBeGreaterThan(0);
      for (const screw of screws) {
        expect(screw.threadUm, screw.code).toBe(um(row.threadMm));
        if (screw.coreUm !== null) expect(screw.coreUm, screw.code).toBe(um(row.coreMm));
        expect(screw.pitchUm, screw.code).toBe(um(row.pitchMm));
        expect(screw.headUm, screw.code).toBe(um(row.headMm));
        expect(screw.head, screw.code).toBe('spherical');
        if (screw.drive?.form === 'hexagonSocket')
          expect(screw.drive.acrossFlatsUm, screw.code).toBe(um(row.hexMm));
        if ('shaftMm' in row && screw.screwKind === 'cancellousPartial') {
          expect(screw.shaftUm, screw.code).toBe(um(row.shaftMm as number));
          // thread lengths 16 and 32 mm: the open teaching pages that the fixture names
          expect([16_000, 32_000]).toContain(screw.threadLengthUm);
        }
      }
    });

    it(`${row.code}: bits for its pilot and gliding holes are in the catalogue`, () => {
      const diameters = of('drillBit')
        .filter((bit) => bit.status === 'current')
        .map((bit) => bit.diameterUm);
      expect(diameters).toContain(um(row.pilotMm));
      if ('glideMm' in row) expect(diameters).toContain(um(row.glideMm as number));
    });
  }

  it('a 3.5 locking screw has a 2.8 bit and a threaded sleeve for it in both makers (common practice, no source)', () => {
    for (const family of ['Linnet 3.5', 'Teasel 3.5']) {
      expect(of('screw').some((screw) => screw.lockingFamily === family)).toBe(true);
      expect(
        of('drillSleeve').some(({ ends }) =>
          ends.some((end) => end.lockingFamily === family && end.boreUm === 2800),
        ),
      ).toBe(true);
    }
    expect(of('drillBit').some((bit) => bit.diameterUm === 2800 && bit.status === 'current')).toBe(true);
  });
});
