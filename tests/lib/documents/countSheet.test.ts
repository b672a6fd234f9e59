import { expect, test } from 'vitest';
import { countSheet } from '@/lib/documents/countSheet';
import type { Cell, RackGrid, Sheet, Table } from '@/lib/documents/sheet';
import { cautions } from '@/lib/wording/cautions';
import { bitFor, plateFor } from '../../fixtures/catalogueItems';
import { lineFor, RACK, screwLine, setForSheet } from './setForSheet';

const tables = (sheet: Sheet) => sheet.blocks.filter((block): block is Table => block.kind === 'table');
const racks = (sheet: Sheet) => sheet.blocks.filter((block): block is RackGrid => block.kind === 'rack');
const notices = (sheet: Sheet) => sheet.blocks.filter((block) => block.kind === 'notice');
const words = (cell: Cell | undefined) => (cell?.kind === 'text' ? cell.lines.map(({ text }) => text) : []);

test('every line stands on the sheet once, with what is expected there', () => {
  const given = setForSheet();
  const sheet = countSheet(given);
  const inTables = tables(sheet)
    .filter(({ columns }) => columns.some(({ head }) => head === 'Expected'))
    .flatMap(({ rows, columns }) =>
      rows.map((row) => Number(words(row[columns.findIndex(({ head }) => head === 'Expected')])[0])),
    );
  const inRacks = racks(sheet).flatMap(({ rows }) =>
    rows.flatMap(({ cells }) => cells.flatMap((cell) => cell?.expected ?? [])),
  );
  expect(inTables.length + inRacks.length).toBe(given.set.lines.length);
  const total = [...inTables, ...inRacks].reduce((sum, expected) => sum + expected, 0);
  expect(total).toBe(given.set.lines.reduce((sum, { expected }) => sum + expected, 0));
});

test('found is never pre-filled: an open set prints the same sheet whatever was counted last', () => {
  const lines = setForSheet().set.lines;
  const counted = (found: number | null) =>
    countSheet(
      setForSheet(
        { step: 'onBench' },
        lines.map((line) => ({ ...line, found })),
      ),
    );
  expect(counted(0)).toEqual(counted(null));
  expect(counted(2)).toEqual(counted(null));
  // and every cell to be written in is empty
  for (const { columns, rows } of tables(counted(2))) {
    for (const row of rows) {
      for (const [at, { head }] of columns.entries()) {
        if (['Before', 'Added', 'After'].includes(head)) expect(row[at]).toEqual({ kind: 'blank' });
      }
    }
  }
});

test('a closed set that is short says SHORT, must-haves first, and what was not counted', () => {
  const lines = [
    lineFor({ itemId: plateFor().id, slot: 2, expected: 3, found: 1, mustHaveClass: 3 }),
    lineFor({ itemId: bitFor().id, slot: 1, expected: 2, found: 0, mustHaveClass: 1 }),
    screwLine(0, 16, { found: null }),
  ];
  const sheet = countSheet(setForSheet({ step: 'packed' }, lines));
  const [short, notCounted] = notices(sheet);
  expect(short).toMatchObject({ word: 'SHORT', shape: 'stop' });
  expect(short?.lines).toEqual([
    `${bitFor().name} (layer 1, 1 · 1): 0 of 2 at the last count; stops the step.`,
    `${plateFor().name} (layer 1, 1 · 2): 1 of 3 at the last count; back-up.`,
  ]);
  expect(notCounted).toMatchObject({ word: 'NOT COUNTED', shape: 'unknown' });
});

test('a whole closed set carries no notice; a surplus piece does', () => {
  const lines = [lineFor({ expected: 2, found: 2 })];
  expect(notices(countSheet(setForSheet({ step: 'inSterileStore' }, lines)))).toEqual([]);
  const foreign = [{ itemId: plateFor().id, quantity: 1 }];
  const [notice] = notices(countSheet(setForSheet({ step: 'inSterileStore', foreign }, lines)));
  expect(notice?.lines).toEqual([`1 × ${plateFor().name} belongs to no line of this set.`]);
});

test('held is said with its because', () => {
  const [notice] = notices(countSheet(setForSheet({ step: 'held', heldBecause: 'disputedCount' })));
  expect(notice).toMatchObject({ word: 'HELD', lines: ['because its count is disputed.'] });
});

test('a rack has a column for each length and a row for each family; what is not there is no cell', () => {
  const [rack] = racks(countSheet(setForSheet()));
  expect(rack?.columnsAre).toBe('mm');
  expect(rack?.columns).toEqual([
    '10',
    '12',
    '14',
    '16',
    '18',
    '20',
    '22',
    '24',
    '26',
    '28',
    '30',
    '35',
    '40',
  ]);
  expect(rack?.rows.map(({ label }) => label)).toEqual(['cortical 3.5', 'locking 3.5']);
  expect(rack?.rows[1]?.cells.map((cell) => cell?.expected ?? null)).toEqual([
    null,
    null,
    null,
    3,
    null,
    3,
    null,
    null,
    null,
    null,
    null,
    null,
    3,
  ]);
  expect(rack?.writeIn).toEqual(['Before', 'Added', 'After']);
});

