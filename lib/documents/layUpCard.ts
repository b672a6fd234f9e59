import type { Plate } from '../catalogue/item';
import type { ChosenPack, ChosenSet, OrderEntry } from '../kits/kit';
import type { PlannedPlate } from '../plans/plan';
import { HOLE_CLASS_WORDS } from '../wording/catalogue';
import { drawingInWords } from '../wording/drawing';
import { PHASE_WORDS, SLOT_WORDS, stepsWords } from '../wording/kit-parts';
import { listWords } from '../wording/numbers';
import { kitSheetWords, SHEET_WORDS, layUpWords as words } from '../wording/paper';
import { fillWords, PRINCIPLE_WORDS, screwWords } from '../wording/plans';
import { drawPlate } from './drawing/plate';
import { editionOf, recordCode, sheetCautions } from './edition';
import { denominatorFor, rowDrawings } from './itemDrawing';
import { kitNotices } from './kitNotices';
import {
  type KitSheetNames,
  type KitSheetOf,
  kitFacts,
  kitSheetNames,
  spreadWords,
  subtitleOf,
} from './kitSheet';
import { type Block, type Cell, type Sheet, type Table, text, textCell } from './sheet';

const DRAWING = { widthMm: 38, heightMm: 14 };
/** Room for a plate across the sheet, in millimetres of paper. */
const PLATE = { widthMm: 184, heightMm: 60 };

/**
 * The card a scrub practitioner lays up from: the order of use in type that is read across a table, then the plates with
 * their holes and what goes in each.
 */
