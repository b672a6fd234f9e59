import { eq, inArray } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { beginLoanReturn } from '@/db/operations/loans/begin-loan-return';
import { listPeople } from '@/db/queries/people';
import { loadStore } from '@/db/queries/store';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { loans, loanTrays, setPromises, sets } from '@/db/schema';
import { loanId } from '@/lib/identity/ids';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

const NOW = DEMO_NOW.toISOString();

it('a set on its way back to its lender serves no case, and one still in service does', async () => {
  const db = await demoDatabase();
  const rows = await db.read
    .select({ loan: loans, set: sets })
    .from(loanTrays)
    .innerJoin(loans, eq(loans.id, loanTrays.loanId))
    .innerJoin(sets, eq(sets.id, loanTrays.setId))
    .where(eq(loans.state, 'inService'));
  const [first] = rows;
  if (!first) throw new Error('the demo has no loan in service');
  const of = (isFirst: boolean) => rows.filter(({ loan }) => (loan.id === first.loan.id) === isFirst);
  const [leaving, staying] = [of(true), of(false)].map((some) => some.map(({ set }) => set.code));
  expect(staying?.length).toBeGreaterThan(0);
  const offered = async () => [
    (await loadStore(db, null)).sets.map(({ code }) => code),
    (await planningFacts(db, NOW)).sets.map(({ code }) => code),
  ];
  for (const codes of await offered())
    expect(codes).toEqual(expect.arrayContaining([...(leaving ?? []), ...(staying ?? [])]));

  const ids = of(true).map(({ set }) => set.id);
  await db.tx((write) => write.delete(setPromises).where(inArray(setPromises.setId, ids)));
  const keeper = (await listPeople(db)).find(({ role }) => role === 'stockKeeper');
  if (!keeper) throw new Error('the demo has no stock keeper');
  // a tray without a tag is no set, and takes none of the others away when it leaves
  await db.tx((write) => write.insert(loanTrays).values({ loanId: first.loan.id, tray: 9 }));
  const begun = await beginLoanReturn({
    db,
    now: NOW,
    newId: (prefix) => `${prefix}_test`,
    person: keeper,
    loanId: loanId.parse(first.loan.id),
    baseRevision: first.loan.revision,
    because: 'The lender wants it back.',
  });
  expect(begun).toMatchObject({ ok: true });
  for (const codes of await offered()) {
    expect(codes).toEqual(expect.arrayContaining(staying ?? []));
    for (const code of leaving ?? []) expect(codes).not.toContain(code);
  }
});
