import { wholeAccount } from '../usage/account';
import { NO_REASON, reasonWords } from '../wording/reasons';
import {
  DELAY_STEP_WORDS,
  delayMinutes,
  differenceSentences,
  outcomeWords,
  useSheetWords as words,
} from '../wording/usage';
import { momentWords } from './edition';
import type { RecordOfUseSheet } from './recordOfUse';
import { type Block, type Cell, text, textCell } from './sheet';
import { column, heading, paragraph } from './useBlocks';

/** What is open, as it was closed; before that, that it is not closed. */
export function openBlocks({ open, closed }: RecordOfUseSheet): Block[] {
  if (closed === null)
    return [{ kind: 'notice', word: words.openWord, shape: 'unknown', lines: [words.openLine, ...open] }];
  if (open.length === 0) return [paragraph(words.reconciled)];
  return [{ kind: 'notice', word: words.staysOpen, shape: 'stop', lines: [...open] }];
}

/** What held the case up, without anybody's name. */
export function delayBlocks({ delays }: RecordOfUseSheet): Block[] {
  if (delays.length === 0) return [];
  return [
    heading(words.delays),
    ...delays.map(({ minutes, reason, step, about, note }) =>
      paragraph(
        words.delay(delayMinutes(minutes), reason ? reasonWords(reason) : NO_REASON, [
          ...(step === null ? [] : [DELAY_STEP_WORDS[step]]),
          ...(about === null ? [] : [about]),
          ...(note === null ? [] : [`“${note}”`]),
        ]),
      ),
    ),
  ];
}

/** In what it differs from the confirmed plan. */
export function differenceBlocks({ differences, nameOf, planVersion }: RecordOfUseSheet): Block[] {
  if (planVersion === null) return [];
  return [
    heading(words.differences),
    ...(differences.length === 0
      ? [paragraph(words.asPlanned)]
      : differenceSentences(differences, nameOf).map(paragraph)),
  ];
}

/** Pieces out against pieces back, implanted, discarded or not found. */
export function accountBlocks({ accounts }: RecordOfUseSheet): Block[] {
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

/** What was corrected after closing, with why. */
export function takenBackBlocks({ lines, closed }: RecordOfUseSheet): Block[] {
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
