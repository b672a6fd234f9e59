import type { Plate } from '../catalogue/item';
import type { PlannedPlate } from '../plans/plan';
import { writeMm } from '../quantities/length';
import { type SourceAccount, wholeAccount } from '../usage/account';
import type { PlanDifference } from '../usage/differences';
import type { RecordLine } from '../usage/lines';
import { drawingInWords } from '../wording/drawing';
import { capitalised } from '../wording/numbers';
import { SHEET_WORDS } from '../wording/paper';
import { LIMB_WORDS, REGION_WORDS } from '../wording/plans';
import {
  differenceSentences,
  lotOfUseWords,
  OPENING_BAR_WORDS,
  outcomeWords,
  placeWords,
  useSheetWords as words,
} from '../wording/usage';
import { drawPlate } from './drawing/plate';
import { dateWords, editionOf, momentWords, type Printing, recordCode, sheetCautions } from './edition';
import { denominatorFor } from './itemDrawing';
import { type Block, type Cell, type Column, type Sheet, text, textCell } from './sheet';

/** What the paper of a record of use is made from. */
export interface RecordOfUseSheet {
  booked: {
    reference: string;
    caseDate: string;
    theatre: string;
    surgeon: string;
    region: keyof typeof REGION_WORDS;
    limb: 'left' | 'right';
  };
  planVersion: number | null;
  plates: readonly { planned: PlannedPlate; plate: Plate | null }[];
  closed: { by: string; at: string } | null;
  lines: readonly RecordLine[];
  accounts: readonly (SourceAccount & { name: string })[];
  differences: readonly PlanDifference[];
  /** Sentences, as they stood when it was closed; before that, now. */
  open: readonly string[];
  nameOf: (itemId: string) => string;
  printing: Printing;
}

const PLATE = { widthMm: 184, heightMm: 46 };

/** What was used, for the clinical record: what went where and of which lot, what else was opened, and what is open. */
export function recordOfUseSheet(given: RecordOfUseSheet): Sheet {
  const { booked, closed, lines, printing } = given;
  const edition = editionOf(words.edition(lines.length), printing);
  return {
    kind: 'recordOfUse',
    kindWords: SHEET_WORDS.recordOfUse,
    title: booked.reference,
    subtitle: words.subtitle,
    facts: [
      { term: words.facts.day, value: dateWords(booked.caseDate) },
      { term: words.facts.theatre, value: booked.theatre },
      {
        term: words.facts.region,
        value: `${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toUpperCase()}`,
      },
      { term: words.facts.surgeon, value: booked.surgeon },
      {
        term: words.facts.plan,
        value: given.planVersion === null ? words.noPlan : words.plan(given.planVersion),
      },
      {
        term: words.facts.closed,
        value: closed === null ? words.notClosed : `${closed.by}, ${momentWords(closed.at)}`,
      },
    ],
    blocks: [
      ...openBlocks(given),
      ...implantBlocks(given),
      ...otherBlocks(given),
      ...differenceBlocks(given),
      ...accountBlocks(given),
      ...takenBackBlocks(given),
      {
        kind: 'signatures',
        boxes: [{ title: words.signed, note: closed === null ? null : words.proved(closed.by) }],
      },
    ],
    record: recordCode('recordOfUse', booked.reference, `E${lines.length}`, printing.at),
    edition,
    cautions: sheetCautions(edition),
  };
}

const column = (head: string, widthMm: number | null, align: Column['align'] = 'left'): Column => ({
  head,
  widthMm,
  align,
});
const heading = (said: string, note: string | null = null): Block => ({
  kind: 'heading',
  level: 2,
  text: said,
  note,
});
const paragraph = (said: string): Block => ({ kind: 'paragraph', text: said, size: 'body' });

function openBlocks({ open, closed }: RecordOfUseSheet): Block[] {
  if (closed === null)
    return [{ kind: 'notice', word: words.openWord, shape: 'unknown', lines: [words.openLine, ...open] }];
  if (open.length === 0) return [paragraph(words.reconciled)];
  return [{ kind: 'notice', word: words.staysOpen, shape: 'stop', lines: [...open] }];
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

function implantBlocks({ lines, plates }: RecordOfUseSheet): Block[] {
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

function otherBlocks({ lines }: RecordOfUseSheet): Block[] {
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
          ...(line.note === null ? [] : [text(`“${line.note}”`, 'small')]),
        ),
        itemCell(line),
        lotCell(line),
      ]),
    },
  ];
}

function differenceBlocks({ differences, nameOf, planVersion }: RecordOfUseSheet): Block[] {
  if (planVersion === null) return [];
  return [
    heading(words.differences),
    ...(differences.length === 0
      ? [paragraph(words.asPlanned)]
      : differenceSentences(differences, nameOf).map(paragraph)),
  ];
}

function accountBlocks({ accounts }: RecordOfUseSheet): Block[] {
  const whole = wholeAccount(accounts);
  const shown = accounts.filter(
    ({ count, implanted, discarded, notFound, beyond }) =>
      count === null || implanted + discarded + notFound + beyond > 0,
  );
  const figure = (value: number | null, strong = false): Cell =>
    textCell(text(value === null ? '?' : String(value), 'body', strong));
  const heads = words.accountColumns;
  return [
    heading(words.account, words.accountNote),
    {
      kind: 'table',
      caption: words.account,
      columns: [
        column(heads.from, null),
        ...[heads.out, heads.back, heads.implanted, heads.discarded, heads.notFound, heads.open].map((head) =>
          column(head, 20, 'centre'),
        ),
      ],
      rowHeader: 0,
      rowMm: 7,
      rows: [
        ...shown.map(({ name, out, back, implanted, discarded, notFound, open }): Cell[] => [
          textCell(text(name)),
          figure(out),
          figure(back),
          figure(implanted),
          figure(discarded),
          figure(notFound),
          figure(open),
        ]),
        [
          textCell(text(words.everything, 'body', true)),
          figure(whole.out, true),
          figure(whole.back, true),
          figure(whole.implanted, true),
          figure(whole.discarded, true),
          figure(whole.notFound, true),
          figure(whole.open, true),
        ],
      ],
    },
    ...(whole.slotsUnknown > 0 ? [paragraph(words.unknown(whole.slotsUnknown))] : []),
  ];
}

function takenBackBlocks({ lines, closed }: RecordOfUseSheet): Block[] {
  // before the closing a slip of the finger is no part of the clinical record; after it every correction is
  const corrected = lines.filter(
    ({ takenBack, because }) => because !== null || (takenBack !== null && takenBack.because !== null),
  );
  if (closed === null || corrected.length === 0) return [];
  return [
    heading(words.corrections),
    ...corrected.map((line) =>
      paragraph(
        words.correction(
          `${line.itemName}, ${outcomeWords(line.outcome, line.lostAt).toLowerCase()}`,
          line.takenBack,
          line.because,
          line.takenBack ? momentWords(line.takenBack.at) : momentWords(line.doneAt),
          line.by,
        ),
      ),
    ),
  ];
}
