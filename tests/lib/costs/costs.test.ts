import fc from 'fast-check';
import readWorkbook from 'read-excel-file/universal';
import { describe, expect, it } from 'vitest';
import { type CaseFacts, costedCase, type Rates, whyWasted } from '@/lib/costs/costedCase';
import { COST_TABLES, costTable } from '@/lib/costs/costTables';
import { costGroup, costGroups, costsBySet, ownAndOthers, quantile, wasteByReason } from '@/lib/costs/groups';
import { type FigureTable, figureCsv, figureWorkbook } from '@/lib/documents/figureTable';
import { plainDate } from '@/lib/quantities/plainDate';

const RATES: Rates = { trayPence: 3_500, pouchPence: 84, wasteShareOf: 'opened' };
let made = 0;
function facts(more: Partial<CaseFacts> = {}): CaseFacts {
  made += 1;
  return {
    caseId: `case_${made}`,
    reference: `LM-26-${made}`,
    on: plainDate.parse('2026-01-10'),
    region: 'ankle',
    procedure: null,
    surgeonId: 'person_a',
    sets: [{ configurationId: 'configuration_a', loan: false }],
    used: [],
    pouches: 0,
    singleUse: [],
    ...more,
  };
}
const implanted = (
  quantity: number,
  unitPence: number | null,
  configurationId: string | null = 'configuration_a',
) => ({
  item: 'screw',
  quantity,
  unitPence,
  wasted: null,
  configurationId,
});
const wasted = (quantity: number, unitPence: number | null, code = 'dropped') => ({
  ...implanted(quantity, unitPence),
  wasted: { why: whyWasted(code), code, reasonId: null },
});

describe('what a case is made of', () => {
  it('comes to the calculation with its trays, pouches and waste by reason', () => {
    const one = costedCase(facts({ used: [implanted(4, 1_200), wasted(1, 1_200)], pouches: 2 }), RATES);
    expect(one.whole).toBe(true);
    expect(one.cost).toMatchObject({
      implanted: { pence: 4_800 },
      wasted: { pence: 1_200 },
      trays: { pence: 3_500 },
      pouches: { pence: 168 },
      totalPence: 9_668,
      wasteShare: 0.2,
      wasteBy: [{ why: 'droppedOrDamaged', pence: 1_200 }],
    });
  });

  it('a rate nobody stated, and a loan whose price is not kept, leave it at least what is known', () => {
    const noRate = costedCase(facts({ used: [implanted(1, 100)] }), { ...RATES, trayPence: null });
    expect([noRate.whole, noRate.cost.totalPence]).toEqual([false, 100]);
    const loan = costedCase(facts({ sets: [{ configurationId: 'configuration_b', loan: true }] }), RATES);
    expect([loan.whole, loan.cost.loans.unknown]).toEqual([false, 1]);
  });

  it('a reason of the hospital’s own is another reason; none is opened and not implanted', () => {
    expect(['dropped', 'otherLength', 'pastUseBy', 'wrong side handed', null].map(whyWasted)).toEqual([
      'droppedOrDamaged',
      'openedNotImplanted',
      'pastUseBy',
      'other',
      'openedNotImplanted',
    ]);
  });
});

