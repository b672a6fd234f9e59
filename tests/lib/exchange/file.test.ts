import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { EXCHANGE_LIMITS } from '@/lib/exchange/limits';
import { LIST_KINDS } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import { likeness, mapColumns } from '@/lib/exchange/mapping';
import { guideOf, listCsv, listJson, listWorkbook, templateWorkbook } from '@/lib/exchange/out';
import { readExchangeFile } from '@/lib/exchange/readFile';
import { type RowChoices, readRows } from '@/lib/exchange/readRows';
import type { Encoding } from '@/lib/lists/decodeText';
import { byteOfWindows1252, decodeWindows1252 } from '@/lib/lists/windows1252';
import { fileWords } from '@/lib/wording/exchange';

const NONE = { sheet: null, encoding: null };
const CHOICES: RowChoices = { dateOrder: null, decimal: null, repaired: [], kept: [], empty: 'keep' };
const info = LISTS.people;

async function rowsOf(
  bytes: Uint8Array,
  choices: { sheet?: string | null; encoding?: Encoding | null } = {},
) {
  const read = await readExchangeFile(bytes, info, { ...NONE, ...choices });
  return read.ok
    ? read.file.rows.map(({ cells }) => cells.map((cell) => cell?.text ?? null))
    : read.fault.code;
}

const utf16 = (text: string, big: boolean) => {
  const bytes = Buffer.from(`\uFEFF${text}`, 'utf16le');
  return new Uint8Array(big ? bytes.swap16() : bytes);
};

describe('a CSV', () => {
  const TEXT = 'Name;Role\r\nZoë Brontë;"Scrub\r\npractitioner"\r\n';
  const ROWS = [
    ['Name', 'Role'],
    ['Zoë Brontë', 'Scrub\r\npractitioner'],
  ];

  // WHATWG Encoding; RFC 4180
  it.each([
    ['UTF-8', strToU8(TEXT)],
    ['UTF-8 with its mark', strToU8(`\uFEFF${TEXT}`)],
    ['UTF-16, little end first', utf16(TEXT, false)],
    ['UTF-16, big end first', utf16(TEXT, true)],
    ['Windows-1252', new Uint8Array(Buffer.from(TEXT, 'latin1'))],
    ['tabs', strToU8(TEXT.replaceAll(';', '\t'))],
    ['commas', strToU8(TEXT.replaceAll(';', ','))],
  ])('in %s is read as it was written', async (_, bytes) => {
    expect(await rowsOf(bytes)).toEqual(ROWS);
  });

  it('that is neither of them is refused, and a person’s word decides where bytes allow several', async () => {
    expect(await rowsOf(Uint8Array.from([0x4e, 0x81, 0x2c, 0xff]))).toBe('not-text');
    expect(await rowsOf(new Uint8Array(Buffer.from(TEXT, 'utf16le')))).toBe('not-text');
    expect(await rowsOf(strToU8(TEXT), { encoding: 'windows-1252' })).not.toEqual(ROWS);
    expect(await rowsOf(new Uint8Array(Buffer.from(TEXT, 'latin1')), { encoding: 'utf-8' })).toBe('not-text');
  });

  it.each([
    ['', 'empty'],
    ['\r\n \r\n', 'empty'],
    ['Name,Role\r\n"open,x', 'broken-quote'],
    ['x,'.repeat(EXCHANGE_LIMITS.columns + 2), 'too-many-cells'],
  ])('%j is refused: %s', async (text, code) => {
    expect(await rowsOf(strToU8(text))).toBe(code);
  });
});

// the bytes 80 to 9F as Python 3.11 decodes cp1252, computed once: bytes([b]).decode('cp1252'), where it does
it('Windows-1252 has its own letters where Latin-1 has controls', () => {
  const letters = '€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ';
  const bytes = Array.from({ length: 32 }, (_, at) => 0x80 + at).filter(
    (byte) => ![0x81, 0x8d, 0x8f, 0x90, 0x9d].includes(byte),
  );
  expect(decodeWindows1252(Uint8Array.from(bytes))).toBe(letters);
  expect([...letters].map(byteOfWindows1252)).toEqual(bytes);
  expect(decodeWindows1252(Uint8Array.from([0x81]))).toBeNull();
  expect([byteOfWindows1252(' '), byteOfWindows1252('é'), byteOfWindows1252('Ł')]).toEqual([
    0x20,
    0xe9,
    null,
  ]);
});

