import { strToU8, unzipSync, zipSync } from 'fflate';
import { expect, it } from 'vitest';
import writeWorkbook from 'write-excel-file/universal';
import { LISTS } from '@/lib/exchange/lists/lists';
import { mapColumns } from '@/lib/exchange/mapping';
import { readExchangeFile } from '@/lib/exchange/readFile';
import { readRows } from '@/lib/exchange/readRows';
import { COVERED, readWorkbookSheet } from '@/lib/lists/readWorkbook';
import { momentOfSerial } from '@/lib/lists/serial';
import { problemWords, understoodWords } from '@/lib/wording/exchange';

const LIMITS = { columns: 50, lastRow: 100, unpackedBytes: 1_000_000 };
const text = (value: string) => ({ value, type: String });

/** A workbook of sheets of texts with its parts changed, as office programs write them. */
async function book(
  sheets: Readonly<Record<string, readonly (readonly string[])[]>>,
  change: (files: Record<string, string>) => void = () => {},
): Promise<Uint8Array> {
  const made = writeWorkbook(
    Object.entries(sheets).map(([sheet, rows]) => ({ sheet, data: rows.map((row) => row.map(text)) })),
  );
  const files = unzipSync(new Uint8Array(await (await made.toBlob()).arrayBuffer()));
  const texts = Object.fromEntries(
    Object.entries(files).map(([name, file]) => [name, new TextDecoder().decode(file)]),
  );
  change(texts);
  return zipSync(Object.fromEntries(Object.entries(texts).map(([name, xml]) => [name, strToU8(xml)])));
}

function replaced(files: Record<string, string>, name: string, from: RegExp, to: string): void {
  const before = files[name] ?? '';
  files[name] = before.replace(from, to);
  expect(files[name], `${from} in ${name}`).not.toBe(before);
}

const SHEET = 'xl/worksheets/sheet1.xml';
const PEOPLE = [
  ['Name', 'Role'],
  ['Avery Lind', 'Surgeon'],
  ['Bo Marsh', 'Surgeon'],
  ['Cleo Nairn', 'Surgeon'],
];

async function rowsOf(file: Uint8Array, sheet: string | null = null) {
  const read = await readWorkbookSheet(file, sheet, LIMITS);
  if (!read.ok) throw new Error(read.why);
  return read;
}

// ECMA-376 Part 1, 18.2.28 and 22.9.2.1: a truth is 1 or true, and LibreOffice 7.4 writes `true`; 1462 days lie between the systems
it.each(['1', 'true'])(
  'days counted from 1904 are those days, where the workbook says so by “%s”',
  async (word) => {
    const file = await book({ Days: [['Use-by'], ['x']] }, (files) => {
      replaced(
        files,
        'xl/workbook.xml',
        /<workbookPr\b[^>]*\/>|(?=<sheets)/,
        `<workbookPr date1904="${word}"/>`,
      );
      // 46173 counted from 1900 is 31 May 2026
      replaced(files, SHEET, /<c r="A2"[^>]*>.*?<\/c>/, '<c r="A2" t="d"><v>x</v></c>');
      replaced(files, SHEET, /<c r="A2" t="d"><v>x<\/v><\/c>/, `<c r="A2" s="9"><v>${46173 - 1462}</v></c>`);
      files['xl/styles.xml'] =
        `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><cellXfs>${'<xf numFmtId="14" applyNumberFormat="1"/>'.repeat(10)}</cellXfs></styleSheet>`;
    });
    const day = (await rowsOf(file)).rows[1]?.cells[0];
    expect(day).toMatchObject({ serial: 46173 });
    expect(momentOfSerial(46173)?.date).toBe('2026-05-31');
  },
);

// openpyxl 3.0 writes an empty value where it has not worked a formula out; a text that was worked out may be empty
it.each([
  ['<c r="B2"><f>1+1</f><v></v></c>', '#NOT WORKED OUT'],
  ['<c r="B2"><f>1+1</f><v/></c>', '#NOT WORKED OUT'],
  ['<c r="B2"><f>1+1</f></c>', '#NOT WORKED OUT'],
  ['<c r="B2"><f>1+1</f><v>2</v></c>', 2],
  ['<c r="B2" t="str"><f>""</f><v></v></c>', null],
  ['<c r="B2" t="str"><f>"a"</f><v>a</v></c>', 'a'],
])('%s is read as %j', async (cell, value) => {
  const file = await book({ People: PEOPLE }, (files) =>
    replaced(files, SHEET, /<c r="B2"[^>]*>.*?<\/c>/, cell),
  );
  expect((await rowsOf(file)).rows[1]?.cells[1] ?? null).toBe(value);
});

