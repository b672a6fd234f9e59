import { and, eq, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { beginLoanReturn } from '@/db/operations/loans/begin-loan-return';
import { declareLoan } from '@/db/operations/loans/declare-loan';
import { handOverLoan } from '@/db/operations/loans/hand-over-loan';
import { openClaim } from '@/db/operations/loans/open-claim';
import { recordLoanUse } from '@/db/operations/loans/record-loan-use';
import { saveLender } from '@/db/operations/loans/save-lender';
import { settleClaim } from '@/db/operations/loans/settle-claim';
import { takeLoanIn } from '@/db/operations/loans/take-loan-in';
import { weighTrays } from '@/db/operations/loans/weigh-trays';
import { promiseSet } from '@/db/operations/theatre/promise-set';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { bringBackSet } from '@/db/operations/turns/bring-back-set';
import { endWash } from '@/db/operations/turns/end-wash';
import { findLoan } from '@/db/queries/loans/findLoan';
import { lendersOnFile } from '@/db/queries/loans/lenders';
import { loanBoard } from '@/db/queries/loans/loanBoard';
import { THE_PROGRAM } from '@/db/reader';
import { cases, configurations, loans, setPromises, sets, turnSteps } from '@/db/schema';
import { caseId, lenderId, loanClaimId, setId } from '@/lib/identity/ids';
import { nextStep } from '@/lib/loans/nextStep';
import {
  AFTER,
  arrived,
  confirmed,
  counted,
  IN_TIME,
  type Loaning,
  listed,
  loaning,
  messagesOf,
  proof,
  weighedAndTagged,
  written,
} from './hospital';

let loan: Loaning;
beforeEach(async () => {
  loan = await loaning();
  await confirmed(loan);
  await listed(loan);
  await arrived(loan);
  await weighedAndTagged(loan);
  written(await counted(loan, 'in', [3, 1, 2]));
  written(await counted(loan, 'in', [3, 1, 2], { by: loan.other }));
  written(await takeLoanIn(await loan.asking(IN_TIME)));
});

const next = async () => nextStep((await loan.record()).facts);
const tray = async (at: number) => {
  const set = (await loan.record()).trays[at]?.set;
  if (!set) throw new Error('no such tray');
  return set;
};
const setAsk = async (at: number, now: string) => {
  const { id, revision } = await tray(at);
  const { db, newId, technician } = loan;
  return { db, now, newId, person: technician, setId: setId.parse(id), baseRevision: revision };
};
async function washed(at: number, now = AFTER): Promise<void> {
  written(await beginWash(await setAsk(at, now)));
  written(await endWash({ ...(await setAsk(at, now)), seen: 'clean' }));
}
/** Puts on record that the tray was in theatre, without the load and the pack that lie before. */
async function wasInTheatre(at: number): Promise<void> {
  const { id, turnId } = await tray(at);
  await loan.db.tx((write) =>
    write.insert(turnSteps).values({
      setId: id,
      turnId: turnId ?? '',
      fromStep: 'inSterileStore',
      step: 'inTheatre',
      personId: loan.technician.id,
      doneAt: IN_TIME,
      enteredAt: IN_TIME,
    }),
  );
}
/** A case of next week in a theatre of its own. */
async function caseToCome(): Promise<string> {
  const id = 'case_test-to-come';
  await loan.db.tx((write) =>
    write.insert(cases).values({
      id,
      reference: 'LM-26-NEXT',
      theatreId: 'theatre_3',
      caseDate: '2026-02-03',
      startsAt: '2026-02-03T08:30:00.000Z',
      endsAt: '2026-02-03T10:30:00.000Z',
      region: 'distalRadius',
      limb: 'left',
      surgeonId: loan.surgeon.id,
      urgency: 'booked',
      revision: 1,
    }),
  );
  return id;
}
const lineAt = async (at: number) => (await loan.record()).lines[at]?.id ?? '';
const begun = async () =>
  beginLoanReturn({
    ...(await loan.asking(AFTER)),
    because: 'The case is over and the lender wants it back.',
  });
const use = async (quantity: number, outcome = 'implanted') =>
  recordLoanUse({
    ...(await loan.asking(AFTER, loan.technician)),
    entry: { caseId: loan.booked, uses: [{ lineId: await lineAt(0), outcome, quantity }] },
  });
const weighedOut = async () =>
  weighTrays({
    ...(await loan.asking(AFTER)),
    entry: {
      stage: 'out',
      grams: [
        { tray: 1, grams: 6_300 },
        { tray: 2, grams: 11_900 },
      ],
    },
  });
const declare = async (person = loan.technician) =>
  declareLoan({
    ...(await loan.asking(AFTER, person)),
    attestation: proof(person, 'iDeclareThisLoan', AFTER),
  });
const handOver = async (collectedBy = 'Percival Undrell') =>
  handOverLoan({
    ...(await loan.asking(AFTER)),
    collectedBy,
    attestation: proof(loan.keeper, 'iHandThisOver', AFTER),
  });

describe('what was used of a loan', () => {
  it('is entered for a case once a tray was in theatre, and never more than came', async () => {
    expect(messagesOf(await use(1))).toContain('No tray of this loan was in theatre');
    await wasInTheatre(0);
    written(await use(2));
    written(await use(1, 'openedNotImplanted'));
    expect(messagesOf(await use(2, 'openedNotImplanted'))).toContain('3 came');
    written(await use(1));
    expect((await loan.record()).reconciled[0]?.used).toBe(2);
  });
});

describe('the return', () => {
  it('is not begun while a case still to come counts on it', async () => {
    const { id } = await tray(0);
    await loan.db.tx((write) =>
      write.insert(setPromises).values({
        id: 'promise_test-loan',
        setId: id,
        caseId: loan.booked,
        fromAt: '2026-01-28T07:30:00.000Z',
        untilAt: '2026-01-28T18:00:00.000Z',
        chosenBy: 'person',
      }),
    );
    const early = beginLoanReturn({ ...(await loan.asking(IN_TIME)), because: 'We do not need it.' });
    expect(messagesOf(await early)).toContain('LN-4478-A is promised to case LM-26-LOAN');
  });

  it('goes from washing over two blind counts, weights, claim and declaration into somebody’s hands', async () => {
    await wasInTheatre(0);
    written(await use(1));
    expect(await next()).toEqual({ do: 'beginReturn' });
    written(await begun());
    // tray 2 was not opened, tray 1 was: hands go into it only once it is washed
    expect(await next()).toEqual({ do: 'decontaminate', tray: 1 });
    expect(messagesOf(await counted(loan, 'out', [2, 1, 2], { at: AFTER }))).toContain(
      'Decontaminate tray 1',
    );
    await washed(0);
    written(await counted(loan, 'out', [1, 1, 2], { at: AFTER }));
    written(await counted(loan, 'out', [1, 1, 2], { at: AFTER, by: loan.other }));
    expect(await next()).toEqual({ do: 'weighOut' });
    written(await weighedOut());
    // 3 came, 1 implanted, 1 goes back
    expect((await loan.record()).reconciled[0]?.lackingOnReturn).toBe(1);
    expect(await next()).toEqual({ do: 'claim' });
    expect(messagesOf(await declare())).toContain('Put to the lender');
    const claim = {
      lineId: await lineAt(0),
      stage: 'out',
      kind: 'notFound',
      words: 'Not found in the tray after washing.',
    };
    const { id } = written(await openClaim({ ...(await loan.asking(AFTER)), entry: claim }));
    expect((await loan.record()).claims[0]).toMatchObject({
      quantity: 1,
      state: 'open',
      lastThere: { step: 'arrivalCount', at: IN_TIME },
    });
    expect(messagesOf(await openClaim({ ...(await loan.asking(AFTER)), entry: claim }))).toContain(
      'claimed already',
    );
    expect(messagesOf(await declare(loan.keeper))).toContain('can’t declare');
    written(await declare());
    expect((await loan.record()).loan.ourDeclaration).toMatchObject({
      name: 'Wren Adeyemi',
      trays: [
        { tray: 1, how: 'decontaminated' },
        { tray: 2, how: 'asItCame' },
      ],
    });
    expect(messagesOf(await use(2))).toContain('declared');
    expect(messagesOf(await handOver('   '))).toContain('nothing stands here');
    written(await handOver());
    const gone = await loan.record();
    expect(gone.loan).toMatchObject({
      state: 'goneBack',
      collectedBy: 'Percival Undrell',
      collectedAt: AFTER,
    });
    expect(gone.trays.map(({ set }) => set?.withdrawnAt)).toEqual([AFTER, AFTER]);
    const [kind] = await loan.db.read.select().from(configurations).where(eq(configurations.code, 'LN4478A'));
    expect(kind?.withdrawnAt).toBe(AFTER);
    expect(nextStep(gone.facts)).toEqual({ do: 'settleClaims' });
    const settle = async (state: string) =>
      settleClaim({
        ...(await loan.asking(AFTER)),
        claimId: loanClaimId.parse(id),
        entry: { state, saidBy: 'Osric Tamblyn', words: 'It was never in the tray.' },
      });
    written(await settle('disputed'));
    expect(await next()).toEqual({ do: 'settleClaims' });
    written(await settle('agreed'));
    expect(messagesOf(await settle('withdrawn'))).toContain('settled');
    expect(await next()).toEqual({ do: 'nothing' });
  });

  it('the proof is the person’s own, for this act, of now', async () => {
    written(await begun());
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER }));
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER, by: loan.other }));
    written(await weighedOut());
    const { technician, other } = loan;
    for (const attestation of [
      proof(other, 'iDeclareThisLoan', AFTER),
      proof(technician, 'iPacked', AFTER),
      proof(technician, 'iDeclareThisLoan', IN_TIME),
    ])
      expect(
        messagesOf(await declareLoan({ ...(await loan.asking(AFTER, technician)), attestation })),
      ).toContain('Prove');
    written(await declare());
  });

  it('what is to go back is neither promised nor used any more, and what is declared takes no step', async () => {
    await washed(0);
    written(await begun());
    const promise = await promiseSet({
      ...(await setAsk(0, AFTER)),
      person: loan.manager,
      caseId: caseId.parse(await caseToCome()),
      baseRevision: 1,
      round: { leadMinutes: 60, roundMinutes: () => 300 },
    });
    expect(messagesOf(promise)).toContain('goes back to its lender with LN-4478');
    const { id } = await tray(0);
    const toTheatre = loan.db.tx(async (write) => {
      await write.run(sql`INSERT OR IGNORE INTO legal_steps VALUES ('onBench', 'inTheatre')`);
      await write.update(sets).set({ step: 'inTheatre' }).where(eq(sets.id, id));
    });
    await expect(toTheatre).rejects.toThrow(/not used any more/);
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER }));
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER, by: loan.other }));
    written(await weighedOut());
    written(await declare());
    expect(messagesOf(await beginWash(await setAsk(0, AFTER)))).toContain('goes back to its lender');
  });

  it('what has gone back is not brought into service again, by the program or past it', async () => {
    written(await begun());
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER }));
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER, by: loan.other }));
    written(await weighedOut());
    written(await declare());
    const tooEarly = loan.db.tx((write) =>
      write.update(loans).set({ state: 'goneBack' }).where(eq(loans.id, loan.id())),
    );
    await expect(tooEarly).rejects.toThrow(/declared, signed for/);
    written(await handOver());
    const back = await bringBackSet({
      ...(await setAsk(0, AFTER)),
      person: loan.lead,
      reason: 'We keep it.',
    });
    expect(messagesOf(back)).toContain('has gone back to its lender');
    const { id } = await tray(0);
    await expect(
      loan.db.tx((write) =>
        write.update(sets).set({ withdrawnAt: null, withdrawnBecause: null }).where(eq(sets.id, id)),
      ),
    ).rejects.toThrow(/gone back/);
  });
});

