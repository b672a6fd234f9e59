import { writeMm } from '../quantities/length';
import type { RecordLine } from '../usage/lines';
import { drawingInWords } from '../wording/drawing';
import { capitalised } from '../wording/numbers';
import { NO_REASON, reasonWords } from '../wording/reasons';
import {
  lotOfUseWords,
  OPENING_BAR_WORDS,
  outcomeWords,
  placeWords,
  useSheetWords as words,
} from '../wording/usage';
import { drawPlate } from './drawing/plate';
import { denominatorFor } from './itemDrawing';
import type { RecordOfUseSheet } from './recordOfUse';
import { type Block, type Cell, text, textCell } from './sheet';
import { column, heading, paragraph } from './useBlocks';

const PLATE = { widthMm: 184, heightMm: 46 };

/** What stays in the patient: where, what, how long, and of which lot. */
export function implantBlocks({ lines, plates }: RecordOfUseSheet): Block[] {
  const implanted = lines.filter(({ outcome, takenBack }) => outcome === 'implanted' && takenBack === null);
  const figures = plates.flatMap(({ planned, plate }): Block[] => {
    if (!plate) return [];
    const bare = drawPlate(plate);
    const denominator = denominatorFor(bare, PLATE.widthMm, PLATE.heightMm);
    // ids of at least 2.2 mm on paper, whatever the reduction
    const scene = drawPlate(plate, {
      showIds: true,
      zone: planned.zone,
      textUm: Math.round(2750 * denominator),
    });
    return [
      {
        kind: 'figure',
        scene,
        denominator,
        alt: drawingInWords(plate, scene),
        caption: words.figure(planned.key, plate.name),
      },
    ];
  });
  if (implanted.length === 0) return [heading(words.implanted), paragraph(words.none)];
  return [
    heading(words.implanted),
    ...figures,
    {
      kind: 'table',
      caption: words.implanted,
      columns: [
        column(words.columns.place, 36),
        column(words.columns.item, null),
        column(words.columns.length, 20, 'centre'),
        column(words.columns.lot, 64),
      ],
      rowHeader: 0,
      rowMm: 9,
      rows: inPlaces(implanted).map((line) => [
        textCell(text(capitalised(placeWords(line.place)), 'body', true)),
        itemCell(line),
        textCell(text(line.lengthUm === null ? '–' : `${writeMm(line.lengthUm)} mm`, 'body', true)),
        lotCell(line),
      ]),
    },
  ];
}

/** Plate by plate, the plate before its holes; what has no place comes last. */
function inPlaces(lines: readonly RecordLine[]): RecordLine[] {
  const key = ({ place }: RecordLine): string =>
    place === null
      ? '~'
      : place.kind === 'free'
        ? `L ${place.screw}`
        : place.kind === 'plate'
          ? `${place.plate} `
          : `${place.plate} ${place.hole}`;
  const collator = new Intl.Collator('en-GB', { numeric: true });
  const order = (line: RecordLine) => (line.place === null ? 2 : line.place.kind === 'free' ? 1 : 0);
  return [...lines].sort((a, b) => order(a) - order(b) || collator.compare(key(a), key(b)));
}

/** What was opened for nothing, dropped, damaged, returned or not found. */
export function otherBlocks({ lines }: RecordOfUseSheet): Block[] {
  const others = lines.filter(({ outcome, takenBack }) => outcome !== 'implanted' && takenBack === null);
  if (others.length === 0) return [heading(words.others), paragraph(words.none)];
  return [
    heading(words.others),
    {
      kind: 'table',
      caption: words.others,
      columns: [
        column(words.columns.outcome, 46),
        column(words.columns.item, null),
        column(words.columns.lot, 72),
      ],
      rowHeader: 1,
      rowMm: 9,
      rows: others.map((line) => [
        textCell(
          text(outcomeWords(line.outcome, line.lostAt, line.reusable), 'body', true),
          ...(line.waste
            ? [text(words.reason(line.reason ? reasonWords(line.reason) : NO_REASON), 'small')]
            : []),
          ...(line.note === null ? [] : [text(`“${line.note}”`, 'small')]),
        ),
        itemCell(line),
        lotCell(line),
      ]),
    },
  ];
}

function lotCell(line: RecordLine): Cell {
  const set =
    line.setCode === null
      ? null
      : {
          code: line.setCode,
          pack: line.packNumber === null ? null : { number: line.packNumber, load: line.load },
        };
  const lot =
    line.lotIs === 'read'
      ? lotOfUseWords({ kind: 'read', lot: line.lot ?? '', useBy: null }, null, null)
      : lotOfUseWords({ kind: line.lotIs }, line.lot, set);
  return textCell(
    text(capitalised(lot)),
    ...(line.useBy === null ? [] : [text(words.goodThrough(line.useBy), 'small')]),
    ...(line.despite.length === 0
      ? []
      : [text(words.despite(line.despite.map((bar) => OPENING_BAR_WORDS[bar])), 'small', true)]),
  );
}

const itemCell = (line: RecordLine): Cell =>
  textCell(
    text(`${line.quantity > 1 ? `${line.quantity} × ` : ''}${line.itemName}`, 'body', true),
    text([line.itemCode, ...(line.gtin === null ? [] : [`GTIN ${line.gtin}`])].join(' · '), 'small'),
  );
