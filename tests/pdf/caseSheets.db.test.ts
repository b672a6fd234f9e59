import { expect, test } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import type { PaperSize } from '@/app/_pdf/paper';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { loadCountSheet } from '@/db/queries/paperCountSheet';
import { listSets } from '@/db/queries/sets';
import { countSheet } from '@/lib/documents/countSheet';
import { layUpCard } from '@/lib/documents/layUpCard';
import { pickList } from '@/lib/documents/pickList';
import type { Sheet } from '@/lib/documents/sheet';
import { PRINTING } from '../lib/documents/setForSheet';
import { demoDatabase } from '../setup/database';
import { threshold } from './picture';
import { BLACK_AND_WHITE, coloursOf, printed, textOf, wordsOf } from './readPdf';
import { scan } from './scan';

const at = new Date(PRINTING.at);
/** Capitals of 4 mm in DejaVu, whose H is 1493 of 2048 units high (measured in countSheet.test.ts). */
const ACROSS_A_TABLE = (4 / 25.4) * 72 * (2048 / 1493);

/** A case with two plates, packs, and a set that is still on its way. */
const CASE = 'case_lm-26-j6sc';

let loading: ReturnType<typeof loadSheets> | null = null;

/** Its kit is worked out once; the sheets are only read. */
function sheetsOfCase() {
  loading ??= loadSheets();
  return loading;
}

async function loadSheets() {
  const db = await demoDatabase();
  const answer = await loadKitOfCase(db, CASE, { solver: null, lengthCover: 'none' });
  if (answer.kind !== 'kit') throw new Error(answer.kind);
  const given = { ...answer.answer, personName: (person: string) => person, printing: PRINTING };
  return { given, pick: pickList(given), card: layUpCard(given) };
}

async function expectPrintable(sheet: Sheet, paper: PaperSize): Promise<void> {
  const pdf = await paintSheet(sheet, paper, at);
  const pages = await wordsOf(pdf);
  for (const [index, words] of pages.entries()) {
    expect(textOf(words)).toContain(`Page ${index + 1} of ${pages.length}`);
    const lines = words.map(({ y }) => y);
    expect(Math.max(...lines)).toBeLessThan(paper === 'a4' ? 842 - 14 : 792 - 14);
  }
  for (const colour of await coloursOf(pdf)) expect(BLACK_AND_WHITE).toContain(colour);
  const [found] = await scan(threshold(await printed(pdf, pages.length, 203), 128));
  expect(Buffer.from(found?.bytes ?? []).toString('latin1')).toContain(`91${sheet.record.text}`);
}

test.each(['a4', 'letter'] as const)(
  'pick list and lay-up card print on %s, every page numbered, the code readable',
  async (paper) => {
    const { pick, card } = await sheetsOfCase();
    await expectPrintable(pick, paper);
    await expectPrintable(card, paper);
  },
  120_000,
);

test('on the lay-up card the names of what is used are read across a table; so are quantities of the pick list', async () => {
  const { card, pick, given } = await sheetsOfCase();
  const large = (words: Awaited<ReturnType<typeof wordsOf>>) =>
    textOf(words.flat().filter(({ points }) => points >= ACROSS_A_TABLE)).replaceAll(/\s+/g, ' ');
  const onCard = large(await wordsOf(await paintSheet(card, 'a4', at)));
  for (const { items } of given.kit.order) {
    for (const { itemId } of items) {
      expect(onCard).toContain(given.catalogue.find(({ id }) => id === itemId)?.name ?? 'unknown');
    }
  }
  const onList = large(await wordsOf(await paintSheet(pick, 'a4', at)));
  for (const { code } of given.kit.sets) expect(onList).toContain(code);
  const quantities = given.kit.pickList.map(({ quantity }) => String(quantity));
  expect(onList.split(' ').filter((word) => /^\d+$/.test(word)).length).toBeGreaterThanOrEqual(
    quantities.length,
  );
}, 120_000);

test('every set of the demo prints a count sheet whose rows stay whole', async () => {
  const db = await demoDatabase();
  const sets = await listSets(db);
  // one of each configuration: the others differ in code only
  const each = new Map(sets.map((set) => [set.version.id, set.id]));
  expect(each.size).toBeGreaterThan(10);
  for (const id of each.values()) {
    const given = await loadCountSheet(db, id);
    if (!given) throw new Error(id);
    const pages = await wordsOf(await paintSheet(countSheet({ ...given, printing: PRINTING }), 'a4', at));
    for (const words of pages) {
      // the foot of the last row, its code in small type, stands above the footer
      const footer = words.find(({ text }) => text.startsWith('Local policy'));
      if (!footer) throw new Error('no cautions');
      const above = words.filter(
        ({ y, text }) => y > footer.y - 2 && /^[A-Z]{2}-/.test(text) && !text.includes('version'),
      );
      expect(above, id).toEqual([]);
    }
  }
}, 240_000);
