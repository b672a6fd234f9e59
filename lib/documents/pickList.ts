import type { ItemId } from '../identity/ids';
import type { ChosenPack, ChosenSet, KitPlace, PickLine } from '../kits/kit';
import type { Needs } from '../kits/need';
import { PHASE_WORDS, readyWords, SLOT_WORDS, stepsWords } from '../wording/kit-parts';
import { listWords } from '../wording/numbers';
import { kitSheetWords, ROLE_WORDS, SHEET_WORDS, pickListWords as words } from '../wording/paper';
import { cardBlocks } from './cardExtras';
import { editionOf, recordCode, sheetCautions, shortDateWords } from './edition';
import { rowDrawings } from './itemDrawing';
import { itemWarnings } from './itemWarnings';
import { kitNotices } from './kitNotices';
import {
  type KitSheetNames,
  type KitSheetOf,
  kitFacts,
  kitSheetNames,
  spreadWords,
  subtitleOf,
} from './kitSheet';
import { type Block, type Cell, type Column, type Sheet, type Table, text, textCell } from './sheet';

const DRAWING = { widthMm: 32, heightMm: 11 };
const MOST_NEXT = 2;

/**
 * What to fetch for a case: at the top what is short and what that stops, then the walk through the store, then each
 * thing in its step of the construct, in order of use, and what the surgeon's preference card asks for beside.
 */
