import { expect, test } from 'vitest';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { listCases } from '@/db/queries/cases';
import { listPeople } from '@/db/queries/people';
import { type KitSheetOf, kitSheetNames } from '@/lib/documents/kitSheet';
import { layUpCard } from '@/lib/documents/layUpCard';
import { pickList } from '@/lib/documents/pickList';
import type { Block, Cell, Notice, Sheet, Table } from '@/lib/documents/sheet';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { cautions } from '@/lib/wording/cautions';
import { isMustHave } from '@/lib/wording/kit-shorts';
import { demoDatabase } from '../../setup/database';
import { PRINTING } from './setForSheet';

let kept: Promise<KitSheetOf[]> | null = null;

/** Every planned case of the demo hospital: short ones, late ones, ones with something not established. Read once. */
function planned(): Promise<KitSheetOf[]> {
  kept ??= readPlanned();
  return kept;
}

async function readPlanned(): Promise<KitSheetOf[]> {
  const db = await demoDatabase();
  const people = await listPeople(db);
  const personName = (id: string) => people.find((one) => one.id === id)?.name ?? id;
  const found: KitSheetOf[] = [];
  for (const { id } of await listCases(db, '2000-01-01' as PlainDate, '2100-01-01' as PlainDate)) {
    const answer = await loadKitOfCase(db, id, { solver: null, lengthCover: 'none' });
    if (answer.kind === 'kit') found.push({ ...answer.answer, personName, printing: PRINTING });
  }
  return found;
}

const MANY = 120_000;
const tablesOf = (sheet: Sheet) => sheet.blocks.filter((block): block is Table => block.kind === 'table');
const noticesOf = (sheet: Sheet) => sheet.blocks.filter((block): block is Notice => block.kind === 'notice');
const words = (cell: Cell | undefined) => (cell?.kind === 'text' ? cell.lines.map(({ text }) => text) : []);
const cellsUnder = ({ columns, rows }: Table, head: string) => {
  const at = columns.findIndex((column) => column.head === head);
  return rows.map((row) => row[at]);
};
/** Blocks from the first heading after the notices on. */
const bodyOf = ({ blocks }: Sheet): Block[] =>
  blocks.slice(blocks.findIndex(({ kind }) => kind === 'heading'));

test(
  'the demo has cases of every kind to print',
  async () => {
    const verdicts = new Set((await planned()).map(({ kit }) => kit.verdict.kind));
    expect([...verdicts].sort()).toEqual(['notEstablished', 'planStopped', 'ready', 'readyAt', 'short']);
  },
  MANY,
);

test(
  'pick list: every line of the kit once, in order of use, with its quantity, source and role',
  async () => {
    for (const given of await planned()) {
      const names = kitSheetNames(given);
      const steps = tablesOf(pickList(given)).filter(({ columns }) =>
        columns.some(({ head }) => head === 'Quantity'),
      );
      const printed = steps.flatMap((table) => {
        const [items, quantities, sources, roles] = [
          'Item, and what it is for',
          'Quantity',
          'From',
          'Role; where the next one is',
        ].map((head) => cellsUnder(table, head));
        return table.rows.map((_, at) => [
          words(items?.[at])[0],
          words(quantities?.[at])[0],
          words(sources?.[at])[0],
          words(roles?.[at])[0],
        ]);
      });
      expect(printed, given.booked.reference).toEqual(
        given.kit.pickList.map((line) => [
          names.name(line.itemId),
          String(line.quantity),
          names.source(line.from),
          line.role === 'open' ? 'open' : 'hold unopened',
        ]),
      );
    }
  },
  MANY,
);

test(
  'pick list: every set and pack of the kit is fetched once, on a walk that never turns back',
  async () => {
    let walks = 0;
    for (const given of await planned()) {
      const { kit, booked } = given;
      const walk = tablesOf(pickList(given)).find(({ caption }) =>
        caption.startsWith('Sets and packs to fetch'),
      );
      expect(walk?.rows.length ?? 0, booked.reference).toBe(kit.sets.length + kit.packs.length);
      if (!walk) continue;
      const metres = cellsUnder(walk, 'Place').map(
        (cell) => Number.parseInt(words(cell)[1] ?? 'Infinity', 10) || Infinity,
      );
      expect(metres, booked.reference).toEqual([...metres].sort((a, b) => a - b));
      const taken = cellsUnder(walk, 'Take').map((cell) => words(cell)[0]);
      for (const { code } of kit.sets) expect(taken.filter((one) => one === code)).toHaveLength(1);
      if (metres.length > 1) walks += 1;
    }
    expect(walks).toBeGreaterThan(0);
  },
  MANY,
);

test(
  'both sheets: SHORT stands above everything exactly when a must-have is short, with one line for each',
  async () => {
    let shortCases = 0;
    for (const given of await planned()) {
      for (const make of [pickList, layUpCard]) {
        const sheet = make(given);
        const short = noticesOf(sheet).find(({ word }) => word === 'SHORT');
        const asksInVain = new Set(
          given.kit.faults.flatMap((fault) => ('step' in fault ? [fault.step] : [])),
        );
        const must = given.kit.shorts
          .filter(isMustHave)
          .filter((one) => !one.steps.every((step) => asksInVain.has(step)));
        if (must.length === 0) expect(short?.lines ?? []).toHaveLength(0);
        else {
          shortCases += 1;
          expect(short?.lines.length ?? 0).toBeGreaterThan(0);
          expect(sheet.blocks.slice(0, 2)).toContainEqual(short);
        }
      }
    }
    expect(shortCases).toBeGreaterThan(0);
  },
  MANY,
);

