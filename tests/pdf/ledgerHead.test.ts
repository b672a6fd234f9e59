import { expect, test } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import { mm } from '@/app/_pdf/paper';
import { countSheet } from '@/lib/documents/countSheet';
import { printedHead, readPrintedHead } from '@/lib/ledger/heads';
import { PRINTING, setForSheet } from '../lib/documents/setForSheet';
import { wordsOf } from './readPdf';

const head = { seq: 12_345, hash: '3f9a0c1e77b2d004'.repeat(4) };
/** Office printers leave a margin of about 4 mm unprinted (common practice, no source). */
const UNPRINTED = mm(4);

test('the foot of every page carries the ledger’s head, above the printer’s margin, as a verifier reads it', async () => {
  const sheet = countSheet(setForSheet());
  const pages = await wordsOf(
    await paintSheet(
      { ...sheet, edition: { ...sheet.edition, ledgerHead: printedHead(head) } },
      'letter',
      new Date(PRINTING.at),
    ),
  );
  expect(pages.length).toBeGreaterThan(1);
  for (const words of pages) {
    const line = words.find(({ text }) => text.startsWith('Ledger head: entry'));
    expect(line?.text).toBe('Ledger head: entry 12,345 · 3f9a 0c1e 77b2 d004 3f9a 0c1e 77b2 d004');
    expect(line?.y ?? Number.POSITIVE_INFINITY).toBeLessThan(mm(279.4) - UNPRINTED);
    expect(readPrintedHead(line?.text.replace('Ledger head: entry ', '') ?? '')).toMatchObject({
      seq: head.seq,
      hash: head.hash.slice(0, 32),
    });
  }
}, 60_000);