it('cells under a merged one say so beside others, and each is a problem of its own', async () => {
  const file = await book({ People: [...PEOPLE, ['', '']] }, (files) => {
    for (const cell of ['B3', 'B4']) replaced(files, SHEET, new RegExp(`<c r="${cell}"[^>]*>.*?</c>`), '');
    replaced(
      files,
      SHEET,
      /<\/sheetData>/,
      '</sheetData><mergeCells count="2"><mergeCell ref="B2:B5"/><mergeCell ref="A1:A1"/></mergeCells>',
    );
  });
  const { rows } = await rowsOf(file);
  expect(rows.map(({ cells }) => cells[1] ?? null)).toEqual(
    ['Role', 'Surgeon', COVERED, COVERED, null].slice(0, rows.length),
  );
  const read = await readExchangeFile(file, LISTS.people, { sheet: null, encoding: null });
  if (!read.ok) throw new Error(read.fault.code);
  const mapping = mapColumns(read.file.rows, LISTS.people, { asked: {}, remembered: null });
  if (!mapping) throw new Error('no headings');
  const choices = { dateOrder: null, decimal: null, repaired: [], kept: [], empty: 'keep' } as const;
  const { problems } = readRows(read.file.rows, mapping, LISTS.people, choices, {});
  expect(problems.map(({ row, column }) => [row, column])).toEqual([
    [3, 'role'],
    [4, 'role'],
  ]);
  for (const problem of problems)
    expect(problemWords(problem, LISTS.people)).toMatch(/merged over several rows/);
});

it('a block merged in one row, or over rows that hold nothing else, hides nothing', async () => {
  const file = await book(
    {
      People: [
        ['People of the department', ''],
        ['Name', 'Role'],
        ['Avery Lind', 'Surgeon'],
      ],
    },
    (files) =>
      replaced(
        files,
        SHEET,
        /<\/sheetData>/,
        '</sheetData><mergeCells><mergeCell ref="A1:B1"/></mergeCells>',
      ),
  );
  const { rows } = await rowsOf(file);
  expect(JSON.stringify(rows)).not.toContain(COVERED);
});

it('what the spreadsheet hides is read, and it is said that it was hidden', async () => {
  const file = await book({ People: PEOPLE }, (files) => {
    replaced(files, SHEET, /<row r="3"/, '<row r="3" hidden="1"');
    replaced(
      files,
      SHEET,
      /<cols>.*?<\/cols>|(?=<sheetData)/,
      '<cols><col min="2" max="16384" hidden="true"/></cols>',
    );
  });
  const read = await readExchangeFile(file, LISTS.people, { sheet: null, encoding: null });
  if (!read.ok) throw new Error(read.fault.code);
  expect(read.file.rows).toHaveLength(4);
  expect(read.file.understood).toMatchObject({ hidden: { rows: [3], columns: [2] } });
  expect(understoodWords(read.file)).toContain(
    'Row 3 and column 2 are hidden in the spreadsheet; they are read all the same.',
  );
});

it('without a name the first sheet that is shown and has our headings is read; a hidden one by its name alone', async () => {
  const old = [
    ['Name', 'Role'],
    ['Long Gone', 'Surgeon'],
  ];
  const file = await book({ Old: old, Cover: [['Name of the hospital', 'Ours']], People: PEOPLE }, (files) =>
    replaced(files, 'xl/workbook.xml', /<sheet (?=[^>]*name="Old")/, '<sheet state="hidden" '),
  );
  const read = await readExchangeFile(file, LISTS.people, { sheet: null, encoding: null });
  if (!read.ok) throw new Error(read.fault.code);
  expect(read.file.understood).toMatchObject({ sheet: 'People', sheets: ['Old', 'Cover', 'People'] });
  expect(understoodWords(read.file)).toContain('Others are “Old” and “Cover”.');
  expect(JSON.stringify(await rowsOf(file))).not.toContain('Long Gone');
  expect(JSON.stringify(await rowsOf(file, 'Old'))).toContain('Long Gone');
});

/** What makes a reader go over the same text again and again: none of it is in any workbook an office program writes. */
const ENDLESS: [what: string, xml: string][] = [
  ['a text that has no end', ' '.repeat(12_000_000)],
  ['a comment that has no end', `<!--${'<c>'.repeat(4_000_000)}`],
  ['cells that are never closed', `<worksheet><sheetData>${'<c t="e">'.repeat(300_000)}`],
  [
    'cells that are never closed, each in a tag that is never closed',
    `<sheetData>${'<c '.repeat(3_000_000)}`,
  ],
  ['one word of a tag', `<sheetData><row ${'a'.repeat(290_000)}></row></sheetData>`],
];

it.each(ENDLESS)('%s is refused or passed over within a moment', async (_, xml) => {
  const file = await book({ People: PEOPLE }, (files) => {
    files[SHEET] = xml;
  });
  const before = process.cpuUsage();
  await readWorkbookSheet(file, null, { columns: 50, lastRow: 10_500, unpackedBytes: 60_000_000 });
  const { user, system } = process.cpuUsage(before);
  // megabytes are gone over a few times each; going over them for each of their parts took minutes
  expect((user + system) / 1000).toBeLessThan(5_000);
});

it('blocks that lie over each other are marked no longer than there are cells', async () => {
  const rows = Array.from({ length: 3_000 }, (_, at) => [`a${at}`, `b${at}`]);
  const file = await book({ People: rows }, (files) => {
    const blocks = '<mergeCell ref="A1:B3000"/>'.repeat(50_000);
    replaced(files, SHEET, /<\/sheetData>/, `</sheetData><mergeCells>${blocks}</mergeCells>`);
  });
  const before = process.cpuUsage();
  const read = await readWorkbookSheet(file, null, {
    columns: 50,
    lastRow: 10_500,
    unpackedBytes: 60_000_000,
  });
  const { user, system } = process.cpuUsage(before);
  expect(read.ok).toBe(true);
  expect((user + system) / 1000).toBeLessThan(10_000);
});
