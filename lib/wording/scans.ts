import { never } from '../identity/result';
import type { RefusalOfScan, ScanHow, ScanMeaning, ScanVerdict } from '../scanning/meaning';
import { wallClock } from '../theatre/localTime';
import { capitalised, listWords } from './numbers';
import { momentWords } from './sets';

/** The word beside the shape and the colour. */
export const SCAN_VERDICT_WORDS: Record<ScanVerdict, string> = {
  understood: 'Understood',
  ask: 'One more?',
  already: 'Already scanned',
  refused: 'Not taken',
  unknown: 'Not known',
};

export const SCAN_HOW_WORDS: Record<ScanHow, string> = {
  scanner: 'scanned',
  camera: 'by camera',
  typed: 'typed',
};

const WAYS_OUT: Record<RefusalOfScan, (thing: string) => string> = {
  oldLabel: (pack) =>
    `This is an old copy of the label of ${pack}: a newer one was printed. Take this copy off and scan the newest; if there is none on the pack, print it again.`,
  noSuchCopy: (pack) =>
    `No such copy of the label of ${pack} was printed here. Print the label again, and scan the new one.`,
  packOpened: (pack) =>
    `${pack} was opened: its label no longer stands for a sealed pack. Take the label off; the set gets a new one when it is packed again.`,
  packUndone: (pack) => `${pack} was undone before it was sterilised. Take the label off and pack again.`,
  oldSheet: (sheet) =>
    `${sheet} is an old count sheet: the set was counted, changed or printed again since. Print a new sheet, or count on the screen.`,
  faulty: () =>
    'The code is damaged or wrong. Scan it again; if it stays so, type what is printed beside it.',
  ambiguous: () =>
    'The scanner did not send the separators, so the code can be read in several ways. Choose the one that is printed beside it, or scan with a scanner that sends them.',
  severalThings: () => 'This text names more than one thing here. Choose which one is meant.',
  patient: () =>
    'This looks like a patient’s or a person’s own number. It was not kept and not sent: scan only what is on sets, packs and items.',
};

/** What a scan means, with the way out where it is not taken. `at` is now, for the words of times. */
export function scanSentence(
  meaning: ScanMeaning,
  verdict: ScanVerdict,
  before: { at: string; by: string } | null,
  at: string,
): string {
  if (before && verdict === 'already')
    return `${thingWords(meaning)}: already scanned ${timeWords(before.at, at)} by ${before.by}. Nothing was done twice.`;
  if (before && verdict === 'ask')
    return `${thingWords(meaning)}: scanned ${timeWords(before.at, at)} too. Another one, or the same again?`;
  return meaningSentence(meaning);
}

/** `10:42` today, else with its day. */
const timeWords = (then: string, now: string): string =>
  wallClock(then).date === wallClock(now).date ? wallClock(then).time : momentWords(then, now);

function meaningSentence(meaning: ScanMeaning): string {
  switch (meaning.kind) {
    case 'set':
      return `Set ${meaning.code}.`;
    case 'pack': {
      const copy = meaning.copy === null ? ', number typed: its label’s copy was not checked' : '';
      return `Pack ${meaning.number}, ${meaning.code}${meaning.short ? ', SHORT' : ''}${copy}.`;
    }
    case 'item':
      return itemSentence(meaning);
    case 'load':
      return `Load ${meaning.number}.`;
    case 'place':
      return `Place: ${meaning.name}.`;
    case 'stock':
      return `Shelf stock of ${meaning.code}${detailWords({ lot: meaning.lot, useBy: meaning.useBy })}.`;
    case 'sheet':
      return `Count sheet ${meaning.number} of ${meaning.code}.`;
    case 'case':
      return `Case ${meaning.reference}.`;
    case 'refused':
      return capitalised(WAYS_OUT[meaning.because](meaning.candidates[0] ?? 'this'));
    case 'unknown':
      return meaning.gtin === null
        ? 'No code known here: kept as text, and nothing was guessed.'
        : `GTIN ${meaning.gtin} is read, but no item of the catalogue has it. Kept as text.`;
    default:
      return never(meaning);
  }
}

const STATUS = {
  current: '',
  withdrawn: ' It is withdrawn from the catalogue.',
  recalled: ' It is recalled: put it aside, it must not go into a set.',
} as const;

const itemSentence = (item: ScanMeaning & { kind: 'item' }): string =>
  `${item.code}, ${item.name}${detailWords(item)}.${STATUS[item.status]}`;

const detailWords = (given: {
  lot: string | null;
  serial?: string | null;
  useBy: string | null;
  quantity?: number | null;
}): string => {
  const said = [
    given.lot === null ? '' : `lot ${given.lot}`,
    given.serial ? `serial ${given.serial}` : '',
    given.useBy === null ? '' : `use-by ${given.useBy}`,
    given.quantity ? `box of ${given.quantity}` : '',
  ].filter(Boolean);
  return said.length > 0 ? `: ${listWords(said)}` : '';
};

/** The thing in as few words as its strip has room for. */
export function thingWords(meaning: ScanMeaning): string {
  switch (meaning.kind) {
    case 'set':
      return meaning.code;
    case 'pack':
      return `${meaning.code} · ${meaning.number}`;
    case 'item':
      return [
        meaning.code,
        meaning.serial ? `serial ${meaning.serial}` : meaning.lot ? `lot ${meaning.lot}` : '',
      ]
        .filter(Boolean)
        .join(' · ');
    case 'load':
      return `Load ${meaning.number}`;
    case 'place':
      return meaning.name;
    case 'stock':
      return meaning.code;
    case 'sheet':
      return `Sheet ${meaning.number}`;
    case 'case':
      return meaning.reference;
    case 'refused':
      return capitalised(meaning.candidates[0] ?? 'code');
    case 'unknown':
      return meaning.gtin === null ? meaning.text : `GTIN ${meaning.gtin}`;
    default:
      return never(meaning);
  }
}

export const scanWords = {
  namesAPerson: 'A code that names a person is not kept as a scan.',
  otherScan: 'This id belongs to another scan. Scan again.',
  notThisSession: 'It can’t be told who scanned this: sign in, and scan it again.',
  outsideSession: 'The scan lies outside the session it names. Sign in, and scan it again.',
  noSuchScan: 'There is no such scan.',
  notAsked: 'This scan was not asked about.',
  answered: 'This was answered otherwise before.',
  nothing: 'Scan or type a code.',
} as const;
