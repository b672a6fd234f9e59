import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import { countSheet } from '@/lib/documents/countSheet';
import { PRINTING, setForSheet } from '../lib/documents/setForSheet';
import { blur, crop, threshold } from './picture';
import { BLACK_AND_WHITE, coloursOf, openPdf, printed, tagsOf, textOf, wordsOf } from './readPdf';
import { scan } from './scan';

const given = setForSheet();
const sheet = countSheet(given);
const at = new Date(PRINTING.at);
let pdf: Buffer;
/** Milliseconds a test may take that draws and reads whole pages. */
const SLOW = 60_000;

beforeAll(async () => {
  pdf = await paintSheet(sheet, 'a4', at);
}, SLOW);

test('the text reads back: set, configuration, every item, every layer', async () => {
  const text = textOf((await wordsOf(pdf)).flat());
  for (const expected of [
    'Count sheet',
    'SFS-01',
    'Small fragment',
    'Layer 1: Instruments',
    'Layer 2: Screws',
  ]) {
    expect(text).toContain(expected);
  }
  for (const line of given.set.lines) {
    if (line.rackItemId !== null) continue;
    // names are wrapped, so their words are looked for one by one
    for (const word of (given.items.get(line.itemId)?.name ?? '').split(' ')) expect(text).toContain(word);
  }
});

test('every page says which it is of how many, the version, when and by whom it was printed, and the cautions', async () => {
  const pages = await wordsOf(pdf);
  expect(pages.length).toBeGreaterThan(1);
  for (const [index, words] of pages.entries()) {
    const text = textOf(words).replaceAll(/\s+/g, ' ');
    expect(text).toContain(`Page ${index + 1} of ${pages.length}`);
    expect(text).toContain('version 3, set revision 4 · printed 14 January 2026, 06:30 by Imogen Vale');
    expect(text).toContain(sheet.title);
    expect(text).toContain('Larkmoor Infirmary');
    for (const caution of sheet.cautions) {
      for (const word of caution.split(' ')) expect(text).toContain(word);
    }
  }
});

test.each([
  // ISO 216: A4 is 210 × 297 mm; Letter is 8.5 × 11 inches (ANSI/ASME Y14.1)
  { paper: 'a4' as const, width: (210 / 25.4) * 72, height: (297 / 25.4) * 72 },
  { paper: 'letter' as const, width: 612, height: 792 },
])(
  'on $paper nothing stands nearer than 5 mm to the edge of any page',
  async ({ paper, width, height }) => {
    const made = await paintSheet(sheet, paper, at);
    const document = await openPdf(made);
    for (let number = 1; number <= document.numPages; number += 1) {
      const [, , w = 0, h = 0] = (await document.getPage(number)).view;
      expect(w).toBeCloseTo(width, 1);
      expect(h).toBeCloseTo(height, 1);
    }
    const edge = (5 / 25.4) * 72;
    for (const { x, y, text } of (await wordsOf(made)).flat()) {
      expect(x, text).toBeGreaterThan(edge);
      expect(x, text).toBeLessThan(width - edge);
      expect(y, text).toBeGreaterThan(edge);
      expect(y, text).toBeLessThan(height - edge);
    }
  },
  SLOW,
);

test('it is tagged, in English, titled, and says it is PDF/UA', async () => {
  const document = await openPdf(pdf);
  expect(await document.getMarkInfo()).toMatchObject({ Marked: true });
  const { info, metadata } = await document.getMetadata();
  expect(info).toMatchObject({ Title: 'Count sheet SFS-01, Small fragment', Language: 'en-GB' });
  // ISO 14289-1:2014, 5: the part number is in the metadata under this name
  expect(metadata?.getRaw()).toMatch(/<pdfuaid:part>1<\/pdfuaid:part>/);
  expect(await document.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true });
});

test('tags: one H1, headings, tables of rows with heads for rows and columns, figures that say what they show', async () => {
  const tags = await tagsOf(pdf);
  const count = (role: string) => tags.filter((tag) => tag.role === role).length;
  expect(count('H1')).toBe(1);
  expect(count('H2')).toBe(5);
  expect(count('H3')).toBe(1);
  expect(count('TR')).toBeGreaterThan(given.set.lines.filter(({ rackItemId }) => rackItemId === null).length);
  expect(count('TH')).toBeGreaterThan(0);
  const figures = tags.filter((tag) => tag.role === 'Figure');
  // the record code, and the drawing of each line outside the rack
  expect(figures).toHaveLength(1 + given.set.lines.filter(({ rackItemId }) => rackItemId === null).length);
  for (const { alt } of figures) expect(alt?.length ?? 0).toBeGreaterThan(10);
});

