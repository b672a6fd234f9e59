import { describe, expect, it } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import type { Block } from '@/lib/documents/sheet';
import { type OrderToTell, orderColumns, orderJson, supplyOrderSheet } from '@/lib/documents/supplyOrder';
import { csvOf } from '@/lib/lists/csv';
import { PRINTING } from '../lib/documents/setForSheet';
import { openPdf, textOf, wordsOf } from './readPdf';

const line = {
  code: 'CR-C35-16',
  gtin: '09520000000011',
  name: 'Cortical screw 3.5 × 16 mm, self-tapping',
  ordered: 20,
  packOf: 5,
  unitPence: 1_530,
  here: 15,
};
const order: OrderToTell = {
  number: 'OR-0007',
  revision: 2,
  maker: 'Carrowby Implants',
  restock: 'RS-0003',
  proposedBy: 'Dilys Harrow',
  orderedBy: 'Gwen Sallis',
  orderedAt: '2026-01-14T09:30:00.000Z',
  expectedOn: '2026-01-19',
  state: 'open',
  closedBecause: null,
  lines: [
    line,
    { ...line, code: 'CR-D-H25', gtin: null, name: 'Driver', ordered: 1, packOf: 1, unitPence: 9_900 },
  ],
};

const factOf = (of: OrderToTell, term: string) =>
  supplyOrderSheet(of, PRINTING).facts.find((one) => one.term === term)?.value;

describe('the paper of an order', () => {
  it('says what, how many, in which packs, by when and at what value', () => {
    const sheet = supplyOrderSheet(order, PRINTING);
    expect(sheet.title).toBe('OR-0007');
    expect(sheet.record.text).toMatch(/^SO\/OR-0007\/R2\//);
    expect(factOf(order, 'Expected')).toBe('19 January 2026');
    // 20 × 15.30 + 1 × 99.00
    expect(factOf(order, 'Value')).toBe('£405.00');
    const table = sheet.blocks.find((one): one is Extract<Block, { kind: 'table' }> => one.kind === 'table');
    expect(JSON.stringify(table?.rows[0])).toContain('4 × 5');
    expect(table?.rows).toHaveLength(2);
  });

  it('says what is not known instead of guessing', () => {
    const [first] = order.lines;
    if (!first) throw new Error('it has lines');
    const open = { ...order, expectedOn: null, lines: [{ ...first, unitPence: null }] };
    expect(factOf(open, 'Expected')).toBe('not known: please state a date');
    expect(factOf(open, 'Value')).toContain('not established');
  });

  it('is a tagged PDF in which code, GTIN and pieces are read', async () => {
    const pdf = await paintSheet(supplyOrderSheet(order, PRINTING), 'a4', new Date(PRINTING.at));
    const read = (await wordsOf(pdf)).map(textOf).join(' ');
    for (const words of ['OR-0007', 'Carrowby Implants', '09520000000011', '4 × 5'])
      expect(read).toContain(words);
    const document = await openPdf(pdf);
    expect(await document.getMarkInfo()).toMatchObject({ Marked: true });
  });
});

describe('the files of an order', () => {
  it('have the GTIN as text, and prices as numbers', () => {
    expect(csvOf(orderColumns(order), order.lines).split('\r\n').slice(0, 3)).toEqual([
      '\uFEFFOrder,Code,GTIN,Item,Pieces,Pack of,Packs,"Unit price, GBP"',
      'OR-0007,CR-C35-16,09520000000011,"Cortical screw 3.5 × 16 mm, self-tapping",20,5,4,15.3',
      'OR-0007,CR-D-H25,,Driver,1,1,1,99',
    ]);
  });

  it('as JSON say what came, with units in the names', () => {
    expect(orderJson(order)).toMatchObject({
      order: 'OR-0007',
      valuePence: 40_500,
      lines: [{ pieces: 20, packs: 4, unitPence: 1_530, receivedPieces: 15 }, { gtin: null }],
    });
  });
});