describe('screens and figures', () => {
  const reading = () => ({ read: loan.db.read, reader: THE_PROGRAM }) as const;

  it('the board puts the loan where its next step is, with that step', async () => {
    const board = await loanBoard(reading(), AFTER);
    expect(board.find(({ id }) => id === loan.id())).toMatchObject({
      number: 'LN-4478',
      state: 'inService',
      next: { do: 'beginReturn' },
      lateMinutes: 0,
    });
  });

  it('the figures that are still counted blind are on no screen', async () => {
    await washed(0);
    await washed(1);
    written(await begun());
    written(await counted(loan, 'out', [1, 1, 2], { at: AFTER }));
    const found = await findLoan(reading(), loan.id(), AFTER);
    expect(found?.counting.out.next).toBe('check');
    expect(found?.lines.every(({ goesOut }) => goesOut === null)).toBe(true);
    expect(found?.unclaimed).toEqual([]);
  });

  it('a lender’s figures count this loan as on time, and as processed for nothing once it went back unused', async () => {
    const figures = async () => {
      const lenderOf = (await loan.record()).loan.lenderId;
      const lender = (await lendersOnFile(reading(), AFTER)).find(({ id }) => id === lenderOf);
      return lender?.figures;
    };
    expect((await figures())?.punctuality).toMatchObject({ n: 1, onTime: 1, medianLateMinutes: 0 });
    expect((await figures())?.unused).toEqual({ n: 0, unused: 0 });
    await washed(0);
    await washed(1);
    written(await begun());
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER }));
    written(await counted(loan, 'out', [3, 1, 2], { at: AFTER, by: loan.other }));
    written(await weighedOut());
    written(await declare());
    written(await handOver());
    expect((await figures())?.unused).toEqual({ n: 1, unused: 1 });
  });

  it('a kind made for a tray goes out of use with it and no sooner; ours still take two people', async () => {
    const out = (code: string) =>
      loan.db.tx((write) =>
        write.update(configurations).set({ withdrawnAt: AFTER }).where(eq(configurations.code, code)),
      );
    await expect(out('LN4478A')).rejects.toThrow(/two people/);
    await expect(out('SFL')).rejects.toThrow(/two people/);
  });

  it('a lender goes out of use only once nothing of it is open', async () => {
    const { db, keeper, newId } = loan;
    const { lenderId: id } = (await loan.record()).loan;
    const known = { id: lenderId.parse(id), baseRevision: 1, inUse: false };
    const refused = await saveLender({
      db,
      now: AFTER,
      newId,
      person: keeper,
      entry: { name: 'Wendlebury' },
      known,
    });
    expect(messagesOf(refused)).toContain('still has LN-4478');
  });
});

it('every tray has the steps of an ordinary set on record, and no other way in', async () => {
  const { id } = await tray(0);
  const rows = await loan.db.read
    .select()
    .from(turnSteps)
    .where(and(eq(turnSteps.setId, id), eq(turnSteps.step, 'comingBack')));
  expect(rows).toHaveLength(1);
});
