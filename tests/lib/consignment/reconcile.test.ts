import { describe, expect, it } from 'vitest';
import { scannedInto } from '@/app/consignment/_parts/scanned-list';
import { type KnownItem, readOwnersList } from '@/lib/consignment/ownersList';
import { type LotToReconcile, reconcileLots } from '@/lib/consignment/reconcile';

// its check digit by the GS1 General Specifications, modulo 10 with weights 3 and 1: 9 + 3 × 5 + 2 + 3 × 1 = 29, so 1
const A: KnownItem = { id: 'item_a', code: 'SF-L27-24', gtin: '09520000000011', name: 'Screw 24' };
const B: KnownItem = { id: 'item_b', code: 'SF-L27-26', gtin: null, name: 'Screw 26' };
const CATALOGUE = [A, B];

const read = (text: string) => {
  const said = readOwnersList(text, CATALOGUE);
  return said.ok ? said.value : said.problems.map(({ code, path }) => `${path.join('.')} ${code}`);
};

describe('an owner’s list', () => {
  const lots = [
    { itemId: 'item_a', lot: 'L1', pieces: 3 },
    { itemId: 'item_b', lot: null, pieces: 12 },
  ];
  it.each([
    { why: 'semicolons', text: 'Code;Lot;Qty\nSF-L27-24;L1;3\nSF-L27-26;;12' },
    {
      why: 'commas, quotes and a mark at the beginning',
      text: '\uFEFFcode,lot,quantity\n"SF-L27-24",L1,3\nSF-L27-26,,12',
    },
    {
      why: 'tabs, as copied from a sheet',
      text: 'REF\tLot number\tPieces\nsf-l27-24\tL1\t3\nSF-L27-26\t\t12',
    },
    { why: 'decimals without a part', text: 'code;lot;quantity\nSF-L27-24;L1;3,0\nSF-L27-26;;12.00' },
    { why: 'a GTIN of 13 digits', text: 'gtin;code;lot;stock\n9520000000011;;L1;3\n;SF-L27-26;;12' },
    {
      why: 'the same lot on several lines',
      text: 'code;lot;quantity\nSF-L27-24;L1;1\nSF-L27-26;;12\nSF-L27-24;L1;2',
    },
    {
      why: 'columns nobody asked for',
      text: 'place;code;name;lot;quantity\n1;SF-L27-24;x;L1;3\n2;SF-L27-26;x;;12',
    },
  ])('is read with $why', ({ text }) => {
    expect(read(text)).toEqual(lots);
  });

  it.each([
    { why: 'nothing', text: '', problems: [' empty'] },
    { why: 'no heading', text: 'SF-L27-24;L1;3', problems: [' no-heading'] },
    { why: 'no lot in the heading', text: 'code;quantity\nSF-L27-24;3', problems: [' no-heading'] },
    { why: 'no line', text: 'code;lot;quantity\n', problems: [' no-lines'] },
    {
      why: 'every fault at its cell, and nothing taken',
      text: 'code;lot;quantity\nSF-L27-24;L1;3\nNOPE;L2;1\nSF-L27-26;L3;1,5\nSF-L27-24;L4;',
      problems: ['3.code unknown', '4.pieces not-whole', '5.pieces not-stated'],
    },
    {
      why: 'a thousand or a decimal: nobody guesses',
      text: 'code;lot;quantity\nSF-L27-24;L1;1.000',
      problems: ['2.pieces two-readings'],
    },
    {
      why: 'a wrong check digit',
      text: 'gtin;lot;quantity\n09520000000012;L1;3',
      problems: ['2.gtin check-digit'],
    },
    {
      why: 'a GTIN and a code that are two items',
      text: 'gtin;code;lot;quantity\n09520000000011;SF-L27-26;L1;3',
      problems: ['2.gtin two-items'],
    },
  ])('is refused whole with $why', ({ text, problems }) => {
    expect(read(text)).toEqual(problems);
  });

  it('written by scanning counts the same lot on, and is read as it stands', () => {
    const one = scannedInto('', { code: 'SF-L27-24', lot: 'L1', pieces: 1 });
    const two = scannedInto(one, { code: 'SF-L27-26', lot: null, pieces: 12 });
    const three = scannedInto(two, { code: 'SF-L27-24', lot: 'L1', pieces: 2 });
    expect(three).toBe('code;lot;quantity\nSF-L27-24;L1;3\nSF-L27-26;;12\n');
    expect(read(three)).toEqual(lots);
    expect(read(scannedInto('', { code: 'SF-L27-24', lot: 'A;"B', pieces: 1 }))).toEqual([
      { itemId: 'item_a', lot: 'A;"B', pieces: 1 },
    ]);
  });
});

describe('setting a list beside our record', () => {
  const lot = (change: Partial<LotToReconcile>): LotToReconcile => ({
    ...{ itemId: 'item_a', lot: 'L1', listed: 0, onShelf: 0, withCases: 0, inSlots: 0 },
    ...{ usedNotTold: 0, orderNotSent: 0, orderSentLater: 0, sentBackLater: 0, receivedLater: 0 },
    ...change,
  });
  const one = (change: Partial<LotToReconcile>, how: 'list' | 'count' = 'list') =>
    reconcileLots([lot(change)], how)[0];

  it('finds the same where shelf, cases and slots come to what the owner says', () => {
    expect(one({ listed: 6, onShelf: 3, withCases: 1, inSlots: 2 })).toMatchObject({
      difference: 0,
      explained: [],
      unexplained: 0,
    });
  });

  it('explains by what the record has, each with its pieces, and leaves the rest', () => {
    // they know of 10; 2 are used and not told, 1 is told on an order not sent, 1 went back later, 3 came later, 1 nobody knows
    const found = one({
      ...{ listed: 10, onShelf: 8, usedNotTold: 2, orderNotSent: 1, orderSentLater: 0 },
      ...{ sentBackLater: 1, receivedLater: 3 },
    });
    expect(found?.difference).toBe(2);
    expect(found?.explained).toEqual([
      { kind: 'usedNotTold', pieces: 2 },
      { kind: 'orderNotSent', pieces: 1 },
      { kind: 'sentBackLater', pieces: 1 },
      { kind: 'receivedLater', pieces: -3 },
    ]);
    expect(found?.unexplained).toBe(1);
  });

  it('explains nothing away where explanations cancel a difference that is not there', () => {
    expect(one({ listed: 5, onShelf: 5, usedNotTold: 1 })).toMatchObject({ difference: 0, unexplained: -1 });
  });

  it('has lots that only one of the two knows', () => {
    expect(one({ listed: null, onShelf: 2 })).toMatchObject({
      listed: null,
      difference: -2,
      unexplained: -2,
    });
    expect(one({ listed: 2 })).toMatchObject({ difference: 2, unexplained: 2 });
    expect(reconcileLots([lot({ listed: null })], 'list')).toEqual([]);
  });

  it('sets a count beside the shelf alone', () => {
    expect(one({ listed: 3, onShelf: 3, withCases: 2, usedNotTold: 1 }, 'count')).toMatchObject({
      difference: 0,
      explained: [],
      unexplained: 0,
    });
  });
});