describe('a workbook', () => {
  it('keeps zeros and formula starters as texts, also in the template’s empty cells', async () => {
    const book = await listWorkbook(info, [
      { name: '=1+2', role: 'technician' },
      { name: '00017', role: 'surgeon' },
    ]);
    expect(((await rowsOf(book)) as string[][]).map(([name]) => name)).toEqual(['Name', '=1+2', '00017']);
    const template = await templateWorkbook(LISTS.catalogue);
    const sheet = new TextDecoder().decode(unzipSync(template)['xl/worksheets/sheet1.xml']);
    expect([...sheet.matchAll(/<row /g)].length).toBeGreaterThan(200);
    expect(sheet).not.toMatch(/<c r="[A-Z]+\d+" t="n"/);
  });

  it('that unpacks to more than may be is not unpacked', async () => {
    const bomb = zipSync({ 'xl/worksheets/sheet1.xml': [new Uint8Array(80_000_000), { level: 9 }] });
    expect(bomb.byteLength).toBeLessThan(EXCHANGE_LIMITS.bytes);
    expect(await rowsOf(bomb)).toBe('workbook-too-large-inside');
    expect(await rowsOf(new Uint8Array(EXCHANGE_LIMITS.bytes + 1))).toBe('too-large');
    expect(await rowsOf(Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0]))).toBe('old-workbook');
    expect(await rowsOf(Uint8Array.from([0x50, 0x4b, 3, 4, 9]))).toBe('unreadable-workbook');
  });
});

it('whatever the bytes, a file is read or refused in a sentence, and never throws', async () => {
  const some = fc.oneof(
    fc.uint8Array({ maxLength: 300 }),
    fc
      .string({ maxLength: 200, unit: 'binary' })
      .map((text) => new TextEncoder().encode(`Name,Role\r\n${text}`)),
    fc.uint8Array({ maxLength: 200 }).map((bytes) => Uint8Array.from([0x50, 0x4b, 3, 4, ...bytes])),
  );
  await fc.assert(
    fc.asyncProperty(some, async (bytes) => {
      const read = await readExchangeFile(bytes, info, NONE);
      if (!read.ok) {
        expect(fileWords(read.fault)).toMatch(/\.$/);
        return;
      }
      const mapping = mapColumns(read.file.rows, info, { asked: {}, remembered: null });
      if (mapping) readRows(read.file.rows, mapping, info, CHOICES, {});
    }),
    { numRuns: 400 },
  );
});

