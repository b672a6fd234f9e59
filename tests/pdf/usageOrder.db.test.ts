import { describe, expect, it } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import { type ReconciliationToTell, reconciliationSheet } from '@/lib/documents/reconciliation';
import {
  type UsageOrderToTell,
  usageColumns,
  usageOrderJson,
  usageOrderSheet,
} from '@/lib/documents/usageOrder';
import { csvOf } from '@/lib/lists/csv';
import { PRINTING } from '../lib/documents/setForSheet';
import { openPdf, textOf, wordsOf } from './readPdf';

const line = {
  way: 'used' as const,
  code: 'SF-DF50-L-09',
  gtin: '09520000000011',
  name: 'Distal femur plate, 9 holes, left',
  lot: '=DF5L-1903',
  useBy: '2026-09-01',
  pieces: 1,
  outcome: 'implanted' as const,
  reference: 'LM-26-9RTB',
  doneOn: '2026-01-12',
  replace: true,
};
const order: UsageOrderToTell = {
  number: 'UO-0007',
  revision: 4,
  state: 'sent',
  owner: 'Sallowfen Surgical',
  address: 'Unit 7, Tannery Lane, Mossgate',
  madeBy: 'Dilys Harrow',
  madeAt: '2026-01-13T09:00:00.000Z',
  approvedBy: 'Gwen Sallis',
  approvedAt: '2026-01-13T10:00:00.000Z',
  sentBy: 'Dilys Harrow',
  sentAt: '2026-01-13T10:30:00.000Z',
  sentHow: 'by e-mail',
  withdrawnBecause: null,
  lines: [
    line,
    {
      ...line,
      outcome: 'droppedOrDamaged',
      replace: false,
      reference: null,
      lot: null,
      useBy: null,
      gtin: null,
    },
    { ...line, way: 'takenBack', outcome: 'implanted', replace: null, lot: 'DF5L-1888', pieces: 2 },
  ],
  uncertain: [
    {
      ...{ set: 'DRT-01', code: 'SF-L27-24', name: 'Locking screw 2.7 × 24 mm', reference: 'LM-26-9RTB' },
      ...{ outcome: 'implanted' as const, pieces: 4, lo: 1, hi: 3 },
    },
  ],
};

const factOf = (of: UsageOrderToTell, term: string) =>
  usageOrderSheet(of, PRINTING).facts.find((one) => one.term === term)?.value;
const headings = (of: UsageOrderToTell) =>
  usageOrderSheet(of, PRINTING).blocks.flatMap((one) => (one.kind === 'heading' ? [one.text] : []));