export function pickList(given: KitSheetOf): Sheet {
  const { booked, plan, printing } = given;
  const edition = editionOf(`${plan.version} of the plan`, printing);
  const { signed } = words;
  return {
    kind: 'pickList',
    kindWords: SHEET_WORDS.pickList,
    title: booked.reference,
    subtitle: subtitleOf(given),
    facts: kitFacts(given),
    blocks: [
      ...kitNotices(given),
      ...fetchBlocks(given),
      ...stepBlocks(given),
      ...(given.card ? cardBlocks(given.card, kitSheetNames(given)) : []),
      { kind: 'heading', level: 2, text: words.handed, note: null },
      {
        kind: 'signatures',
        boxes: [
          { title: signed.picked, note: null },
          { title: signed.checked, note: words.checkedNote },
          { title: signed.handed, note: null },
          { title: signed.taken, note: null },
        ],
      },
    ],
    record: recordCode('pickList', booked.reference, `V${plan.version}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

interface Stop {
  place: KitPlace | null;
  key: string;
  cells: Cell[];
}

/** Sets and packs by the walk: nearest first, those of no stated place last. */
function fetchBlocks(given: KitSheetOf): Block[] {
  const { kit } = given;
  const names = kitSheetNames(given);
  const stops = [...kit.sets.map(setStop), ...kit.packs.map((pack) => packStop(pack, names))].sort(
    (a, b) =>
      (a.place?.metres ?? Infinity) - (b.place?.metres ?? Infinity) ||
      (a.place?.name ?? '').localeCompare(b.place?.name ?? '', 'en-GB') ||
      a.key.localeCompare(b.key, 'en-GB'),
  );
  const heading: Block = { kind: 'heading', level: 2, text: words.fetch, note: words.fetchNote };
  if (stops.length === 0) return [heading, { kind: 'paragraph', text: words.nothing, size: 'large' }];
  const { columns } = words;
  const table: Table = {
    kind: 'table',
    caption: words.fetchCaption,
    columns: [
      column(columns.tick, 11),
      { head: columns.place, widthMm: 38, align: 'left' },
      { head: columns.take, widthMm: 36, align: 'left' },
      { head: columns.what, widthMm: null, align: 'left' },
      { head: columns.role, widthMm: 22, align: 'left' },
      { head: columns.useBy, widthMm: 22, align: 'left' },
      column(columns.initials, 17),
    ],
    rowHeader: 2,
    rowMm: 12,
    rows: stops.map(({ cells }) => cells),
  };
  return [heading, table];
}

const column = (head: string, widthMm: number): Column => ({ head, widthMm, align: 'centre' });

function setStop(set: ChosenSet): Stop {
  return {
    place: set.place,
    key: set.code,
    cells: [
      { kind: 'tick' },
      placeCell(set.place),
      textCell(text(set.code, 'key', true)),
      textCell(
        text(set.configurationName, 'body', true),
        ...(set.readyAt === null ? [] : [text(words.readyAt(readyWords(set.readyAt)), 'small', true)]),
        ...(set.promisedTo.length === 0 ? [] : [text(words.promisedTo(listWords(set.promisedTo)), 'small')]),
      ),
      textCell(text(ROLE_WORDS[set.role], 'body', true)),
      textCell(text(set.useBy === null ? 'not stated' : shortDateWords(set.useBy), 'body')),
      { kind: 'blank' },
    ],
  };
}

function packStop(pack: ChosenPack, names: KitSheetNames): Stop {
  const owner = pack.owner === 'consignment' ? `, ${kitSheetWords.consignment}` : '';
  return {
    place: pack.place,
    key: names.code(pack.itemId),
    cells: [
      { kind: 'tick' },
      placeCell(pack.place),
      textCell(
        text(`${pack.quantity} ×`, 'key', true),
        text(`${kitSheetWords.form[pack.form]}${owner}`, 'small'),
        text(kitSheetWords.lot(pack.lot), 'small'),
      ),
      textCell(text(names.name(pack.itemId), 'body', true), text(names.code(pack.itemId), 'small')),
      textCell(text(ROLE_WORDS[pack.role], 'body', true)),
      textCell(text(pack.useBy === null ? 'not stated' : shortDateWords(pack.useBy), 'body')),
      { kind: 'blank' },
    ],
  };
}

function placeCell(place: KitPlace | null): Cell {
  return place === null
    ? textCell(text(kitSheetWords.placeNotStated, 'body'))
    : textCell(text(place.name, 'body', true), text(words.metres(place.metres), 'small'));
}

/** Phase by phase, in order of use. */
function stepBlocks(given: KitSheetOf): Block[] {
  const { kit } = given;
  const names = kitSheetNames(given);
  const phases = [...new Set(kit.pickList.map(({ phase }) => phase))];
  return phases.flatMap((phase, at): Block[] => {
    const lines = kit.pickList.filter((line) => line.phase === phase);
    const steps = kit.order.find((entry) => entry.phase === phase)?.steps ?? [];
    return [
      {
        kind: 'heading',
        level: 2,
        text: `${at + 1}  ${PHASE_WORDS[phase]}`,
        note: steps.length === 0 || phase === 'plate' ? null : words.stepsNote(stepsWords(steps, kit.needs)),
      },
      stepTable(PHASE_WORDS[phase], lines, given, names),
    ];
  });
}

function stepTable(phase: string, lines: PickLine[], { kit }: KitSheetOf, names: KitSheetNames): Table {
  const { columns } = words;
  const drawings = rowDrawings(
    lines.flatMap(({ itemId }) => names.item(itemId) ?? []),
    DRAWING,
  );
  return {
    kind: 'table',
    caption: words.phaseCaption(phase),
    columns: [
      column(columns.tick, 11),
      column(columns.quantity, 17),
      { head: columns.drawing, widthMm: DRAWING.widthMm + 3, align: 'left' },
      { head: columns.item, widthMm: null, align: 'left' },
      { head: columns.source, widthMm: 36, align: 'left' },
      { head: columns.next, widthMm: 28, align: 'left' },
      column(columns.initials, 15),
    ],
    rowHeader: 3,
    rowMm: 12,
    rows: lines.map((line): Cell[] => [
      { kind: 'tick' },
      textCell(text(String(line.quantity), 'key', true)),
      drawings.get(line.itemId) ?? textCell(text('no drawing', 'small')),
      itemCell(line.itemId, purposeOf(line, kit.needs), names),
      sourceCell(line, names),
      nextCell(line, names),
      { kind: 'blank' },
    ]),
  };
}

/** `pilot bit for S1–S3`. A plate is its own step. */
function purposeOf({ slot, steps, itemId }: PickLine, needs: Needs): string {
  const purpose = words.forSteps(SLOT_WORDS[slot], slot === 'plate' ? '' : stepsWords(steps, needs));
  const spread = spreadWords(itemId, steps, needs);
  return spread === '' ? purpose : `${purpose}, ${spread}`;
}

function itemCell(id: ItemId, purpose: string, names: KitSheetNames): Cell {
  return textCell(
    text(names.name(id), 'body', true),
    text(names.code(id), 'small'),
    ...itemWarnings(names.item(id)).slice(0, 1),
    text(purpose, 'small'),
  );
}

function sourceCell({ from }: PickLine, names: KitSheetNames): Cell {
  const { place, useBy } = names.whereabouts(from);
  return textCell(
    text(names.source(from), from.kind === 'set' ? 'large' : 'body', true),
    text(place, 'small'),
    text(useBy, 'small'),
  );
}

function nextCell({ role, backUpIn }: PickLine, names: KitSheetNames): Cell {
  const next = [...new Set(backUpIn.map(names.elsewhere))];
  const named = next.slice(0, MOST_NEXT).join('; ');
  const more = next.length > MOST_NEXT ? ` ${words.more(next.length - MOST_NEXT)}` : '';
  return textCell(
    text(ROLE_WORDS[role], 'body', true),
    text(next.length === 0 ? words.noNext : words.next(`${named}${more}`), 'small'),
  );
}