// RFC 4180 and OWASP, CSV injection (from memory): texts are kept from being worked out, figures are as they are
it('what goes out as CSV comes back, formula starters and all', async () => {
  const text = fc
    .string({ minLength: 2, maxLength: 40, unit: 'grapheme' })
    .filter((one) => one.trim() === one && !/\p{Cc}/u.test(one));
  const starter = fc
    .tuple(fc.constantFrom('=', '+', '-', '@', "'=", "''-", '"'), text)
    .map((parts) => parts.join(''));
  await fc.assert(
    fc.asyncProperty(fc.array(fc.oneof(text, starter), { minLength: 1, maxLength: 5 }), async (names) => {
      const csv = listCsv(
        info,
        names.map((name) => ({ name, role: 'surgeon' })),
      );
      expect(csv).not.toMatch(/(?:^|[\r\n,])"?[=+\-@\t]/);
      expect(((await rowsOf(strToU8(csv))) as string[][]).slice(1).map(([name]) => name)).toEqual(names);
    }),
    { numRuns: 300 },
  );
  expect(listCsv(LISTS.holes, [{ plate: '-x', acrossMm: '-2.5' }])).toContain("'-x");
  expect(listCsv(LISTS.holes, [{ plate: '-x', acrossMm: '-2.5' }])).toContain(',-2.5,');
  expect(JSON.parse(listJson(info, [{ name: 'A', role: '' }]))).toMatchObject({
    list: 'people',
    rows: [{ name: 'A', role: null }],
  });
});

describe('headings', () => {
  const heads = (...texts: string[]) => [
    { row: 1, cells: texts.map((text) => ({ text, form: 'text' as const })) },
    { row: 2, cells: [{ text: 'x', form: 'text' as const }] },
  ];

  it('are found by name, proposed by likeness, and never one column twice', () => {
    const mapping = mapColumns(heads('Qty', 'Item codes', 'Lot No.', 'Expirydate', 'Colour'), LISTS.stock, {
      asked: {},
      remembered: null,
    });
    expect(mapping?.chosen).toMatchObject({
      pieces: { number: 1, by: 'name' },
      item: { number: 2, by: 'likely' },
      lot: { number: 3, by: 'name' },
      useBy: { number: 4, by: 'name' },
    });
    const numbers = Object.values(mapping?.chosen ?? {}).flatMap(({ number }) => number ?? []);
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  it('about the patient are never read, unless they are the list’s own', () => {
    const mapping = mapColumns(heads('Name', 'Role', 'NHS number', 'Date of birth'), info, {
      asked: { role: 3 },
      remembered: null,
    });
    expect(mapping?.columns.map(({ aboutThePatient }) => aboutThePatient)).toEqual([
      false,
      false,
      true,
      true,
    ]);
    expect(mapping?.chosen.role?.number).toBeNull();
  });

  it('twice the same are asked about', () => {
    expect(mapColumns(heads('Name', 'Role', 'Name'), info, { asked: {}, remembered: null })?.named).toEqual([
      { key: 'name', columns: [1, 3] },
    ]);
  });

  it('likeness is 1 for the same, 0 for nothing, and the same both ways', () => {
    expect(likeness('Use-by date', 'USE BY DATE')).toBe(1);
    expect(likeness('', 'x')).toBe(0);
    fc.assert(
      fc.property(fc.string(), fc.string(), (a, b) => Math.abs(likeness(a, b) - likeness(b, a)) < 1e-9),
    );
  });
});

describe('damaged cells', () => {
  const read = async (csv: string, choices: Partial<RowChoices> = {}) => {
    const file = await readExchangeFile(strToU8(csv), LISTS.catalogue, NONE);
    if (!file.ok) throw new Error(file.fault.code);
    const mapping = mapColumns(file.file.rows, LISTS.catalogue, { asked: {}, remembered: null });
    if (!mapping) throw new Error('no headings');
    return readRows(
      file.file.rows,
      mapping,
      LISTS.catalogue,
      { ...CHOICES, ...choices },
      { code: new Set(['004711']) },
    );
  };

  it('are asked about all at once, and repaired only as a person says, all like it', async () => {
    const csv = 'Code,GTIN\r\n4711,9521234543213\r\nA\u00a01,8904000210037\r\nB,\r\n';
    const asked = await read(csv);
    expect(asked.questions.map(({ key, cells }) => [key, cells.length])).toEqual([
      ['code:zerosLost', 1],
      ['code:spaces', 1],
      ['gtin:zerosLost', 2],
    ]);
    const repaired = await read(csv, {
      repaired: ['gtin:zerosLost'],
      kept: ['code:zerosLost', 'code:spaces'],
    });
    expect(repaired.questions).toEqual([]);
    expect(repaired.rows.map(({ cells }) => [cells.code, cells.gtin])).toEqual([
      ['4711', '09521234543213'],
      ['A\u00a01', '08904000210037'],
      ['B', ''],
    ]);
  });

  it('one repair may show another', async () => {
    const done = await read('Code,GTIN\r\n4711.0,\r\n', { repaired: ['code:pointZero', 'code:zerosLost'] });
    expect(done.rows[0]?.cells.code).toBe('004711');
  });
});

it.each(LIST_KINDS)('the guide of %s tells every column', (kind) => {
  for (const line of guideOf(LISTS[kind])) expect(line.says).toMatch(/\.$/);
});