test('a table’s rows all have as many cells as its head, empty ones included', () => {
  // from the objects of the file itself: a reader leaves out cells without content
  const objects = new Map<string, string>();
  for (const [, number = '', body = ''] of pdf
    .toString('latin1')
    .matchAll(/^(\d+) 0 obj\n([\s\S]*?)\nendobj/gm)) {
    objects.set(number, body);
  }
  const kids = (body: string) =>
    [...(/\/K \[([^\]]*)\]/.exec(body)?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map(
      ([, number = '']) => objects.get(number) ?? '',
    );
  const tables = [...objects.values()].filter((body) => /\/S \/Table\b/.test(body));
  expect(tables.length).toBe(sheet.blocks.filter(({ kind }) => kind === 'table' || kind === 'rack').length);
  for (const table of tables) {
    const rows = kids(table);
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) expect(row).toMatch(/\/S \/TR\b/);
    const widths = rows.map((row) => kids(row).filter((cell) => /\/S \/T[HD]\b/.test(cell)).length);
    expect(new Set(widths).size, String(widths)).toBe(1);
  }
});

test('every font it names is embedded', () => {
  const source = pdf.toString('latin1');
  const fonts = [...source.matchAll(/\/BaseFont \/(\S+)/g)].map(([, name]) => name);
  expect(fonts.length).toBeGreaterThan(0);
  for (const name of fonts) expect(name).toMatch(/^[A-Z]{6}\+DejaVu/);
  const descriptors = [...source.matchAll(/\/Type \/FontDescriptor[\s\S]*?endobj/g)];
  expect(descriptors.length).toBeGreaterThan(0);
  for (const [descriptor] of descriptors) expect(descriptor).toContain('/FontFile2');
});

test('black on white only, so that a copy of a copy says the same', async () => {
  const colours = await coloursOf(pdf);
  expect(colours.size).toBeGreaterThan(0);
  for (const colour of colours) expect(BLACK_AND_WHITE).toContain(colour);
});