test('where one column holds two lengths, columns are slots and each cell says its length and class', () => {
  const lines = [
    screwLine(0, 16, { slot: 1 }),
    screwLine(0, 18, { slot: 2, mustHaveClass: 3 }),
    screwLine(1, 20, { slot: 1 }),
  ];
  const [rack] = racks(countSheet(setForSheet({}, lines)));
  expect(rack?.columnsAre).toBe('slot');
  expect(rack?.columns).toEqual(['1', '2']);
  expect(rack?.rows[0]?.cells.map((cell) => [cell?.label, cell?.mark?.character])).toEqual([
    ['16 mm', '2'],
    ['18 mm', '3'],
  ]);
});

test('mass: at least what is known where a mass is not stated, never a figure that looks exact', () => {
  const paragraph = (sheet: Sheet) =>
    sheet.blocks.flatMap((block) =>
      block.kind === 'paragraph' && block.text.startsWith('As configured') ? block.text : [],
    );
  // no basket and container is stated for this set
  const [unknown] = paragraph(countSheet(setForSheet()));
  expect(unknown).toMatch(/at least .* no mass is stated for basket or container/);
  const given = setForSheet({}, [lineFor({ expected: 3, itemId: bitFor().id })]);
  given.version = { ...given.version, basketItemId: plateFor().id, containerItemId: RACK };
  const [known] = paragraph(countSheet(given));
  const grams =
    3 * (bitFor().massGrams ?? 0) + (plateFor().massGrams ?? 0) + (given.items.get(RACK)?.massGrams ?? 0);
  expect(known).toContain(`${grams} g.`);
  expect(known).toContain('7.00 kg, 10.00 kg, 11.34 kg');
});

test('plates of one layer are drawn at one scale, so that the longer one looks longer', () => {
  const given = setForSheet();
  const short = plateFor({ id: 'item_short' as never, lengthUm: 40_000, holes: [] });
  (given.items as Map<never, unknown>).set('item_short' as never, short);
  given.set = {
    ...given.set,
    lines: [lineFor({ itemId: plateFor().id }), lineFor({ itemId: short.id, slot: 2 })],
  };
  const drawings = tables(countSheet(given)).flatMap(({ rows }) =>
    rows.flat().filter((cell) => cell.kind === 'drawing'),
  );
  expect(drawings).toHaveLength(2);
  expect(new Set(drawings.map((cell) => cell.kind === 'drawing' && cell.denominator)).size).toBe(1);
  expect(drawings.every((cell) => cell.kind === 'drawing' && cell.alt.length > 10)).toBe(true);
});

test('four signatures, the second one blind; all cautions, and the one of paper with version and hour', () => {
  const sheet = countSheet(setForSheet());
  const signatures = sheet.blocks.find((block) => block.kind === 'signatures');
  expect(signatures?.kind === 'signatures' && signatures.boxes.map(({ title }) => title)).toEqual([
    'Counted by',
    'Checked by',
    'Before the case',
    'After the case',
  ]);
  expect(signatures?.kind === 'signatures' && signatures.boxes[1]?.note).toMatch(
    /without sight of the first figures/,
  );
  expect(sheet.cautions).toEqual([
    ...cautions.map(({ sentence }) => sentence),
    'This paper may be out of date: version 3, set revision 4, printed 14 January 2026, 06:30.',
  ]);
});

test('side and look-alikes stand beside the name', () => {
  const given = setForSheet({}, [lineFor({ itemId: plateFor().id })]);
  const linesFor = (changes: Parameters<typeof plateFor>[0]) => {
    const items = new Map([...given.items, [plateFor().id, plateFor(changes)] as const]);
    const [table] = tables(countSheet({ ...given, items }));
    return words(table?.rows[0]?.[2]);
  };
  expect(linesFor({ side: 'left', lookAlikeOf: 'distal plates' })).toEqual(
    expect.arrayContaining(['LEFT', 'has look-alikes: two people refill it']),
  );
  expect(linesFor({ side: 'right', lookAlikeOf: null })).toEqual(
    expect.arrayContaining(['RIGHT', 'two people refill it']),
  );
  expect(linesFor({ side: 'either', lookAlikeOf: null }).join()).not.toMatch(/refill/);
});

test('a set sent short lists what that stops, and the one case it goes for; an open set says nothing of it', () => {
  const lines = setForSheet().set.lines.map((line) => ({ ...line, found: line.expected - 1 }));
  const sentShort = {
    lines: [],
    stops: [{ kind: 'construct' as const, name: 'Neutral plate', stopped: [], shortItems: [] }],
    substitutes: [],
    forCase: { id: 'case_lm-26-0142' as never, reference: 'LM-26-0142' },
  };
  const textOf = (step: 'inSterileStore' | 'onBench') =>
    JSON.stringify(notices(countSheet({ ...setForSheet({ step }, lines), sentShort })));
  expect(textOf('inSterileStore')).toMatch(/Neutral plate: .*goes for case LM-26-0142 and no other/);
  expect(textOf('onBench')).not.toMatch(/Neutral plate|LM-26-0142/);
});