describe('cases together', () => {
  // numpy 2, np.quantile([120, 340, 560, 780, 1500, 90], [.25, .5, .75]): its usual linear rule
  it('quartiles are those of the reference package', () => {
    const sorted = [90, 120, 340, 560, 780, 1_500];
    expect([0.25, 0.5, 0.75].map((share) => quantile(sorted, share))).toEqual([175, 450, 725]);
    expect(quantile([], 0.5)).toBeNull();
  });

  it('the share of waste is of all together, not an average of shares', () => {
    const cases = [
      costedCase(facts({ used: [implanted(9, 100), wasted(1, 100)] }), RATES),
      costedCase(facts({ used: [wasted(1, 100)] }), RATES),
    ];
    expect(costGroup('x', cases).wasteShare).toBeCloseTo(2 / 11, 12);
  });

  it('averages are over cases of known cost alone, and no unknown price counts as nothing', () => {
    const cases = [
      costedCase(facts({ sets: [], used: [implanted(1, 1_000)] }), RATES),
      costedCase(facts({ sets: [], used: [implanted(1, null), wasted(1, 50)] }), RATES),
    ];
    expect(costGroup('x', cases)).toMatchObject({ cases: 2, whole: 1, meanPence: 1_000, wasteShare: null });
  });

  it('however cases are grouped, every pence is in one group', () => {
    const used = fc.array(
      fc.record({
        quantity: fc.integer({ min: 1, max: 5 }),
        pence: fc.option(fc.nat(5_000)),
        isWaste: fc.boolean(),
      }),
      { maxLength: 4 },
    );
    const raw = fc.array(fc.record({ region: fc.constantFrom('ankle', 'hand', 'clavicle'), used }), {
      maxLength: 12,
    });
    fc.assert(
      fc.property(raw, (all) => {
        const cases = all.map(({ region, used: pieces }) =>
          costedCase(
            facts({
              region,
              used: pieces.map(({ quantity, pence, isWaste }) =>
                isWaste ? wasted(quantity, pence) : implanted(quantity, pence),
              ),
            }),
            RATES,
          ),
        );
        const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);
        const total = sum(cases.map(({ cost }) => cost.totalPence));
        const groups = costGroups(cases, ({ region }) => region);
        expect(sum(groups.flatMap(({ parts }) => Object.values(parts)))).toBe(total);
        const bySet = costsBySet(cases);
        expect(sum(bySet.map((one) => one.implantedPence))).toBe(
          sum(cases.map(({ cost }) => cost.implanted.pence)),
        );
        expect(sum(wasteByReason(cases).map(({ pence }) => pence))).toBe(
          sum(cases.map(({ cost }) => cost.wasted.pence)),
        );
      }),
    );
  });
});

describe('a surgeon’s own cases', () => {
  const by = (surgeonId: string, count: number, region = 'ankle') =>
    Array.from({ length: count }, () =>
      costedCase(facts({ surgeonId, region, used: [implanted(1, 100)] }), RATES),
    );
  const key = ({ region }: { region: string }) => region;

  it('stand beside all others only together: not of one surgeon, and not of a few cases', () => {
    const others = (...more: ReturnType<typeof by>[]) =>
      ownAndOthers([...by('person_me', 3), ...more.flat()], 'person_me', key)[0]?.others?.cases ?? null;
    expect(others(by('person_b', 30))).toBeNull();
    expect(others(by('person_b', 2), by('person_c', 2))).toBeNull();
    expect(others(by('person_b', 3), by('person_c', 2))).toBe(5);
    expect(others(by('person_b', 3, 'hand'), by('person_c', 9, 'hand'))).toBeNull();
  });

  it('no table of the report has a column or a cell that names a person', () => {
    const cases = [...by('person_tobias-wray', 2), ...by('person_ines-halloran', 3)];
    for (const which of COST_TABLES) {
      const text = figureCsv(costTable(which, cases, (id) => id));
      expect(text).not.toMatch(/person_|surgeon/i);
    }
  });
});

describe('figures as files', () => {
  const table: FigureTable = {
    name: 'costs-test',
    caption: 'Cost: by/test',
    columns: [
      { header: 'Reason', kind: 'text' },
      { header: 'Wasted', kind: 'pence' },
      { header: 'Share', kind: 'share' },
      { header: 'Pieces', kind: 'number' },
    ],
    rows: [
      ['a, "b"', 123_450, 0.1567, 3],
      ['=SUM(A1:A9)', null, null, -2],
    ],
  };

  // RFC 4180: quoting, doubled quotes, CRLF; text that begins as a formula is no formula (OWASP, CSV injection, from memory)
  it('as CSV', () => {
    expect(figureCsv(table)).toBe(
      '\uFEFFReason,"Wasted, £","Share, %",Pieces\r\n"a, ""b""",1234.50,15.7,3\r\n\'=SUM(A1:A9),,,-2\r\n',
    );
  });

  it('as a workbook that another reader reads back', async () => {
    const file = await figureWorkbook(table);
    const read = await readWorkbook(new Blob([file.slice()]));
    const rows = (
      Array.isArray(read[0]) ? read : (read[0] as unknown as { data: unknown[][] }).data
    ) as unknown[][];
    expect(rows).toEqual([
      ['Reason', 'Wasted, £', 'Share, %', 'Pieces'],
      ['a, "b"', 1234.5, 15.7, 3],
      ['=SUM(A1:A9)', null, null, -2],
    ]);
  });
});
