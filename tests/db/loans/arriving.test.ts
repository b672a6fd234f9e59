import { eq, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { answerAboutLoan } from '@/db/operations/loans/answer-about-loan';
import { answerLoan } from '@/db/operations/loans/answer-loan';
import { askAboutLoan } from '@/db/operations/loans/ask-about-loan';
import { askForLoan } from '@/db/operations/loans/ask-for-loan';
import { beginLoanReturn } from '@/db/operations/loans/begin-loan-return';
import { bringLoanList } from '@/db/operations/loans/bring-loan-list';
import { callOffLoan } from '@/db/operations/loans/call-off-loan';
import { recordArrival } from '@/db/operations/loans/record-arrival';
import { recordPapers } from '@/db/operations/loans/record-papers';
import { tagTrays } from '@/db/operations/loans/tag-trays';
import { takeLoanIn } from '@/db/operations/loans/take-loan-in';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { liftHold } from '@/db/operations/turns/lift-hold';
import { configurationLines, ledger, loans, notices, sets, settings } from '@/db/schema';
import { type LoanQuestionId, setId } from '@/lib/identity/ids';
import { nextStep } from '@/lib/loans/nextStep';
import { NEXT_LOAN_STATES } from '@/lib/loans/states';
import {
  ASKED,
  arrived,
  confirmed,
  counted,
  IN_TIME,
  knownItems,
  LIST,
  type Loaning,
  listed,
  loaning,
  messagesOf,
  proof,
  TOO_LATE,
  weighedAndTagged,
  written,
} from './hospital';

let loan: Loaning;
beforeEach(async () => {
  loan = await loaning();
});

const next = async (at?: string) => nextStep((await loan.record(at)).facts);
const setsOf = async () => {
  const { trays } = await loan.record();
  return trays.map(({ set }) => set).filter((set) => set !== null);
};
const toldTo = async (person: { id: string }) =>
  (await loan.db.read.select().from(notices).where(eq(notices.personId, person.id)))
    .filter(({ kind }) => kind.startsWith('loan'))
    .map(({ kind, detail }) => (kind === 'loanNews' ? (detail as { news: string }).news : kind));

describe('asking for a loan', () => {
  it('states every fault at once, and writes nothing', async () => {
    const { db, keeper, newId } = loan;
    const entry = {
      lenderId: 'lender_none',
      caseId: null,
      fromDate: '2026-02-03',
      untilDate: '2026-02-01',
      askedFor: '',
      configurationId: null,
    };
    const refused = await askForLoan({ db, now: ASKED, newId, person: keeper, entry });
    expect(refused.ok ? [] : refused.refusal.problems.map(({ path }) => path.join('.')).sort()).toEqual([
      'askedFor',
      'untilDate',
    ]);
  });

  it('is the keeper’s, the theatre’s and the surgeon’s to ask; only the keeper enters what the lender says', async () => {
    await confirmed(loan);
    const { db, newId, technician, surgeon, asking } = loan;
    const none = await askForLoan({ db, now: ASKED, newId, person: technician, entry: {} });
    expect(messagesOf(none)).toContain('can’t ask a lender');
    const said = { answer: 'no', saidBy: 'Osric Tamblyn', because: 'It is out on another loan' };
    const refused = await answerLoan({ ...(await asking(ASKED, surgeon)), entry: said });
    expect(refused.ok ? 'done' : refused.refusal.because).toBe('notPermitted');
    expect(await toldTo(surgeon)).toEqual(['asked', 'confirmed']);
  });

  it('a lender that says no after yes ends it, and the surgeon is told with the reason', async () => {
    await confirmed(loan);
    const said = { answer: 'no', saidBy: 'Osric Tamblyn', because: 'It came back damaged from elsewhere' };
    written(await answerLoan({ ...(await loan.asking(ASKED)), entry: said }));
    expect((await loan.record()).loan).toMatchObject({ state: 'refused', endedBecause: said.because });
    expect(await toldTo(loan.surgeon)).toContain('refused');
    expect(messagesOf(await callOffLoan({ ...(await loan.asking(ASKED)), because: 'x' }))).toContain(
      'refused by the lender',
    );
  });

  it('a stale revision saves nothing and shows the state as it is', async () => {
    await confirmed(loan);
    const stale = { ...(await loan.asking(ASKED)), baseRevision: 1 };
    const refused = await callOffLoan({ ...stale, because: 'not needed any more' });
    expect(refused).toMatchObject({
      ok: false,
      refusal: { because: 'conflict', current: { state: 'confirmed' } },
    });
  });
});

describe('the content list', () => {
  it('is tried first and taken whole; a later one takes its place until something is counted', async () => {
    await confirmed(loan);
    const { gtin, code } = await knownItems(loan);
    const source = { kind: 'csv' as const, text: LIST(gtin, code), fileName: 'list.csv' };
    const tried = written(await bringLoanList({ ...(await loan.asking(ASKED)), source, dryRun: true }));
    expect(tried).toMatchObject({ trays: 2, lines: 3, pieces: 6, unclassed: 2 });
    expect(tried.unknown).toEqual([{ tray: 1, name: 'bone hook of the lender', quantity: 1 }]);
    expect((await loan.record()).lines).toEqual([]);
    await listed(loan);
    await listed(loan);
    expect((await loan.record()).lines).toHaveLength(3);
    await arrived(loan);
    await weighedAndTagged(loan);
    expect(
      messagesOf(await bringLoanList({ ...(await loan.asking(IN_TIME)), source, dryRun: false })),
    ).toContain('stands');
  });

  it('a list with a fault leaves the one before as it was', async () => {
    await confirmed(loan);
    await listed(loan);
    const source = { kind: 'csv' as const, text: 'name,quantity\nplate,many', fileName: 'list.csv' };
    const refused = await bringLoanList({ ...(await loan.asking(ASKED)), source, dryRun: false });
    expect(messagesOf(refused)).toBe('Line 2, quantity: “many” is no whole number from 1 to 999.');
    expect((await loan.record()).lines).toHaveLength(3);
  });

  it('and the trays that came must be as many as it has', async () => {
    await confirmed(loan);
    await listed(loan);
    const entry = { arrivedAt: IN_TIME, broughtBy: 'a driver', trays: 3, placeId: null };
    expect(messagesOf(await recordArrival({ ...(await loan.asking(IN_TIME)), entry }))).toContain(
      '2 trays, and 3 arrived',
    );
  });
});

describe('arriving', () => {
  it('not before it was asked for, by the minute, and not in the time to come', async () => {
    await confirmed(loan);
    const comes = async (arrivedAt: string) =>
      messagesOf(
        await recordArrival({
          ...(await loan.asking(ASKED)),
          entry: { arrivedAt, broughtBy: 'a driver', trays: 2, placeId: null },
        }),
      );
    expect(await comes('2026-01-19T08:59:00.000Z')).toContain('before it was asked for');
    expect(await comes(IN_TIME)).toContain('still to come');
    await loan.db.tx((write) => write.update(loans).set({ askedAt: '2026-01-19T09:00:27.000Z' }));
    expect(await comes(ASKED)).toBe('done');
  });

  it('in time: weighed, tagged, counted by two people blind, and handed on; washing is barred before that', async () => {
    await confirmed(loan);
    await listed(loan);
    await arrived(loan);
    const due = (await loan.record()).loan.dueAt;
    // two working days before Wednesday 28 January 2026, by the start of work
    expect(due).toBe('2026-01-26T08:00:00.000Z');
    expect(await next()).toEqual({ do: 'weigh' });
    await weighedAndTagged(loan);
    const [first, second] = await setsOf();
    expect([first?.code, first?.step, first?.owner]).toEqual(['LN-4478-A', 'comingBack', 'loan']);
    expect(first?.ownerNote).toContain('one line is not in the catalogue');
    expect(second?.step).toBe('comingBack');
    const lines = await loan.db.read
      .select()
      .from(configurationLines)
      .where(eq(configurationLines.versionId, first?.versionId ?? ''));
    expect(lines.map(({ expected, minimum, mustHaveClass }) => [expected, minimum, mustHaveClass])).toEqual([
      [3, 3, 1],
    ]);
    const washing = async () =>
      beginWash({
        ...(await loan.asking(IN_TIME, loan.technician)),
        setId: setId.parse(first?.id),
        baseRevision: (await setsOf())[0]?.revision ?? 0,
      });
    expect(messagesOf(await washing())).toContain('is not unpacked yet');
    written(await counted(loan, 'in', [3, 1, 2]));
    expect(messagesOf(await counted(loan, 'in', [3, 1, 2]))).toContain('another person checks it');
    expect((await loan.record()).reconciled.every(({ cameIn }) => cameIn === null)).toBe(true);
    written(await counted(loan, 'in', [3, 1, 2], { by: loan.keeper }));
    expect(await next()).toEqual({ do: 'takeIn' });
    written(await takeLoanIn(await loan.asking(IN_TIME)));
    expect((await loan.record()).facts.state).toBe('inService');
    written(await washing());
    expect((await setsOf())[0]?.step).toBe('washing');
    expect(await toldTo(loan.surgeon)).toEqual(['asked', 'confirmed', 'arrived', 'unpacked']);
  });

  it('where two counts differ, exactly those lines are counted again', async () => {
    await confirmed(loan);
    await listed(loan);
    await arrived(loan);
    await weighedAndTagged(loan);
    written(await counted(loan, 'in', [3, 1, 2]));
    written(await counted(loan, 'in', [2, 1, 2], { by: loan.other }));
    expect(await next()).toEqual({ do: 'settleIn' });
    expect(messagesOf(await counted(loan, 'in', [2, 1, 2]))).toContain(
      'not a line that is to be counted now',
    );
    written(await counted(loan, 'in', [2, 1, 2], { only: [0] }));
    const { reconciled, facts } = await loan.record();
    expect(reconciled[0]).toMatchObject({ cameIn: { sound: 2, damaged: 0 }, lackedOnArrival: 1 });
    expect(facts.shortOnArrival).toBe(1);
    expect(await next()).toEqual({ do: 'ask', question: 'useWithout' });
  });

  it('late: nothing goes on before the named person has said yes, and nobody answers for them', async () => {
    await confirmed(loan);
    await listed(loan);
    await arrived(loan, TOO_LATE);
    expect(await next()).toEqual({ do: 'ask', question: 'acceptLate' });
    const ask = async (askedOf: string) =>
      askAboutLoan({
        ...(await loan.asking(TOO_LATE)),
        entry: { kind: 'acceptLate', askedOf, words: 'It came a day late; there is time for one load.' },
      });
    expect(messagesOf(await ask('person_ines-halloran'))).toContain('can’t decide this');
    const { id } = written(await ask(loan.surgeon.id));
    const answer = async (person: Loaning['surgeon'], said: 'yes' | 'no') =>
      answerAboutLoan({
        ...(await loan.asking(TOO_LATE, person)),
        questionId: id as LoanQuestionId,
        answer: said,
        words: 'The case can wait until noon.',
      });
    expect(messagesOf(await answer(loan.manager, 'yes'))).toContain('was asked of Tobias Wray');
    await weighedAndTagged(loan, TOO_LATE);
    written(await counted(loan, 'in', [3, 1, 2], { at: TOO_LATE }));
    written(await counted(loan, 'in', [3, 1, 2], { at: TOO_LATE, by: loan.other }));
    expect(messagesOf(await takeLoanIn(await loan.asking(TOO_LATE)))).toContain('Wait for the answer');
    written(await answer(loan.surgeon, 'yes'));
    expect(messagesOf(await answer(loan.surgeon, 'no'))).toContain('answered already');
    written(await takeLoanIn(await loan.asking(TOO_LATE)));
    expect(await toldTo(loan.surgeon)).toContain('loanQuestionAsked');
    expect(await toldTo(loan.keeper)).toEqual(['loanQuestionAnswered']);
  });

  it('a no sends it back, and it is never taken in', async () => {
    await confirmed(loan);
    await listed(loan);
    await arrived(loan, TOO_LATE);
    const asked = { kind: 'acceptLate', askedOf: loan.manager.id, words: 'A day late.' };
    const { id } = written(await askAboutLoan({ ...(await loan.asking(TOO_LATE)), entry: asked }));
    const no = { questionId: id, answer: 'no' as const, words: 'There is no load left before the case.' };
    written(await answerAboutLoan({ ...(await loan.asking(TOO_LATE, loan.manager)), ...no }));
    expect(await next()).toEqual({ do: 'sendBack' });
    expect(messagesOf(await takeLoanIn(await loan.asking(TOO_LATE)))).toContain('Send it back');
    expect(await toldTo(loan.surgeon)).toContain('notTakenLate');
    written(await beginLoanReturn({ ...(await loan.asking(TOO_LATE)), because: no.words }));
  });
});

describe('without declaration or instructions (domain.md §5: held)', () => {
  beforeEach(async () => {
    await confirmed(loan);
    await listed(loan);
    await arrived(loan, IN_TIME, false);
    await weighedAndTagged(loan);
  });

  it('every tray is held as it is tagged, the surgeon is told, and no lead lifts it before the papers are here', async () => {
    const lift = async () => {
      const [tray] = await setsOf();
      const at = (await loan.record()).loan.papersAt ?? IN_TIME;
      return liftHold({
        ...(await loan.asking(at, loan.lead)),
        setId: setId.parse(tray?.id),
        baseRevision: tray?.revision ?? 0,
        to: 'washing',
        reason: 'The lender sent the paper',
        attestation: proof(loan.lead, 'iLiftThisHold', at),
      });
    };
    expect((await setsOf()).map(({ step, heldBecause }) => [step, heldBecause])).toEqual([
      ['held', 'loanWithoutDeclaration'],
      ['held', 'loanWithoutDeclaration'],
    ]);
    expect(await toldTo(loan.surgeon)).toContain('papersMissing');
    expect(messagesOf(await lift())).toContain('decontamination declaration is not here');
    written(await counted(loan, 'in', [3, 1, 2]));
    written(await counted(loan, 'in', [3, 1, 2], { by: loan.other }));
    written(await takeLoanIn(await loan.asking(IN_TIME)));
    expect(await next(IN_TIME)).toEqual({ do: 'getPapers' });
    const entry = { declaration: 'present', instructions: 'present' };
    written(await recordPapers({ ...(await loan.asking(IN_TIME)), entry }));
    // the papers lift nothing by themselves
    expect((await setsOf())[0]?.step).toBe('held');
    written(await lift());
    expect((await setsOf())[0]?.step).toBe('washing');
  });

  it('the database itself refuses every other step', async () => {
    const [tray] = await setsOf();
    const step = (to: string) =>
      loan.db.tx((write) =>
        write
          .update(sets)
          .set({ step: to, heldBecause: null })
          .where(eq(sets.id, tray?.id ?? '')),
      );
    await expect(step('washing')).rejects.toThrow(/declaration and instructions/);
    await expect(step('onBench')).rejects.toThrow(/declaration and instructions/);
  });
});

describe('the record', () => {
  it('has the same ways between states in the program and in the database', async () => {
    const rows = loan.db.read.all(sql`SELECT from_state, to_state FROM legal_loan_states`) as {
      from_state: string;
      to_state: string;
    }[];
    const pairs = rows.map((row) => `${row.from_state} ${row.to_state}`).sort();
    const own = Object.entries(NEXT_LOAN_STATES).flatMap(([from, all]) => all.map((to) => `${from} ${to}`));
    expect(pairs).toEqual(own.sort());
  });

  it('keeps when it was due: neither a moved case nor a changed setting makes it late afterwards', async () => {
    await confirmed(loan);
    await listed(loan);
    await arrived(loan);
    await loan.db.tx(async (write) => {
      await write.insert(settings).values({ key: 'loans', value: { noticeDays: 30 }, revision: 1 });
    });
    expect((await loan.record()).facts.late).toBe(false);
    await expect(loan.db.tx((write) => write.update(loans).set({ dueAt: ASKED }))).rejects.toThrow(
      /was due and came/,
    );
  });

  it('has a ledger entry for each act, each with the loan’s number', async () => {
    await confirmed(loan);
    await listed(loan);
    await arrived(loan);
    await weighedAndTagged(loan);
    const rows = await loan.db.read.select().from(ledger).where(eq(ledger.subjectId, loan.id()));
    expect(rows.map(({ action }) => action)).toEqual([
      'ask-for-loan',
      'confirm-loan',
      'bring-loan-list',
      'record-loan-arrival',
      'record-loan-papers',
      'weigh-loan-trays',
      'tag-loan-trays',
    ]);
    for (const { detail } of rows) expect(JSON.stringify(detail)).toContain('LN-4478');
    expect(messagesOf(await tagTrays(await loan.asking(IN_TIME)))).toContain('nothing to tag');
  });
});
