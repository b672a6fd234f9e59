import { eq } from 'drizzle-orm';
import type { Database } from '@/db/client';
import { answerLoan } from '@/db/operations/loans/answer-loan';
import { askForLoan } from '@/db/operations/loans/ask-for-loan';
import type { AtLoan } from '@/db/operations/loans/at-loan';
import { bringLoanList } from '@/db/operations/loans/bring-loan-list';
import { countLoan } from '@/db/operations/loans/count-loan';
import { recordArrival } from '@/db/operations/loans/record-arrival';
import { recordPapers } from '@/db/operations/loans/record-papers';
import { saveLender } from '@/db/operations/loans/save-lender';
import { tagTrays } from '@/db/operations/loans/tag-trays';
import { weighTrays } from '@/db/operations/loans/weigh-trays';
import { loanRecord } from '@/db/queries/loans/facts';
import { listPeople, type Person } from '@/db/queries/people';
import { cases, loans } from '@/db/schema';
import { caseId, type LoanId, loanId, type NewId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import { demoDatabase } from '../../setup/database';

/** A Monday morning; the case is on the Wednesday of the week after. */
export const ASKED = '2026-01-19T09:00:00.000Z';
export const IN_TIME = '2026-01-23T09:00:00.000Z';
export const TOO_LATE = '2026-01-27T16:00:00.000Z';
const CASE_START = '2026-01-28T08:30:00.000Z';
export const AFTER = '2026-01-29T09:00:00.000Z';

/** Two trays: one item by its GTIN, one by its code, and a line the catalogue does not have. */
export const LIST = (gtin: string, code: string) =>
  [
    'tray,code,gtin,name,quantity,implant',
    `1,,${gtin},,3,`,
    `1,,,bone hook of the lender,1,no`,
    `2,${code},,,2,`,
  ].join('\n');

export interface Loaning {
  db: Database;
  keeper: Person;
  lead: Person;
  technician: Person;
  other: Person;
  surgeon: Person;
  manager: Person;
  booked: string;
  newId: NewId;
  /** What every act on the loan is asked with, as it now is. */
  asking: (at: string, person?: Person) => Promise<AtLoan>;
  record: (at?: string) => ReturnType<typeof loanRecord>;
  id: () => LoanId;
  use: (id: LoanId) => void;
}

let made = 0;

export async function loaning(): Promise<Loaning> {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const one = (id: string) => people.find((person) => person.id === id) as Person;
  const newId: NewId = (prefix) => {
    made += 1;
    return `${prefix}_test-${made}`;
  };
  const surgeon = one('person_tobias-wray');
  const booked = caseId.parse('case_test-loan');
  await db.tx((write) =>
    write.insert(cases).values({
      id: booked,
      reference: 'LM-26-LOAN',
      theatreId: 'theatre_3',
      caseDate: '2026-01-28',
      startsAt: CASE_START,
      endsAt: '2026-01-28T11:00:00.000Z',
      region: 'distalRadius',
      limb: 'left',
      surgeonId: surgeon.id,
      urgency: 'booked',
      revision: 1,
    }),
  );
  let current: LoanId | null = null;
  const id = () => {
    if (current === null) throw new Error('no loan was asked for');
    return current;
  };
  const row = async () => {
    const [found] = await db.read.select().from(loans).where(eq(loans.id, id()));
    if (!found) throw new Error('no such loan');
    return found;
  };
  const keeper = one('person_dilys-harrow');
  return {
    db,
    keeper,
    lead: one('person_maurice-oduya'),
    technician: one('person_wren-adeyemi'),
    other: one('person_tomas-birkett'),
    surgeon,
    manager: one('person_gwen-sallis'),
    booked,
    newId,
    asking: async (now, person = keeper) => ({
      db,
      now,
      newId,
      person,
      loanId: loanId.parse(id()),
      baseRevision: (await row()).revision,
    }),
    record: async (at = AFTER) => loanRecord(db.read, await row(), at),
    id,
    use: (next) => {
      current = next;
    },
  };
}

export function written<T>(outcome: Outcome<T, unknown>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal.problems));
  return outcome.value;
}

