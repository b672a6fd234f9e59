import { sql } from 'drizzle-orm';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findLedgerBreak } from '@/db/ledger';
import { answerAboutLoan } from '@/db/operations/loans/answer-about-loan';
import { answerLoan } from '@/db/operations/loans/answer-loan';
import { askAboutLoan } from '@/db/operations/loans/ask-about-loan';
import { beginLoanReturn } from '@/db/operations/loans/begin-loan-return';
import { bringLoanList } from '@/db/operations/loans/bring-loan-list';
import { callOffLoan } from '@/db/operations/loans/call-off-loan';
import { declareLoan } from '@/db/operations/loans/declare-loan';
import { handOverLoan } from '@/db/operations/loans/hand-over-loan';
import { openClaim } from '@/db/operations/loans/open-claim';
import { recordArrival } from '@/db/operations/loans/record-arrival';
import { recordLoanUse } from '@/db/operations/loans/record-loan-use';
import { recordPapers } from '@/db/operations/loans/record-papers';
import { settleClaim } from '@/db/operations/loans/settle-claim';
import { tagTrays } from '@/db/operations/loans/tag-trays';
import { takeLoanIn } from '@/db/operations/loans/take-loan-in';
import { weighTrays } from '@/db/operations/loans/weigh-trays';
import { beginWash } from '@/db/operations/turns/begin-wash';
import { endWash } from '@/db/operations/turns/end-wash';
import { holdSet } from '@/db/operations/turns/hold-set';
import { liftHold } from '@/db/operations/turns/lift-hold';
import { setId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import { forbiddenStatesOf } from '../turns/forbiddenStates';
import { confirmed, counted, knownItems, LIST, type Loaning, loaning, proof } from './hospital';

/**
 * What must never be true of a loan, whatever was done in whatever order, each as a query for what is in it. Without
 * declaration and instructions a loan is held: domain.md §5. The others say that the record agrees with itself.
 */
const NEVER: Record<string, string> = {
  'goes on without its papers, or before it is unpacked': `
    SELECT sets.id FROM sets JOIN loan_trays ON loan_trays.set_id = sets.id JOIN loans ON loans.id = loan_trays.loan_id
    WHERE sets.step NOT IN ('comingBack', 'held') AND (loans.declaration IS NOT 'present'
      OR loans.instructions IS NOT 'present' OR loans.unpacked_at IS NULL)`,
  'in use, not counted by two people': `
    SELECT id FROM loans WHERE state = 'inService' AND id NOT LIKE 'loan_demo%'
      AND (SELECT count(DISTINCT person_id) FROM loan_counts WHERE loan_id = loans.id AND stage = 'in' AND purpose <> 'settle') < 2`,
  'late, and in use without a yes': `
    SELECT id FROM loans WHERE state = 'inService' AND arrived_at > due_at AND NOT EXISTS (SELECT 1 FROM loan_questions
      WHERE loan_id = loans.id AND kind = 'acceptLate' AND answer = 'yes')`,
  'gone back, and still in service here': `
    SELECT loans.id FROM loans JOIN loan_trays ON loan_trays.loan_id = loans.id JOIN sets ON sets.id = loan_trays.set_id
    WHERE loans.state = 'goneBack' AND sets.withdrawn_at IS NULL`,
  'gone back, and nobody declared or took it': `
    SELECT id FROM loans WHERE state = 'goneBack' AND (our_declaration IS NULL OR collected_by IS NULL)`,
  'more used than came': `
    SELECT line_id AS id FROM loan_uses GROUP BY line_id HAVING sum(quantity) > (
      SELECT max(sound + damaged) FROM loan_count_lines JOIN loan_counts ON loan_counts.id = count_id
      WHERE loan_count_lines.line_id = loan_uses.line_id AND stage = 'in')`,
  'in a state that is not the last one on record': `
    SELECT id FROM loans WHERE state IS NOT (SELECT state FROM loan_steps WHERE loan_id = loans.id ORDER BY seq DESC LIMIT 1)`,
  'a claim for what the counts do not show': `
    SELECT id FROM loan_claims WHERE quantity > (SELECT quantity FROM loan_lines WHERE id = line_id)`,
};

const act = fc.record({ what: fc.nat(99), who: fc.nat(3), n: fc.nat(3), yes: fc.boolean() });
type Act = typeof act extends fc.Arbitrary<infer T> ? T : never;

/** One act of somebody, sensible or not; what is refused is as good as what is done. */
async function does(
  loan: Loaning,
  { what, who, n, yes }: Act,
  now: string,
): Promise<Outcome<unknown, unknown>> {
  const person = [loan.keeper, loan.technician, loan.lead, loan.other][who] ?? loan.keeper;
  const at = await loan.asking(now, person);
  const record = await loan.record(now);
  const tray = record.trays[n % 2];
  const onSet = {
    ...at,
    setId: setId.parse(tray?.set?.id ?? 'set_none'),
    baseRevision: tray?.set?.revision ?? 1,
  };
  const sound = [3 - (n === 3 ? 1 : 0), 1, 2];
  const question = record.questions.find(({ answer }) => answer === null);
  const asked = question && {
    ...(await loan.asking(now, question.askedOf === loan.surgeon.id ? loan.surgeon : loan.manager)),
    questionId: question.id as never,
    answer: yes ? ('yes' as const) : ('no' as const),
    words: 'As it has to be.',
  };
  const acts: (() => Promise<Outcome<unknown, unknown>>)[] = [
    () => answerLoan({ ...at, entry: { answer: 'yes', saidBy: 'Osric', expectedAt: null, backBy: null } }),
    async () => {
      const { gtin, code } = await knownItems(loan);
      return bringLoanList({
        ...at,
        source: { kind: 'csv', text: LIST(gtin, code), fileName: 'l.csv' },
        dryRun: false,
      });
    },
    () => recordArrival({ ...at, entry: { arrivedAt: now, broughtBy: 'a driver', trays: 2, placeId: null } }),
    () =>
      recordPapers({
        ...at,
        entry: { declaration: yes || n > 0 ? 'present' : 'missing', instructions: 'present' },
      }),
    () =>
      weighTrays({
        ...at,
        entry: {
          stage: record.facts.state === 'goingBack' ? 'out' : 'in',
          grams: [1, 2].map((one) => ({ tray: one, grams: 5_000 + n })),
        },
      }),
    () => tagTrays(at),
    () => counted(loan, 'in', sound, { at: now, by: person }),
    () => counted(loan, 'out', sound, { at: now, by: person }),
    () =>
      askAboutLoan({
        ...at,
        entry: { kind: yes ? 'acceptLate' : 'useWithout', askedOf: loan.surgeon.id, words: 'May we?' },
      }),
    () => (asked ? answerAboutLoan(asked) : takeLoanIn(at)),
    () => takeLoanIn(at),
    () => beginLoanReturn({ ...at, because: 'It is not needed.' }),
    () => beginWash(onSet),
    () => endWash({ ...onSet, seen: yes ? 'clean' : 'dirty' }),
    () => holdSet({ ...onSet, because: 'dirtyAfterWash', note: 'a stain' }),
    () =>
      liftHold({
        ...onSet,
        person: loan.lead,
        to: 'washing',
        reason: 'looked at again',
        attestation: proof(loan.lead, 'iLiftThisHold', now),
      }),
    () =>
      recordLoanUse({
        ...at,
        entry: {
          caseId: loan.booked,
          uses: [{ lineId: record.lines[0]?.id ?? '', outcome: 'implanted', quantity: n }],
        },
      }),
    () => declareLoan({ ...at, attestation: proof(person, 'iDeclareThisLoan', now) }),
    () => handOverLoan({ ...at, collectedBy: 'Percival', attestation: proof(person, 'iHandThisOver', now) }),
    () => {
      const found = record.unclaimed[0];
      const { lineId, stage, kind } = found ?? { lineId: 'loanLine_none', stage: 'in', kind: 'damaged' };
      return openClaim({ ...at, entry: { lineId, stage, kind, words: 'It lacks.' } });
    },
    () =>
      settleClaim({
        ...at,
        claimId: (record.claims[0]?.id ?? 'loanClaim_none') as never,
        entry: { state: yes ? 'agreed' : 'disputed', saidBy: 'Osric', words: 'So it is.' },
      }),
    // seldom: it ends the walk
    () => (what === 99 ? callOffLoan({ ...at, because: 'It is not needed.' }) : takeLoanIn(at)),
  ];
  const chosen = acts[what % acts.length];
  if (!chosen) throw new Error('an act for every number');
  return chosen();
}

it('whatever is done with a loan, by whomever, in whatever order: no forbidden state, nothing thrown, a whole ledger', async () => {
  const reached = new Set<string>();
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: 60, maxLength: 160 }), async (walk) => {
      const loan = await loaning();
      await confirmed(loan);
      let now = Date.parse('2026-01-23T09:00:00.000Z');
      for (const step of walk) {
        now += 40 * 60_000;
        await does(loan, step, new Date(now).toISOString());
        for (const [name, query] of Object.entries(NEVER))
          expect(loan.db.read.all(sql.raw(query)), name).toEqual([]);
      }
      expect(await forbiddenStatesOf(loan.db)).toEqual([]);
      expect(await findLedgerBreak(loan.db.read)).toBeNull();
      reached.add((await loan.record()).facts.state);
    }),
    { numRuns: 8, seed: 20_260_114 },
  );
  // the walks are not all refused at the door
  expect([...reached].some((state) => state !== 'confirmed')).toBe(true);
}, 300_000);
