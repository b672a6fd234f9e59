import { expect, it } from 'vitest';
import { loadStore, setsOnFile } from '@/db/queries/store';
import { cases, setPromises } from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import { demoDatabase } from '../../setup/database';

it('a store of sets read once says of each case what is promised to it, whichever case was asked about before', async () => {
  const db = await demoDatabase();
  const [booked, promises, shared] = await Promise.all([
    db.read.select({ id: cases.id, reference: cases.reference }).from(cases),
    db.read.select().from(setPromises),
    setsOnFile(db),
  ]);
  const referenceOf = new Map(booked.map(({ id, reference }) => [id, reference]));
  const bySet = groupBy(promises, ({ setId }) => setId);
  const promised = new Set(promises.map(({ caseId }) => caseId));
  expect(promised.size).toBeGreaterThan(1);
  // for no case in particular between the cases, too
  for (const id of [...promised].flatMap((one) => [one, null])) {
    const { sets } = await loadStore(db, id, shared);
    expect(sets).toEqual((await loadStore(db, id)).sets);
    for (const set of sets) {
      const own = bySet.get(set.id) ?? [];
      const others = own.filter(({ caseId }) => caseId !== id).map(({ caseId }) => referenceOf.get(caseId));
      expect([...set.promisedTo].sort()).toEqual(others.sort());
      expect(set.promisedHere ?? false).toBe(own.some(({ caseId }) => caseId === id));
    }
  }
});
