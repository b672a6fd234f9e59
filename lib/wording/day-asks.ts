import type { LowScrew, ToAskFor } from '../theatre/report/toAskFor';
import type { ReportNames } from './day-report';
import { capitalised, countWord } from './numbers';

/** What must be asked for, each as a line: the case or thing, and what of it. */
export interface AskLine {
  key: string;
  word: string;
  about: string;
  href: string;
  sentence: string;
  references: string[];
}

export function askLines(ask: ToAskFor, { item }: Pick<ReportNames, 'item'>): AskLine[] {
  return [
    ...ask.notPlanned.map(({ facts: { id, reference, surgeon } }) => ({
      key: `plan ${id}`,
      word: 'Plan',
      about: reference,
      href: `/cases/${id}/plan`,
      sentence: `No plan is stated. Ask ${surgeon}.`,
      references: [reference],
    })),
    ...ask.notConfirmed.map(({ line: { facts }, newerDraft }) => ({
      key: `confirm ${facts.id}`,
      word: 'Confirmation',
      about: facts.reference,
      href: `/cases/${facts.id}/plan`,
      sentence: newerDraft
        ? `A draft newer than the confirmed plan is being written. Ask ${facts.surgeon} which one counts.`
        : `The plan is a draft. Ask ${facts.surgeon} to confirm it.`,
      references: [facts.reference],
    })),
    ...ask.setsPastUseBy.map(({ id, code, useBy, references }) => ({
      key: `use-by ${id}`,
      word: 'Set past use-by',
      about: code,
      href: `/sets/${id}`,
      sentence: `Use-by ${useBy}: on the day of the case it is past it.`,
      references,
    })),
    ...ask.packsPastUseBy.map(({ itemId, form, lot, useBy, quantity, place, references }, at) => ({
      key: `pack ${itemId} ${at}`,
      word: form === 'pouch' ? 'Pouch past use-by' : 'Sterile pack past use-by',
      about: item(itemId),
      href: '/stock',
      sentence: `${capitalised(countWord(quantity))} in ${place}, lot ${lot ?? 'not stated'}, use-by ${useBy}: not to be counted on.`,
      references,
    })),
    ...ask.lowScrews.map((screw) => ({
      key: `low ${screw.itemId}`,
      word: 'Screws low on the shelf',
      about: item(screw.itemId),
      href: '/stock',
      sentence: lowWords(screw),
      references: [...new Set(screw.references)],
    })),
  ];
}

function lowWords({ planned, inSets, minimum, sterile, unsterile }: LowScrew): string {
  const racks =
    inSets === null
      ? 'not counted in the sets that the cases get'
      : minimum === 0 && inSets === 0
        ? 'none in a set that the cases get'
        : `${inSets} in the sets that the cases get, where at least ${minimum} should stay`;
  return `Planned ${planned}; ${racks}; on the shelf ${sterile} sterile and ${unsterile} to rack: it can’t be filled again.`;
}