export function layUpCard(given: KitSheetOf): Sheet {
  const { booked, plan, printing, kit } = given;
  const names = kitSheetNames(given);
  const edition = editionOf(`${plan.version} of the plan`, printing);
  return {
    kind: 'layUpCard',
    kindWords: SHEET_WORDS.layUpCard,
    title: booked.reference,
    subtitle: subtitleOf(given),
    facts: kitFacts(given),
    blocks: [
      ...kitNotices(given),
      ...kit.order.flatMap((entry, at) => phaseBlocks(entry, at + 1, given, names)),
      ...holdBlocks(given, names),
      ...plan.construct.plates.flatMap((plate) => plateBlocks(plate, given, names)),
      ...freeScrewBlocks(given, names),
      {
        kind: 'signatures',
        boxes: [
          { title: words.laidUp, note: null },
          { title: words.countedBefore, note: null },
        ],
      },
    ],
    record: recordCode('layUpCard', booked.reference, `V${plan.version}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

function phaseBlocks(
  { phase, steps, items }: OrderEntry,
  number: number,
  { kit }: KitSheetOf,
  names: KitSheetNames,
): Block[] {
  const drawings = rowDrawings(
    items.flatMap(({ itemId }) => names.item(itemId) ?? []),
    DRAWING,
  );
  const { columns } = words;
  const table: Table = {
    kind: 'table',
    caption: words.phaseCaption(PHASE_WORDS[phase]),
    columns: [
      { head: columns.number, widthMm: 17, align: 'centre' },
      { head: columns.use, widthMm: null, align: 'left' },
      { head: columns.drawing, widthMm: DRAWING.widthMm + 3, align: 'left' },
      { head: columns.from, widthMm: 32, align: 'left' },
    ],
    rowHeader: 1,
    rowMm: 14,
    rows: items.map((item, at): Cell[] => [
      textCell(text(`${number}.${at + 1}`, 'large', true)),
      textCell(
        text(
          `${item.quantity > 1 ? `${words.times(item.quantity)} ` : ''}${names.name(item.itemId)}`,
          'key',
          true,
        ),
        text(
          [
            SLOT_WORDS[item.slot],
            names.code(item.itemId),
            ...[spreadWords(item.itemId, steps, kit.needs)].filter(Boolean),
          ].join(' · '),
          'body',
        ),
      ),
      drawings.get(item.itemId) ?? textCell(text('no drawing', 'small')),
      textCell(text(names.source(item.from), item.from.kind === 'set' ? 'key' : 'body', true)),
    ]),
  };
  return [
    {
      kind: 'heading',
      level: 2,
      text: `${number}  ${PHASE_WORDS[phase]}`,
      note: phase === 'plate' ? null : stepsWords(steps, kit.needs),
    },
    ...(items.length > 0
      ? [table]
      : [{ kind: 'paragraph' as const, text: words.none, size: 'key' as const }]),
  ];
}

function holdBlocks({ kit }: KitSheetOf, names: KitSheetNames): Block[] {
  const held: (ChosenSet | ChosenPack)[] = [...kit.sets, ...kit.packs].filter(({ role }) => role === 'hold');
  if (held.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: words.hold, note: null },
    {
      kind: 'table',
      caption: words.holdCaption,
      columns: [
        { head: words.columns.use, widthMm: null, align: 'left' },
        { head: words.columns.from, widthMm: 62, align: 'left' },
      ],
      rowHeader: 0,
      rowMm: 12,
      rows: held.map((one): Cell[] =>
        'code' in one
          ? [textCell(text(one.code, 'key', true)), textCell(text(one.configurationName, 'body'))]
          : [
              textCell(text(`${words.times(one.quantity)} ${names.name(one.itemId)}`, 'key', true)),
              textCell(text(`${kitSheetWords.form[one.form]}, ${kitSheetWords.lot(one.lot)}`, 'body')),
            ],
      ),
    },
  ];
}

/** A plate drawn with the ids of its holes, and what goes in each. */
function plateBlocks(planned: PlannedPlate, given: KitSheetOf, names: KitSheetNames): Block[] {
  const item = names.item(planned.plateItemId);
  const name = names.name(planned.plateItemId);
  const principle = planned.principle === null ? null : PRINCIPLE_WORDS[planned.principle].toLowerCase();
  const blocks: Block[] = [
    { kind: 'heading', level: 2, text: words.plateTitle(planned.key, name), note: null },
  ];
  if (item?.kind !== 'plate') return blocks;
  const scene = plateScene(item, planned);
  const filled = item.holes.filter(({ id }) => (planned.fills[id]?.purpose ?? 'empty') !== 'empty');
  const empty = item.holes.filter(({ id }) => planned.fills[id]?.purpose === 'empty').map(({ id }) => id);
  const open = item.holes.filter(({ id }) => planned.fills[id] === undefined).map(({ id }) => id);
  const caption = planned.zone === null ? words.plateCaptionNoZone : words.plateCaption;
  blocks.push({
    kind: 'figure',
    scene,
    denominator: denominatorFor(scene, PLATE.widthMm, PLATE.heightMm),
    alt: words.plateAlt(name, drawingInWords(item, scene)),
    caption: caption(name, principle),
  });
  blocks.push({
    kind: 'table',
    caption: words.holesCaption(name),
    columns: [
      { head: words.columns.hole, widthMm: 22, align: 'centre' },
      { head: words.columns.fill, widthMm: null, align: 'left' },
      { head: words.columns.screw, widthMm: 78, align: 'left' },
    ],
    rowHeader: 0,
    rowMm: 11,
    rows: filled.map((hole): Cell[] => [
      textCell(text(hole.id, 'key', true)),
      textCell(
        text(capital(fillWords(planned.fills[hole.id], (id) => names.name(id as Plate['id']))), 'body', true),
        text(HOLE_CLASS_WORDS[hole.holeClass], 'small'),
      ),
      laidUp(`${planned.key}/${hole.id}`, given, names),
    ]),
  });
  if (empty.length > 0)
    blocks.push({ kind: 'paragraph', text: words.leftEmpty(listWords(empty)), size: 'body' });
  if (open.length > 0)
    blocks.push({ kind: 'paragraph', text: words.leftOpen(listWords(open)), size: 'body' });
  return blocks;
}

function plateScene(plate: Plate, { zone }: PlannedPlate) {
  const bare = drawPlate(plate);
  // ids of at least 2.2 mm on paper, whatever the reduction
  const textUm = Math.round(2200 * 1.25 * denominatorFor(bare, PLATE.widthMm, PLATE.heightMm));
  return drawPlate(plate, { showIds: true, zone, textUm });
}

/** What the kit lays up for a step. */
function laidUp(step: string, { kit }: KitSheetOf, names: KitSheetNames): Cell {
  const pieces = kit.steps.find((one) => one.step === step)?.pieces ?? [];
  if (pieces.length === 0) return textCell(text(words.none, 'large', true));
  return textCell(
    ...pieces.flatMap(({ itemId, from }) => [
      text(names.name(itemId), 'large', true),
      text(`${names.code(itemId)} · ${names.source(from)}`, 'small'),
    ]),
  );
}

function freeScrewBlocks(given: KitSheetOf, names: KitSheetNames): Block[] {
  const { freeScrews } = given.plan.construct;
  if (freeScrews.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: words.freeScrews, note: null },
    {
      kind: 'table',
      caption: words.freeScrews,
      columns: [
        { head: words.columns.hole, widthMm: 22, align: 'centre' },
        { head: words.columns.fill, widthMm: null, align: 'left' },
        { head: words.columns.screw, widthMm: 78, align: 'left' },
      ],
      rowHeader: 0,
      rowMm: 11,
      rows: freeScrews.map((screw): Cell[] => [
        textCell(text(screw.key, 'key', true)),
        textCell(text(capital(screwWords(screw)), 'body', true)),
        laidUp(screw.key, given, names),
      ]),
    },
  ];
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
