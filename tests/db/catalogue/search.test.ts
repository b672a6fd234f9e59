import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '@/db/queries/catalogue';
import { catalogueFacets, searchCatalogue } from '@/db/queries/catalogueSearch';
import { searchFrom } from '@/lib/catalogue/search';
import { demoDatabase, emptyDatabase } from '../../setup/database';

const search = (query: string) => searchFrom(new URLSearchParams(query));

describe('searchCatalogue', () => {
  it('finds items by the beginnings of all words typed, sizes with comma or point', async () => {
    const db = await demoDatabase();
    const rows = await searchCatalogue(db, search('q=drill+bit+2,5'));
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.every(({ kind }) => kind === 'drillBit' || kind === 'drillSleeve')).toBe(true);
    expect(await searchCatalogue(db, search('q=dril+bi+2.5'))).toEqual(rows);
    expect(await searchCatalogue(db, search('q=drill+bit+2.5mm'))).toEqual(rows);
  });

  it('puts the item whose code was typed first', async () => {
    const db = await demoDatabase();
    const [some] = (await loadCatalogue(db)).slice(100);
    const rows = await searchCatalogue(db, search(`q=${some?.code.toLowerCase()}`));
    expect(rows[0]?.code).toBe(some?.code);
  });

  it('narrows by every filter, and shows what nobody has stated', async () => {
    const db = await demoDatabase();
    const plates = await searchCatalogue(db, search('kind=plate&side=left'));
    expect(plates.length).toBeGreaterThan(0);
    expect(plates.every((row) => row.kind === 'plate' && row.side === 'left')).toBe(true);
    const unstated = await searchCatalogue(db, search('missing=yes'));
    expect(unstated.length).toBeGreaterThan(0);
    expect(unstated.every(({ missing }) => missing > 0)).toBe(true);
    const screws = await searchCatalogue(db, search('kind=screw&diameterUm=3500'));
    expect(screws.every(({ diameterUm }) => diameterUm === 3_500)).toBe(true);
  });

  it('takes anything typed as words, never as a query of its own', async () => {
    const db = await demoDatabase();
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'grapheme', maxLength: 60 }), async (q) => {
        const rows = await searchCatalogue(db, { ...search(''), q });
        expect(Array.isArray(rows)).toBe(true);
      }),
      { examples: [['"'], ['a" OR "b'], ['NEAR(a b)'], ['-*'], ['col:a'], ['^a'], ['(((']], numRuns: 60 },
    );
    expect(await searchCatalogue(db, search('q=((('))).toEqual([]);
    // ten thousand letters are no word of the catalogue: they find nothing, not everything
    expect(await searchCatalogue(db, search(`q=${'x'.repeat(10_000)}`))).toEqual([]);
  });

  it('has nothing to show in an empty catalogue', async () => {
    const db = emptyDatabase();
    expect(await searchCatalogue(db, search('q=plate'))).toEqual([]);
    expect(await catalogueFacets(db)).toMatchObject({ total: 0, kinds: [] });
  });

  it('leaves out of the address what makes no sense', () => {
    expect(search('kind=spoon&side=middle&diameterUm=-4&missing=perhaps')).toEqual(search(''));
  });
});
