import type { Plate } from '../catalogue/item';
import type { PlannedPlate } from '../plans/plan';
import type { SourceAccount } from '../usage/account';
import type { PlanDifference } from '../usage/differences';
import type { DelayLine, RecordLine } from '../usage/lines';
import { SHEET_WORDS } from '../wording/paper';
import { LIMB_WORDS, REGION_WORDS } from '../wording/plans';
import { useSheetWords as words } from '../wording/usage';
import { dateWords, editionOf, momentWords, type Printing, recordCode, sheetCautions } from './edition';
import {
  accountBlocks,
  delayBlocks,
  differenceBlocks,
  openBlocks,
  takenBackBlocks,
} from './recordOfUseAccount';
import { implantBlocks, otherBlocks } from './recordOfUsePieces';
import type { Sheet } from './sheet';

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
  /** Those that stand; delays are told in the record of their case and nowhere with a name. */
  delays: readonly DelayLine[];
  accounts: readonly (SourceAccount & { name: string })[];
  differences: readonly PlanDifference[];
  /** Sentences, as they stood when it was closed; before that, now. */
  open: readonly string[];
  nameOf: (itemId: string) => string;
  printing: Printing;
}

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
      ...delayBlocks(given),
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
