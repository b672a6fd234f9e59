import type { DemoPerson } from '../hospital/people';

/** An invented firm. Telephone numbers are of the range 01632 960, kept free for drama (Ofcom); `.example` is kept free too. */
export const LENDERS = [
  {
    id: 'lender_sallowfen',
    name: 'Sallowfen Surgical',
    contact: 'Osric Tamblyn',
    phone: '01632 960 114',
    email: 'loans@sallowfen.example',
    address: 'Unit 7, Tannery Lane, Mossgate',
    note: 'Loans are packed until noon; what is asked later leaves the day after.',
  },
  {
    id: 'lender_corrow-hill',
    name: 'Corrow Hill Loan Sets',
    contact: 'Mabel Stanyon',
    phone: '01632 960 287',
    email: 'desk@corrowhill.example',
    address: '3 Weighhouse Yard, Corrow Hill',
    note: null,
  },
] as const;

/** A loan of the demo. Hours are before now; days from today. */
export interface LoanPlan {
  number: string;
  lender: (typeof LENDERS)[number]['id'];
  state: 'asked' | 'confirmed' | 'here' | 'inService' | 'goneBack';
  askedFor: string;
  configuration: string;
  askedBy: DemoPerson;
  askedHours: number;
  for: { caseReference: string } | { from: number; until: number };
  backByDays: number | null;
  /** How long ago it came, and which set of the demo it is. */
  arrived?: { hours: number; set: string | null };
  papers?: { declaration: 'present' | 'missing'; instructions: 'present' | 'missing' };
  gramsIn?: number;
  /** Both counts of the list found all of it. */
  counted?: [DemoPerson, DemoPerson];
  late?: { askedOf: DemoPerson; asks: string; says: string };
  collectedHours?: number;
}

const KEEPER = 'person_dilys-harrow';

/** One of each kind of day in the loan bay. */
export const LOANS: LoanPlan[] = [
  // came the night before its case; the surgeon was asked and said yes
  {
    number: 'LN-4471',
    lender: 'lender_sallowfen',
    state: 'inService',
    askedFor: 'A second set for the proximal humerus, titanium, with long plates',
    configuration: 'PHT',
    askedBy: 'person_callum-denby',
    askedHours: 120,
    for: { caseReference: 'LM-26-Y6TS' },
    backByDays: 9,
    arrived: { hours: 10, set: 'PHT-L1' },
    papers: { declaration: 'present', instructions: 'present' },
    gramsIn: 6_850,
    counted: [KEEPER, 'person_wren-adeyemi'],
    late: {
      askedOf: 'person_callum-denby',
      asks: 'It came after it was due. There is one load left before your case.',
      says: 'One load is enough; the case can wait until the set is accepted.',
    },
  },
  // unpacked, and held: the lender forgot the declaration
  {
    number: 'LN-4472',
    lender: 'lender_sallowfen',
    state: 'inService',
    askedFor: 'A set for the clavicle with right plates of eight holes',
    configuration: 'CLO',
    askedBy: 'person_kofi-brandreth',
    askedHours: 150,
    for: { from: 5, until: 12 },
    backByDays: 14,
    arrived: { hours: 8, set: 'CLO-L2' },
    papers: { declaration: 'missing', instructions: 'present' },
    gramsIn: 5_400,
    counted: ['person_kofi-brandreth', 'person_tomas-birkett'],
  },
  // just arrived: looked for its papers, weighed and tagged, not counted
  {
    number: 'LN-4475',
    lender: 'lender_sallowfen',
    state: 'here',
    askedFor: 'A set for the proximal humerus while ours are away for repair',
    configuration: 'PHT',
    askedBy: KEEPER,
    askedHours: 70,
    for: { from: 7, until: 14 },
    backByDays: 15,
    arrived: { hours: 4, set: 'PHT-L4' },
    papers: { declaration: 'missing', instructions: 'missing' },
    gramsIn: 7_120,
  },
  // should be here, and is not
  {
    number: 'LN-4476',
    lender: 'lender_corrow-hill',
    state: 'confirmed',
    askedFor: 'A cannulated set with washers, for two cases of one day',
    configuration: 'CAN',
    askedBy: 'person_gwen-sallis',
    askedHours: 96,
    for: { from: 1, until: 2 },
    backByDays: 4,
  },
  {
    number: 'LN-4477',
    lender: 'lender_corrow-hill',
    state: 'asked',
    askedFor: 'A set of blade plates for the distal femur, steel',
    configuration: 'DFB',
    askedBy: 'person_sunita-marlowe',
    askedHours: 3,
    for: { from: 20, until: 24 },
    backByDays: null,
  },
  ...earlier('lender_sallowfen', 4_430, [-20, -3, 26, 0, -31]),
  ...earlier('lender_corrow-hill', 4_450, [-44, -18, -2]),
];

/** Loans of the months before that went back in order: how many hours after they were due each of them came. */
function earlier(lender: LoanPlan['lender'], from: number, lateHours: readonly number[]): LoanPlan[] {
  return lateHours.map((late, at): LoanPlan => {
    const hours = (12 + at * 9) * 24;
    return {
      number: `LN-${from + at}`,
      lender,
      state: 'goneBack',
      askedFor: 'A set for one week',
      configuration: 'PHT',
      askedBy: KEEPER,
      askedHours: hours + 200,
      for: { from: -(10 + at * 9), until: -(4 + at * 9) },
      backByDays: -(3 + at * 9),
      arrived: { hours: late, set: null },
      collectedHours: (3 + at * 9) * 24,
    };
  });
}