export const messagesOf = (outcome: Outcome<unknown, unknown>): string =>
  outcome.ok ? 'done' : outcome.refusal.problems.map(({ message }) => message).join(' ');

export const proof = (person: Person, meaning: Meaning, at: string): Attestation => ({
  personId: person.id,
  meaning,
  method: 'pin',
  at,
});

/** Asks, is told yes, and brings in the list. */
export async function confirmed(loan: Loaning): Promise<void> {
  const { db, keeper, newId, booked, asking } = loan;
  const lender = written(
    await saveLender({
      db,
      now: ASKED,
      newId,
      person: keeper,
      entry: { name: `Wendlebury Lending ${made}`, contact: 'Osric Tamblyn', phone: '01632 960 114' },
      known: null,
    }),
  );
  const entry = {
    lenderId: lender.id,
    caseId: booked,
    fromDate: null,
    untilDate: null,
    askedFor: 'A set of long plates for the distal radius, two trays',
    configurationId: null,
  };
  loan.use(written(await askForLoan({ db, now: ASKED, newId, person: keeper, entry })).id);
  const said = { answer: 'yes', saidBy: 'Osric Tamblyn', expectedAt: IN_TIME, backBy: '2026-02-02' };
  written(await answerLoan({ ...(await asking(ASKED)), entry: said }));
}

/** Two items of the demo catalogue: an implant with a GTIN and an instrument with its code. */
export async function knownItems({ db }: Loaning): Promise<{ gtin: string; code: string }> {
  const { items } = await import('@/db/schema');
  const rows = await db.read.select().from(items);
  const screw = rows.find((item) => item.kind === 'screw' && item.gtin !== null);
  const driver = rows.find((item) => item.kind === 'driver');
  if (!screw?.gtin || !driver) throw new Error('the demo has screws with GTINs, and drivers');
  return { gtin: screw.gtin, code: driver.code };
}

export async function listed(loan: Loaning): Promise<void> {
  const { gtin, code } = await knownItems(loan);
  const source = { kind: 'csv' as const, text: LIST(gtin, code), fileName: 'list.csv' };
  written(await bringLoanList({ ...(await loan.asking(ASKED)), source, dryRun: false }));
}

export async function arrived(loan: Loaning, at = IN_TIME, papers = true): Promise<void> {
  const entry = { arrivedAt: at, broughtBy: 'a driver of the lender', trays: 2, placeId: 'place_loan-bay' };
  written(await recordArrival({ ...(await loan.asking(at)), entry }));
  const found = { declaration: papers ? 'present' : 'missing', instructions: 'present' };
  written(await recordPapers({ ...(await loan.asking(at)), entry: found }));
}

export async function weighedAndTagged(loan: Loaning, at = IN_TIME): Promise<void> {
  const grams = [
    { tray: 1, grams: 6_400 },
    { tray: 2, grams: 11_900 },
  ];
  written(await weighTrays({ ...(await loan.asking(at)), entry: { stage: 'in', grams } }));
  written(await tagTrays(await loan.asking(at)));
}

/** One count of every line with these sound pieces, by line in the order of the list. */
export async function counted(
  loan: Loaning,
  stage: 'in' | 'out',
  sound: readonly number[],
  { at = IN_TIME, by = loan.technician, only }: { at?: string; by?: Person; only?: number[] } = {},
) {
  const { lines } = await loan.record(at);
  const figures = lines
    .map(({ id }, index) => ({ lineId: id, sound: sound[index] ?? 0, damaged: 0, index }))
    .filter(({ index }) => only === undefined || only.includes(index))
    .map(({ index: _index, ...figure }) => figure);
  return countLoan({ ...(await loan.asking(at, by)), entry: { stage, figures } });
}
