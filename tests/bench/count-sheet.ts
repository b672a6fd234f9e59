import PdfDocument from 'pdfkit';
import { paintSheet } from '@/app/_pdf/paintSheet';
import { countSheet } from '@/lib/documents/countSheet';
import { itemId } from '@/lib/identity/ids';
import { bitFor, plateFor, sleeveFor } from '../fixtures/catalogueItems';
import { lineFor, RACK, screwLine, setForSheet } from '../lib/documents/setForSheet';
import { type BenchRow, besideOf, percentiles } from './row';

const LENGTHS = [10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 35, 40];

/** 120 lines: 93 with a drawing of their own, of which each is another design; a rack and 26 cells. */
function given() {
  const set = setForSheet();
  const items = new Map(set.items);
  const loose = Array.from({ length: 93 }, (_, at) => {
    const id = itemId.parse(`item_loose-${at}`);
    const name = `Item number ${at + 1}, of a design of its own`;
    const lengthUm = 60_000 + at * 700;
    if (at % 3 === 0) items.set(id, plateFor({ id, name, code: `P-${at}`, lengthUm: 97_000 + at * 500 }));
    else if (at % 3 === 1) items.set(id, bitFor({ id, name, code: `B-${at}`, lengthUm }));
    else items.set(id, sleeveFor({ id, name, code: `S-${at}`, lengthUm }));
    return lineFor({ itemId: id, row: 1 + Math.floor(at / 10), slot: 1 + (at % 10) });
  });
  const lines = [
    ...loose,
    lineFor({ itemId: RACK, layer: 2, expected: 1 }),
    ...[0, 1].flatMap((family) => LENGTHS.map((mm) => screwLine(family, mm))),
  ];
  if (lines.length !== 120) throw new Error(`${lines.length} lines`);
  return { ...set, items, set: { ...set.set, lines } };
}

/** A count sheet of 120 lines, from its rows to the last byte of the PDF; our own bound: 300 ms. */
export async function bench(): Promise<BenchRow[]> {
  const sheetOf = given();
  const times: number[] = [];
  for (let run = 0; run < 25; run += 1) {
    const start = performance.now();
    const pdf = await paintSheet(countSheet(sheetOf), 'a4', new Date(sheetOf.printing.at));
    times.push(performance.now() - start);
    if (pdf.subarray(0, 5).toString() !== '%PDF-') throw new Error('not a PDF');
  }
  const { p50, p95 } = percentiles(times.slice(5));
  const ratio = p50 / (await besideOf(plainLines));
  const beside = 'pdfkit writing 120 plain lines';
  return [{ name: 'count sheet: 120 lines as PDF', p50, p95, bound: 300, ratio, beside }];
}

/** The least there is to such a paper: its lines as text, in a font that every reader has. */
function plainLines(): Promise<void> {
  return new Promise((resolve) => {
    const paper = new PdfDocument({ size: 'A4' });
    paper.on('data', () => {}).on('end', () => resolve());
    for (let line = 1; line <= 120; line += 1)
      paper.text(`${line}  P-${line}  Item number ${line}, of a design of its own  1`);
    paper.end();
  });
}
