import { describe, expect, it } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import { MOST_CASES_ON_PAPER, type RecallReportOf, recallReport } from '@/lib/documents/recallReport';
import { PRINTING } from '../lib/documents/setForSheet';
import { wordsOf } from './readPdf';

const exactly = (pieces: number) => ({ lo: pieces, hi: pieces });
const report = (isRehearsal: boolean, cases = 60): RecallReportOf => ({
  recall: {
    number: 'R-00001',
    what: 'lot B of cortical screw 3.5 × 20',
    reason: 'Threads out of tolerance.',
    noticeReference: 'FSN-2026-014',
    isRehearsal,
    opened: { at: '2026-01-14T09:00:00.000Z', by: 'Nell Ashdown' },
    closed: null,
    balance: {
      received: 25,
      implanted: { lo: 6, hi: 23 },
      wasted: { lo: 0, hi: 6 },
      held: { lo: 2, hi: 15 },
      returned: exactly(0),
      unaccounted: exactly(0),
      notFound: exactly(0),
      setAside: exactly(0),
      lotLost: exactly(0),
    },
    holds: isRehearsal ? [] : [{ setId: 'set_a', name: 'SFS-02', pieces: 4, heldStill: true }],
    tasks: [{ name: 'Gwen Sallis', task: 'know', acknowledgedAt: null, note: null }],
  },
  cases: Array.from({ length: cases }, (_, at) => ({
    reference: `LM-25-${String(at).padStart(4, '0')}`,
    date: '2025-11-03',
    surgeon: 'Ines Halloran',
    lo: 0,
    hi: at === 0 ? 2 : 0,
    standing: at === 0 ? ('possible' as const) : ('excluded' as const),
    reasons: ['From SFS-02, implanted: Lots lay mixed in the slot, and the lot of 2 pieces was not read.'],
  })),
  contradictions: [{ set: 'SFS-03', sentence: 'The records contradict themselves.' }],
  printing: PRINTING,
});

describe('the report of a recall', () => {
  it('says what was reached with its bounds, what is held, and who has not acknowledged', () => {
    const sheet = recallReport(report(false));
    const said = JSON.stringify(sheet.blocks);
    expect(said).toContain('possible, 0–2');
    expect(said).toContain('6–23');
    expect(said).toContain('not yet');
    expect(said).toContain('NOT ESTABLISHED');
    expect(JSON.stringify(sheet)).not.toContain('REHEARSAL');
    expect(sheet.facts).toContainEqual({ term: 'Held by it', value: 'one set' });
  });

  it('names the cases that are looked at first, says how many more there are, and where each of them is', () => {
    const most = JSON.stringify(recallReport(report(false, MOST_CASES_ON_PAPER)).blocks);
    expect(most).not.toContain('NOT ALL OF THEM');
    expect(most).toContain(`LM-25-0${MOST_CASES_ON_PAPER - 1}`);
    const sheet = recallReport(report(false, 5_000));
    const said = JSON.stringify(sheet.blocks);
    expect(said).toContain('The first 200 of 5000 cases');
    expect(said).toContain('recall-R-00001-cases.csv');
    expect(said).toContain('LM-25-0199');
    expect(said).not.toContain('LM-25-0200');
    // the figures count all of them
    expect(sheet.facts).toContainEqual({ term: 'Cases excluded', value: '4999' });
  });

  it('is signed on a page on which something stands that is signed for, wherever the pages end', async () => {
    const whole = report(false, 0);
    const [one] = whole.recall.tasks;
    if (!one) throw new Error('somebody was asked');
    const lengths = new Set<number>();
    for (let asked = 30; asked <= 40; asked += 1) {
      const tasks = Array.from({ length: asked }, () => one);
      const sheet = recallReport({ ...whole, recall: { ...whole.recall, tasks } });
      const pages = await wordsOf(await paintSheet(sheet, 'a4', new Date(PRINTING.at)));
      const last = (pages.at(-1) ?? []).map(({ text }) => text).join(' ');
      expect(last, `${asked} asked`).toContain('Closed by');
      expect(last.split('Gwen Sallis').length - 1, `${asked} asked`).toBeGreaterThanOrEqual(2);
      lengths.add(pages.length);
    }
    // the last row and the boxes came to a page of their own meanwhile
    expect(lengths.size).toBeGreaterThan(1);
  });

  it('rehearsed, says so on every page, and that nothing was held', async () => {
    const sheet = recallReport(report(true));
    const pages = await wordsOf(await paintSheet(sheet, 'a4', new Date(PRINTING.at)));
    expect(pages.length).toBeGreaterThan(2);
    for (const words of pages) expect(words.map(({ text }) => text).join(' ')).toContain('REHEARSAL');
    expect(JSON.stringify(sheet.blocks)).toContain('Nothing was held by it.');
  });
});