/** The height of capitals as a share of the type size, from the font's own OS/2 table (OpenType: sCapHeight at byte 88). */
function capHeightOf(file: string): number {
  const font = readFileSync(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${file}`, import.meta.url));
  const tables = new Map(
    Array.from({ length: font.readUInt16BE(4) }, (_, index) => {
      const record = 12 + index * 16;
      return [font.toString('latin1', record, record + 4), font.readUInt32BE(record + 8)] as const;
    }),
  );
  const glyphs = glyphTop(font, tables);
  return glyphs / font.readUInt16BE((tables.get('head') ?? 0) + 18);
}

/** Top of the capital H by its outline, for DejaVu's OS/2 table is of a version before sCapHeight. */
function glyphTop(font: Buffer, tables: Map<string, number>): number {
  const long = font.readInt16BE((tables.get('head') ?? 0) + 50) === 1;
  const loca = tables.get('loca') ?? 0;
  const id = glyphOf(font, tables.get('cmap') ?? 0, 'H'.charCodeAt(0));
  const offset = long ? font.readUInt32BE(loca + id * 4) : font.readUInt16BE(loca + id * 2) * 2;
  return font.readInt16BE((tables.get('glyf') ?? 0) + offset + 8);
}

function glyphOf(font: Buffer, cmap: number, code: number): number {
  for (let at = 0; at < font.readUInt16BE(cmap + 2); at += 1) {
    const table = cmap + font.readUInt32BE(cmap + 4 + at * 8 + 4);
    if (font.readUInt16BE(table) !== 4) continue;
    const segments = font.readUInt16BE(table + 6) / 2;
    for (let segment = 0; segment < segments; segment += 1) {
      const end = font.readUInt16BE(table + 14 + segment * 2);
      const start = font.readUInt16BE(table + 16 + (segments + segment) * 2);
      if (code < start || code > end) continue;
      const delta = font.readInt16BE(table + 16 + (2 * segments + segment) * 2);
      const rangeAt = table + 16 + (3 * segments + segment) * 2;
      const range = font.readUInt16BE(rangeAt);
      return range === 0 ? (code + delta) & 0xffff : font.readUInt16BE(rangeAt + range + (code - start) * 2);
    }
  }
  throw new Error('the font has no such letter');
}

test('what is read across a table has capitals of at least 4 mm: the set’s code and what is expected', async () => {
  const words = (await wordsOf(pdf)).flat();
  const smallest =
    4 /
    (25.4 / 72) /
    Math.min(capHeightOf('DejaVuSansCondensed-Bold.ttf'), capHeightOf('DejaVuSerifCondensed-Bold.ttf'));
  const codes = words.filter(({ text }) => text === 'SFS-01');
  expect(codes.length).toBeGreaterThan(1);
  for (const { points } of codes) expect(points).toBeGreaterThanOrEqual(smallest);
  const expected = words.filter(({ text, points }) => /^[1-4]$/.test(text) && points > 12);
  expect(expected.length).toBeGreaterThanOrEqual(given.set.lines.length);
  for (const { points } of expected) expect(points).toBeGreaterThanOrEqual(smallest);
});

/** Element string as the decoder gives it; the leading FNC1 of a GS1 symbol may be told as a group separator. */
function withoutFnc1(bytes: Uint8Array = new Uint8Array()): string {
  return Buffer.from(bytes[0] === 0x1d ? bytes.subarray(1) : bytes).toString('latin1');
}

test(
  'the record code is read by another decoder from a 203 dpi print of every page',
  async () => {
    const document = await openPdf(pdf);
    for (let number = 1; number <= document.numPages; number += 1) {
      const [found] = await scan(threshold(await printed(pdf, number, 203), 128));
      expect(found?.format, `page ${number}`).toBe('DataMatrix');
      // ISO/IEC 15424: ]d2 is a GS1 DataMatrix, with FNC1 first
      expect(found?.symbologyIdentifier).toBe(']d2');
      expect(withoutFnc1(found?.bytes)).toBe(`91${sheet.record.text}`);
    }
  },
  SLOW,
);

test(
  'each module is four dots of a 203 dpi printer, none a dot wider, and stands clear all round',
  async () => {
    const page = threshold(await printed(pdf, 1, 203), 128);
    const [found] = await scan(page);
    if (!found) throw new Error('no symbol');
    const { topLeft, topRight, bottomLeft } = found.position;
    const [left, top] = [Math.min(topLeft.x, bottomLeft.x), Math.min(topLeft.y, topRight.y)];
    const around = crop(page, left - 12, top - 12, topRight.x - left + 24, bottomLeft.y - top + 24);
    const runs = runLengths(around);
    expect(runs.length).toBeGreaterThan(50);
    for (const run of runs) expect(run % 4).toBe(0);
  },
  SLOW,
);

/** Lengths of the dark runs in every row. */
function runLengths({ width, height, greys }: ReturnType<typeof crop>): number[] {
  const runs: number[] = [];
  for (let y = 0; y < height; y += 1) {
    let run = 0;
    for (let x = 0; x <= width; x += 1) {
      if (x < width && greys[y * width + x] === 0) run += 1;
      else {
        if (run > 0) runs.push(run);
        run = 0;
      }
    }
  }
  return runs;
}

test(
  'the record code survives a copier: out of focus, then black and white, twice',
  async () => {
    const page = threshold(await printed(pdf, 1, 203), 128);
    // the top right of the page, where the code is: a copier would take the rest as well, but it only takes time
    const print = crop(page, Math.floor(page.width / 2), 0, Math.floor(page.width / 2), 400);
    const copy = (page: typeof print, level: number) => threshold(blur(page, 1), level);
    const light = copy(copy(print, 110), 110);
    const dark = copy(copy(print, 150), 150);
    for (const page of [light, dark]) {
      const [found] = await scan(page);
      expect(Buffer.from(found?.bytes ?? []).toString('latin1')).toContain(sheet.record.text);
    }
  },
  SLOW,
);

test(
  'a name of ten thousand letters is cut where it says so, and stays on the paper',
  async () => {
    const long = countSheet(setForSheet({ configuration: { name: 'W'.repeat(10_000) } }));
    const made = await paintSheet(long, 'a4', at);
    const widest = Math.max(...(await wordsOf(made)).flat().map(({ x }) => x));
    expect(widest).toBeLessThan((210 / 25.4) * 72);
  },
  SLOW,
);
