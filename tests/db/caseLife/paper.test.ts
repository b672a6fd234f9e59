import { eq } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { readAs } from '@/db/client';
import { loadKitOfCase } from '@/db/queries/caseKit';
import type { Person } from '@/db/queries/people';
import { sets } from '@/db/schema';
import { kitFacts } from '@/lib/documents/kitSheet';
import { PRINTING } from '../../lib/documents/setForSheet';
import { demoDatabase } from '../../setup/database';
import { KitDesk, saidOf, setThing } from './kitDesk';

/** What a sheet of the case names to be taken, as this person prints it. */
async function printed(desk: KitDesk, person: Person, byList = true) {
  const loaded = await loadKitOfCase(readAs(desk.db, person), desk.caseId, {
    solver: null,
    lengthCover: 'none',
    byList,
  });
  if (loaded.kind !== 'kit') throw new Error(loaded.kind);
  const facts = kitFacts({ ...loaded.answer, personName: (id) => id, printing: PRINTING });
  return {
    sets: loaded.answer.kit.sets.map(({ code }) => code),
    verdict: loaded.answer.kit.verdict.kind,
    byTheList: facts.find(({ term }) => term === 'By the list')?.value ?? null,
  };
}

it('a pick list on paper names what the kit is fetched by, and the copy that was picked', async () => {
  const desk = new KitDesk(await demoDatabase(), 'LM-26-2HXD');
  const [picker, checker] = [await desk.person('wren-adeyemi'), await desk.person('tomas-birkett')];
  // the copy that is promised to the case, though the other is as good
  expect(await printed(desk, picker)).toMatchObject({ sets: ['SFS-01'], byTheList: null });
  expect(saidOf(await desk.makeList())).toEqual([]);
  const listed = await printed(desk, picker);
  expect(listed).toMatchObject({ sets: ['SFS-01'], verdict: 'ready' });
  expect(listed.byTheList).toContain('14 January 2026');
  expect(saidOf(await desk.pick(setThing('SFS-02')))).toEqual([]);
  expect(await printed(desk, picker)).toMatchObject({ sets: ['SFS-02'], verdict: 'ready' });

  // whoever may still check it sees the list as it was worked out, and nothing of what lies with the kit
  expect(saidOf(await desk.finish())).toEqual([]);
  expect(await printed(desk, checker)).toMatchObject({ sets: ['SFS-01'] });
  expect(await printed(desk, picker)).toMatchObject({ sets: ['SFS-02'] });
});

it('what went wrong with a listed set is on the paper; nothing else in store takes its place', async () => {
  const desk = new KitDesk(await demoDatabase(), 'LM-26-2HXD');
  const picker = await desk.person('wren-adeyemi');
  await desk.makeList();
  await desk.db.tx(async (write) => {
    await write.update(sets).set({ useBy: '2026-01-01' }).where(eq(sets.code, 'SFS-01'));
  });
  expect(await printed(desk, picker, false)).toMatchObject({ sets: ['SFS-02'], verdict: 'ready' });
  const paper = await printed(desk, picker);
  expect(paper.sets).not.toContain('SFS-02');
  expect(paper.verdict).not.toBe('ready');
});
