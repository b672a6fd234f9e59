import { GS, plainSeparators } from '../calculations/identifier/gs1/separators';
import { type Keystroke, said, textOf } from './decodeKey';
import { LAYOUTS } from './layouts';
import { type ScannerSetting, UNTRIED_SCANNER } from './scanner';

const PRINTABLE = Array.from({ length: 94 }, (_, at) => String.fromCharCode(33 + at)).join('');

/** What the symbols of the set-up page hold: every printable character in the square one, the telling ones in the line. */
export const TRIAL_TEXTS = {
  matrix: `99${PRINTABLE}${GS}98END`,
  line: `99aZqWyM{#@"-/_${GS}98x7`,
} as const;
export type TrialSymbol = keyof typeof TRIAL_TEXTS;

/** What was found out about a scanner from the keys it sent for a symbol that is known. */
export type Trial =
  | {
      outcome: 'understood';
      symbol: TrialSymbol;
      setting: ScannerSetting;
      separators: 'character' | 'written' | 'lost';
      /** The symbology identifier it sent; `null` is none. */
      mark: string | null;
      capsLock: boolean;
      /** Between two keys, in milliseconds: the usual, and the longest. */
      everyMs: number;
      longestMs: number;
    }
  /** No layout known here gives the text back. `nearest` has the fewest characters wrong. */
  | { outcome: 'notUnderstood'; nearest: { layout: (typeof LAYOUTS)[number]; text: string }; keys: number };

/** Between keys of one scan there may be so much at the most, whatever is measured. */
const GAP = { least: 50, most: 250 };

/** Finds the layout with which the keys are the text of one of the trial symbols, and all else that can be told of them. */
export function tryScanner(keys: readonly Keystroke[], at: string): Trial {
  const ways = LAYOUTS.flatMap((layout) =>
    (['nothing', 'capsLock'] as const).map((minds) => ({ ...UNTRIED_SCANNER, layout, minds })),
  );
  let nearest = { layout: LAYOUTS[0] as (typeof LAYOUTS)[number], text: '', same: -1 };
  for (const way of ways) {
    const { text, ends } = heardAs(keys, way);
    const mark = /^\][A-Za-z][0-9A-Za-z]/.exec(text)?.[0] ?? null;
    // some scanners send FNC1 in the first place as a separator
    const body = text.slice(mark?.length ?? 0);
    const sent = body.startsWith(GS) ? body.slice(GS.length) : body;
    for (const symbol of ['matrix', 'line'] as const) {
      const separators = separatorsIn(sent, TRIAL_TEXTS[symbol]);
      if (separators === null) {
        const same = sharedStart(sent, TRIAL_TEXTS[symbol]);
        if (same > nearest.same) nearest = { layout: way.layout, text, same };
        continue;
      }
      const { everyMs, longestMs } = pace(keys);
      const gapMs = Math.min(GAP.most, Math.max(GAP.least, Math.round(longestMs * 1.5)));
      const setting: ScannerSetting = {
        ...way,
        ends,
        gapMs,
        separators: separators === 'lost' ? 'mayBeLost' : 'sent',
        symbology: mark === null ? 'unknown' : 'sent',
        triedAt: at,
      };
      const capsLock = keys.some((key) => key.capsLock);
      return { outcome: 'understood', symbol, setting, separators, mark, capsLock, everyMs, longestMs };
    }
  }
  return {
    outcome: 'notUnderstood',
    nearest: { layout: nearest.layout, text: nearest.text },
    keys: keys.length,
  };
}

function heardAs(
  keys: readonly Keystroke[],
  way: ScannerSetting,
): { text: string; ends: ScannerSetting['ends'] } {
  const written = [];
  let ends: ScannerSetting['ends'] = 'silence';
  for (const key of keys) {
    const heard = said(key, way);
    if (heard.kind === 'character') written.push(heard.written);
    if (heard.kind === 'end' && ends === 'silence') ends = heard.by;
  }
  return { text: textOf(written), ends };
}

/** In which form the separator came; `null`: the rest of the text is not that one. */
function separatorsIn(sent: string, due: string): 'character' | 'written' | 'lost' | null {
  if (sent === due) return 'character';
  if (sent === due.replace(GS, '')) return 'lost';
  return plainSeparators(sent, 1).text === due ? 'written' : null;
}

function sharedStart(a: string, b: string): number {
  let same = 0;
  while (same < a.length && a[same] === b[same]) same += 1;
  return same;
}

function pace(keys: readonly Keystroke[]): { everyMs: number; longestMs: number } {
  const gaps = keys
    .slice(1)
    .map((key, at) => key.at - (keys[at]?.at ?? key.at))
    .sort((a, b) => a - b);
  return { everyMs: Math.round(gaps[gaps.length >> 1] ?? 0), longestMs: Math.round(gaps.at(-1) ?? 0) };
}