describe('the paper of a usage order', () => {
  it('keeps a lot in one piece', async () => {
    const lot = 'SFDF50L0-2515610';
    const told = usageOrderSheet({ ...order, lines: [{ ...line, lot }] }, PRINTING);
    const [page] = await wordsOf(await paintSheet(told, 'a4', new Date(PRINTING.at)));
    expect(page?.map(({ text }) => text)).toContain(lot);
  });

  it('parts what is to be replaced from what is only told, what is taken back and what is uncertain', () => {
    expect(headings(order)).toEqual([
      'Used: please replace',
      'Used: please do not replace',
      'Taken back from earlier usage orders',
      'Uncertain: may have been yours, charged on no order',
    ]);
    expect(factOf(order, 'Pieces used')).toBe('2');
    expect(factOf(order, 'To be replaced')).toBe('1');
    expect(factOf(order, 'Taken back')).toBe('2');
    expect(usageOrderSheet(order, PRINTING).record.text).toMatch(/^UO\/UO-0007\/R4\//);
  });

  it('says that it orders nothing while nobody has approved it, or once it is withdrawn', () => {
    const notices = (state: UsageOrderToTell['state']) =>
      usageOrderSheet({ ...order, state }, PRINTING).blocks.flatMap((one) =>
        one.kind === 'notice' ? [one.word] : [],
      );
    expect(notices('made')).toEqual(['NOT APPROVED']);
    expect(notices('withdrawn')).toEqual(['WITHDRAWN']);
    expect(notices('sent')).toEqual([]);
    const unsaid = { ...order, state: 'made' as const, lines: [{ ...line, replace: null }] };
    expect(headings(unsaid)[0]).toBe('Used: nobody has said yet whether to replace it');
  });

  it('is a tagged PDF in which lots, cases and bounds are read, and no person beside those who made it', async () => {
    const pdf = await paintSheet(usageOrderSheet(order, PRINTING), 'a4', new Date(PRINTING.at));
    const read = (await wordsOf(pdf)).map(textOf).join(' ');
    for (const words of ['UO-0007', 'Sallowfen Surgical', '=DF5L-1903', 'LM-26-9RTB', '1–3 of 4', '−2'])
      expect(read).toContain(words);
    expect(await (await openPdf(pdf)).getMarkInfo()).toMatchObject({ Marked: true });
  });
});

describe('the files of a usage order', () => {
  it('keep texts as texts, and what is taken back below none', () => {
    expect(csvOf(usageColumns(order), order.lines).split('\r\n')).toEqual([
      '\uFEFFUsage order,Code,GTIN,Item,Lot,Use-by,Pieces,Outcome,Case,On,Asked',
      `UO-0007,SF-DF50-L-09,09520000000011,"Distal femur plate, 9 holes, left",'=DF5L-1903,2026-09-01,1,Implanted,LM-26-9RTB,2026-01-12,replace`,
      'UO-0007,SF-DF50-L-09,,"Distal femur plate, 9 holes, left",,,1,Dropped or damaged,,2026-01-12,do not replace',
      'UO-0007,SF-DF50-L-09,09520000000011,"Distal femur plate, 9 holes, left",DF5L-1888,2026-09-01,-2,Implanted,LM-26-9RTB,2026-01-12,',
      '',
    ]);
  });

  it('as JSON say what is uncertain, with its bounds', () => {
    expect(usageOrderJson(order)).toMatchObject({
      usageOrder: 'UO-0007',
      lines: [
        { kind: 'used', replace: true },
        { lot: null, caseReference: null },
        { kind: 'takenBack', pieces: 2 },
      ],
      uncertain: [{ atLeast: 1, atMost: 3, pieces: 4 }],
    });
  });
});

describe('the paper of a reconciliation', () => {
  const lot = {
    ...{ code: 'SF-L35-40', name: 'Locking screw 3.5 × 40 mm', lot: 'L35-8110', listed: 4, onShelf: 2 },
    ...{
      withCases: 0,
      inSlots: 1,
      difference: 1,
      explained: [],
      unexplained: 1,
      because: null,
      becauseBy: null,
    },
  };
  const reconciliation: ReconciliationToTell = {
    ...{ number: 'RL-0003', revision: 1, owner: 'Sallowfen Surgical', how: 'list', listedOn: '2026-01-10' },
    ...{ enteredBy: 'Dilys Harrow', enteredAt: '2026-01-13T09:00:00.000Z' },
    ...{ closedBy: null, closedWith: null, closedAt: null },
    lines: [
      lot,
      { ...lot, lot: 'L35-8111', unexplained: 0, explained: [{ kind: 'usedNotTold', pieces: 1 }] },
      { ...lot, lot: 'L35-8112', listed: null, onShelf: 0, inSlots: 0, difference: 0, unexplained: 0 },
    ],
  };

  it('has what nothing explains first, and says that nobody has written why', async () => {
    const sheet = reconciliationSheet(reconciliation, PRINTING);
    expect(sheet.blocks.flatMap((one) => (one.kind === 'heading' ? [one.text] : []))).toEqual([
      'Unexplained',
      'Explained by the record',
      'The same',
    ]);
    const read = (await wordsOf(await paintSheet(sheet, 'a4', new Date(PRINTING.at)))).map(textOf).join(' ');
    for (const words of ['RL-0003', 'not closed', 'no reason written yet', 'went into slots', 'L35-8111'])
      expect(read).toContain(words);
  });

  it('says by whom it was closed', () => {
    const closed = {
      ...reconciliation,
      closedAt: '2026-01-13T11:00:00.000Z',
      closedBy: 'A',
      closedWith: 'B',
    };
    const fact = reconciliationSheet(closed, PRINTING).facts.find(({ term }) => term === 'Closed');
    expect(fact?.value).toBe('13 January 2026, 11:00, A with B');
  });
});
