import { describe, expect, it, test } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import { findLoan } from '@/db/queries/loans/findLoan';
import { THE_PROGRAM } from '@/db/reader';
import { loanRequest } from '@/lib/documents/loanRequest';
import { loanReturn, wrongWords } from '@/lib/documents/loanReturn';
import type { Block, Sheet } from '@/lib/documents/sheet';
import { PRINTING } from '../lib/documents/setForSheet';
import { DEMO_NOW, demoDatabase } from '../setup/database';
import { textOf, wordsOf } from './readPdf';

async function demoLoan(number: string) {
  const db = await demoDatabase();
  const reading = { read: db.read, reader: THE_PROGRAM } as const;
  const found = await findLoan(reading, `loan_demo-${number}`, DEMO_NOW.toISOString());
  if (!found) throw new Error(`the demo has LN-${number}`);
  return found;
}

const factOf = (sheet: Sheet, term: string) => sheet.facts.find((one) => one.term === term)?.value;
const notices = (sheet: Sheet) =>
  sheet.blocks.filter((one): one is Extract<Block, { kind: 'notice' }> => one.kind === 'notice');
const tables = (sheet: Sheet) =>
  sheet.blocks.filter((one): one is Extract<Block, { kind: 'table' }> => one.kind === 'table');

describe('the request letter', () => {
  it('says what is asked, by when it must be here, and what must come with it; it names no case', async () => {
    const found = await demoLoan('4471');
    const sheet = loanRequest({ ...found, askedBy: found.names.askedBy, printing: PRINTING });
    expect(factOf(sheet, 'To')).toBe('Sallowfen Surgical');
    expect(factOf(sheet, 'For the attention of')).toBe('Osric Tamblyn');
    // two working days before Thursday 15 January 2026, by the start of work
    expect(factOf(sheet, 'With us by')).toBe('13 January 2026, 08:00');
    const said = JSON.stringify(sheet.blocks);
    expect(said).toContain('decontaminated');
    expect(said).toContain('written instructions');
    expect(said).toContain('11.34 kg');
    expect(JSON.stringify(sheet)).not.toContain(found.booked?.reference);
    expect(tables(sheet)[0]?.rows).toHaveLength(found.lines.length);
    expect(sheet.record.text).toMatch(/^LQ\/LN-4471\//);
  });
});

describe('the return note', () => {
  it('says that nobody has declared it, in a notice with a shape, until somebody has', async () => {
    const found = await demoLoan('4471');
    const open = loanReturn({ ...found, caseReference: null, printing: PRINTING });
    expect(notices(open).map(({ word, shape }) => [word, shape])).toEqual([['NOT DECLARED', 'stop']]);
    expect(JSON.stringify(tables(open)[0])).toContain('NOT DECLARED');
    const gone = await demoLoan('4430');
    const closed = loanReturn({ ...gone, caseReference: null, printing: PRINTING });
    expect(notices(closed)).toEqual([]);
    expect(JSON.stringify(tables(closed)[0])).toContain('washed and disinfected here');
  });

  it('names each way in which a line is not as it should be, and nothing of a line nobody counted', () => {
    const line = {
      cameIn: { sound: 3, damaged: 0 },
      goesOut: { sound: 1, damaged: 1 },
      used: 0,
      lackedOnArrival: 1,
      damagedOnArrival: 0,
      lackingOnReturn: 1,
      damagedHere: 1,
    };
    expect(wrongWords(line)).toEqual(['1 lacked as it came', '1 not found', '1 damaged here']);
    expect(wrongWords({ ...line, lackingOnReturn: -2 })).toContain('2 more than came: it may be ours');
    const uncounted = { cameIn: null, goesOut: null, used: 0 };
    const unknown = {
      lackedOnArrival: null,
      damagedOnArrival: null,
      lackingOnReturn: null,
      damagedHere: null,
    };
    expect(wrongWords({ ...uncounted, ...unknown })).toEqual([]);
  });
});

test.each(['a4', 'letter'] as const)(
  'both papers print on %s, every page with its number and the loan’s, and the last with room to sign',
  async (paper) => {
    const found = await demoLoan('4471');
    for (const sheet of [
      loanRequest({ ...found, askedBy: found.names.askedBy, printing: PRINTING }),
      loanReturn({ ...found, caseReference: null, printing: PRINTING }),
    ]) {
      const pages = await wordsOf(await paintSheet(sheet, paper, new Date(PRINTING.at)));
      for (const [index, words] of pages.entries()) {
        expect(textOf(words)).toContain(`Page ${index + 1} of ${pages.length}`);
        expect(textOf(words)).toContain('LN-4471');
        expect(Math.max(...words.map(({ y }) => y))).toBeLessThan(paper === 'a4' ? 842 - 14 : 792 - 14);
      }
      const all = pages.map(textOf).join(' ');
      expect(all).toContain('Signature');
    }
  },
  120_000,
);