test(
  'what is not established is named as such, and a draft plan says so',
  async () => {
    const all = await planned();
    const open = all.find(({ kit }) => kit.verdict.kind === 'notEstablished');
    if (!open) throw new Error('no such case');
    const notice = noticesOf(pickList(open)).find(({ word }) => word === 'NOT ESTABLISHED');
    expect(notice?.shape).toBe('unknown');
    expect(notice?.lines.length).toBeGreaterThan(0);
    for (const given of all) {
      const drafts = noticesOf(pickList(given)).filter(({ word }) => word === 'DRAFT PLAN');
      expect(drafts.length > 0, given.booked.reference).toBe(
        given.plan.status === 'draft' || given.newerDraft !== null,
      );
    }
  },
  MANY,
);

test(
  'a set that is not in store yet is said with the hour it comes',
  async () => {
    const late = (await planned()).filter(({ kit }) => kit.verdict.kind === 'readyAt');
    expect(late.length).toBeGreaterThan(0);
    for (const given of late) {
      const notice = noticesOf(pickList(given)).find(({ word }) => word === 'NOT YET IN STORE');
      const waiting = given.kit.sets.filter(({ readyAt }) => readyAt !== null);
      expect(notice?.lines.length).toBe(waiting.length);
      for (const { code } of waiting) expect(notice?.lines.join(' ')).toContain(code);
    }
  },
  MANY,
);

test(
  'lay-up card: each phase’s instruments in the order their chains use them, in the largest type',
  async () => {
    for (const given of await planned()) {
      const names = kitSheetNames(given);
      const phases = tablesOf(layUpCard(given)).filter(({ columns }) =>
        columns.some(({ head }) => head === 'No.'),
      );
      const printed = phases.flatMap((table) => cellsUnder(table, 'Use'));
      const expected = given.kit.order.flatMap(({ items }) =>
        items.map(({ itemId, quantity }) => `${quantity > 1 ? `${quantity} × ` : ''}${names.name(itemId)}`),
      );
      expect(
        printed.map((cell) => words(cell)[0]),
        given.booked.reference,
      ).toEqual(expected);
      for (const cell of printed) expect(cell?.kind === 'text' && cell.lines[0]?.size).toBe('key');
    }
  },
  MANY,
);

test(
  'lay-up card: every hole of every plate is accounted for: what goes in, left empty, or not decided',
  async () => {
    for (const given of await planned()) {
      const text = JSON.stringify(bodyOf(layUpCard(given)));
      const names = kitSheetNames(given);
      for (const plate of given.plan.construct.plates) {
        const item = names.item(plate.plateItemId);
        if (item?.kind !== 'plate') continue;
        for (const { id } of item.holes) {
          const purpose = plate.fills[id]?.purpose;
          const where =
            purpose === undefined
              ? /Not decided in the plan: [^"]*\b/
              : purpose === 'empty'
                ? /Left empty: [^"]*\b/
                : /"text":"/;
          expect(text, `${given.booked.reference} ${plate.key} ${id}`).toMatch(
            new RegExp(`${where.source}${id}\\b`),
          );
        }
      }
      for (const { key } of given.plan.construct.freeScrews) expect(text).toContain(`"text":"${key}"`);
    }
  },
  MANY,
);

test(
  'every sheet of every case carries all cautions, its version and a record code of its own',
  async () => {
    const codes = new Set<string>();
    const all = await planned();
    for (const given of all) {
      for (const make of [pickList, layUpCard]) {
        const sheet = make(given);
        expect(sheet.cautions).toEqual([
          ...cautions.map(({ sentence }) => sentence),
          `This paper may be out of date: version ${given.plan.version} of the plan, printed 14 January 2026, 06:30.`,
        ]);
        codes.add(sheet.record.elementString);
      }
    }
    expect(codes.size).toBe(all.length * 2);
  },
  MANY,
);

// Domain: the tool never sizes an implant; estimates state their assumptions
test(
  'a length worked out from a mean and spread says so on both sheets, and a stated one does not',
  async () => {
    const said = (sheet: Sheet) =>
      tablesOf(sheet)
        .flatMap(({ rows }) => rows.flat())
        .flatMap((cell) => words(cell))
        .filter((line) => line.includes(' ± '));
    let spreads = 0;
    for (const given of await planned()) {
      const met = given.kit.steps.flatMap(({ pieces }) => pieces.map(({ needId }) => needId));
      const fromSpread = given.kit.needs.pieces.some(
        ({ id, length }) => length?.kind === 'spread' && met.includes(id),
      );
      if (fromSpread) spreads += 1;
      expect(said(pickList(given)).length > 0, given.booked.reference).toBe(fromSpread);
      if (fromSpread) expect(said(layUpCard(given)).length).toBeGreaterThan(0);
    }
    expect(spreads).toBeGreaterThan(0);
  },
  MANY,
);
