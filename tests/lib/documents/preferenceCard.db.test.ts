import { expect, test } from 'vitest';
import { paintSheet } from '@/app/_pdf/paintSheet';
import { loadBuildToday } from '@/db/queries/buildToday';
import { cardAsked } from '@/db/queries/cards/cardAsked';
import { listCards } from '@/db/queries/cards/cards';
import { listStarts } from '@/db/queries/cards/starts';
import { keptCatalogue, loadKitOfCase } from '@/db/queries/caseKit';
import { pickList } from '@/lib/documents/pickList';
import { preferenceCardSheet } from '@/lib/documents/preferenceCard';
import type { Block, Cell, Sheet, Table } from '@/lib/documents/sheet';
import { cautions } from '@/lib/wording/cautions';
import { BLACK_AND_WHITE, coloursOf, textOf, wordsOf } from '../../pdf/readPdf';
import { demoDatabase } from '../../setup/database';
import { PRINTING } from './setForSheet';

const tablesOf = (blocks: readonly Block[]) =>
  blocks.filter((block): block is Table => block.kind === 'table');
const said = (cell: Cell | undefined) => (cell?.kind === 'text' ? cell.lines.map(({ text }) => text) : []);
const everything = ({ blocks }: Sheet) =>
  tablesOf(blocks).flatMap(({ rows }) => rows.flatMap((row) => row.flatMap(said)));

async function sheets() {
  const db = await demoDatabase();
  const [cards, starts, catalogue] = await Promise.all([listCards(db), listStarts(db), keptCatalogue(db)]);
  const items = new Map<string, (typeof catalogue)[number]>(catalogue.map((item) => [item.id, item]));
  return Promise.all(
    cards.map(async (card) => {
      const named = card.body.startIds.flatMap((id) => starts.find((start) => start.id === id) ?? []);
      const builds = await loadBuildToday(
        db,
        named.map(({ construct }) => construct),
        null,
      );
      const given = {
        card,
        starts: named.map((start, at) => ({ ...start, today: builds[at] ?? null })),
        item: (id: string) => items.get(id),
        printing: PRINTING,
      };
      return { given, sheet: preferenceCardSheet(given) };
    }),
  );
}

test('a card on paper has every start and every extra of it, once, and says that it states wishes', async () => {
  const all = await sheets();
  expect(all.length).toBeGreaterThanOrEqual(5);
  for (const { given, sheet } of all) {
    const { card, starts } = given;
    expect(sheet.title).toBe(card.procedure.name);
    expect(sheet.record.text).toMatch(new RegExp(`^PC/${card.id}/V${card.version}/`));
    const words = everything(sheet);
    for (const { name, today } of starts) {
      expect(words.filter((word) => word === name)).toHaveLength(1);
      expect(words).toContain(today?.word);
    }
    for (const { itemId, quantity, note } of card.body.extras) {
      const name = given.item(itemId)?.name ?? '';
      expect(words.filter((word) => word === name)).toHaveLength(1);
      expect(words).toContain(`${quantity} ×`);
      if (note !== null) expect(words).toContain(note);
    }
    const paragraphs = sheet.blocks.flatMap((block) => (block.kind === 'paragraph' ? [block.text] : []));
    expect(paragraphs.join(' ')).toContain('implants are stated by the operating surgeon for each case');
    expect(sheet.blocks.some((block) => block.kind === 'notice')).toBe(card.retiredAt !== null);
    for (const { sentence } of cautions) expect(sheet.cautions).toContain(sentence);
  }
});

test('a card prints in black and white on both papers, with its words', async () => {
  const [first] = await sheets();
  if (!first) throw new Error('the demo has no card');
  for (const paper of ['a4', 'letter'] as const) {
    const pdf = await paintSheet(first.sheet, paper, new Date(PRINTING.at));
    const text = textOf((await wordsOf(pdf)).flat()).replaceAll(/\s+/g, ' ');
    expect(text).toContain(first.given.card.procedure.name);
    for (const { itemId } of first.given.card.body.extras)
      expect(text).toContain(first.given.item(itemId)?.code ?? 'no such item');
    for (const colour of await coloursOf(pdf)) expect(BLACK_AND_WHITE).toContain(colour);
  }
});

test('the pick list of a case booked by a card has what the card asks for, said to be the card’s, and is else the same', async () => {
  const db = await demoDatabase();
  const answer = await loadKitOfCase(db, 'case_lm-26-9rtb', { solver: null, lengthCover: 'none' });
  if (answer.kind !== 'kit') throw new Error(answer.kind);
  const card = await cardAsked(db, answer.answer);
  if (!card) throw new Error('the demo has no card for the case');
  const given = { ...answer.answer, personName: (id: string) => id, printing: PRINTING };
  const [without, withCard] = [pickList(given), pickList({ ...given, card })];
  const added = withCard.blocks.filter(
    (block) => !without.blocks.some((other) => JSON.stringify(other) === JSON.stringify(block)),
  );
  expect(withCard.blocks.length - without.blocks.length).toBe(added.length);
  expect(added[0]).toMatchObject({ kind: 'heading', text: 'Asked for by the preference card' });
  const [table, ...more] = tablesOf(added);
  expect(more).toEqual([]);
  expect(table?.rows.map((row) => said(row[1])[0])).toEqual(['4 ×', '1 ×', '2 ×']);
  expect(table?.rows.map((row) => said(row[2])[1])).toEqual(['PT-W-12-150', 'PT-X-ELEV-6', 'PT-F-P130']);
  // every one says where it is, or that it is not to be had
  for (const row of table?.rows ?? []) expect(said(row[3]).length).toBeGreaterThan(0);
  expect(added.flatMap((block) => (block.kind === 'paragraph' ? [block.text] : []))).toContain(
    'Arm table. The image intensifier stands on the side of the thumb.',
  );
});

test('a card that was changed since says which version the case was booked by', async () => {
  const db = await demoDatabase();
  const answer = await loadKitOfCase(db, 'case_lm-26-a9gd', { solver: null, lengthCover: 'none' });
  if (answer.kind !== 'kit') throw new Error(answer.kind);
  const card = await cardAsked(db, answer.answer);
  const list = pickList({ ...answer.answer, personName: (id: string) => id, printing: PRINTING, card });
  expect(list.blocks.flatMap((block) => (block.kind === 'paragraph' ? [block.text] : []))).toContain(
    'The card has version 3 by now; this case was booked by version 2.',
  );
});
