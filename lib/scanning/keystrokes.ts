import { isModifier, type Keystroke, said, textOf } from './decodeKey';
import type { Written } from './layouts';
import type { ScannerSetting } from './scanner';

/** Keys that follow one another too fast for fingers, so far. */
interface Burst {
  written: Written[];
  /** Of its last key, a modifier included. */
  lastAt: number;
  inTextField: boolean;
}

export interface Listening {
  burst: Burst | null;
  /** The burst that was given back as typing last: a key that was only held up may still belong to it. */
  givenBack: Burst | null;
  /** When the last scan ended: an Enter or Tab that follows soon ends it too (CR and LF, or a slow end). */
  endedAt: number | null;
}

export const SILENT: Listening = { burst: null, givenBack: null, endedAt: null };

/**
 * What to do about a key, in this order:
 * `giveBack`: the keys held so far were typing, they go where they would have gone; `scan`: they were a scan, and nothing
 * of them may be left anywhere; `cut`: they were a piece of one; then, for the key itself, `hold`, `pass` or `swallow`.
 */
export type Doing =
  | { kind: 'giveBack' }
  | { kind: 'scan'; text: string }
  | { kind: 'cut'; text: string }
  | { kind: 'hold' }
  | { kind: 'pass' }
  | { kind: 'swallow' };

export interface Heard {
  listening: Listening;
  doings: Doing[];
}

/** Fewer characters are no code of anything. */
const LEAST = 4;
/** Keys may be told late by a busy computer: before a scan without an end counts as whole, it is waited so long. */
const WHOLE_AFTER_MS = 300;
/** A person who presses Enter after a scan takes longer. */
const TAIL_MS = 200;
/** In a text field silence alone must not turn typing into a scan: nobody types so many characters so fast. */
const LEAST_IN_FIELD = 8;

/** One key. `inTextField`: it would write there. */
export function hear(
  before: Listening,
  key: Keystroke,
  inTextField: boolean,
  setting: ScannerSetting,
): Heard {
  const rested = endedBySilence(before, key.at, setting);
  const { doings, endedAt } = rested;
  const burst = rested.burst ?? resumed(before, key.at, setting, doings);
  if (isModifier(key)) {
    const goesOn = burst && { ...burst, lastAt: key.at };
    return { listening: { burst: goesOn, givenBack: null, endedAt }, doings: [...doings, { kind: 'pass' }] };
  }
  const heard = key.repeat ? ({ kind: 'other' } as const) : said(key, setting);
  if (heard.kind === 'end') return atEnd(burst, heard.by, key, rested, setting);
  const begins = heard.kind === 'character' && mayBegin(heard.written, key);
  if (heard.kind === 'other' || (burst === null && !begins)) {
    const back: Doing[] = burst ? [{ kind: 'giveBack' }] : [];
    return { listening: SILENT, doings: [...doings, ...back, { kind: 'pass' }] };
  }
  const next: Burst = {
    written: [...(burst?.written ?? []), heard.written],
    lastAt: key.at,
    inTextField: burst?.inTextField ?? inTextField,
  };
  return {
    listening: { burst: next, givenBack: null, endedAt: null },
    doings: [...doings, { kind: 'hold' }],
  };
}

/** A space presses a button or scrolls, and no code begins with one; Ctrl with a letter is a command. */
const mayBegin = ({ character }: Written, { ctrl, alt }: Keystroke): boolean =>
  character !== ' ' && (!ctrl || alt || character === '\u001d');

/** Enter or Tab: ends a scan, or is a person's own. */
function atEnd(
  burst: Burst | null,
  by: 'enter' | 'tab',
  key: Keystroke,
  { doings, endedAt }: Rested,
  { ends }: ScannerSetting,
): Heard {
  const belongs = ends === 'unknown' || ends === 'silence' || ends === by;
  if (burst && burst.written.length >= LEAST && belongs) {
    const scan: Doing = { kind: 'scan', text: textOf(burst.written) };
    return {
      listening: { burst: null, givenBack: null, endedAt: key.at },
      doings: [...doings, scan, { kind: 'swallow' }],
    };
  }
  if (burst === null && endedAt !== null && key.at - endedAt <= TAIL_MS) {
    return { listening: { ...SILENT, endedAt: key.at }, doings: [...doings, { kind: 'swallow' }] };
  }
  const back: Doing[] = burst ? [{ kind: 'giveBack' }] : [];
  return { listening: SILENT, doings: [...doings, ...back, { kind: 'pass' }] };
}

interface Rested {
  burst: Burst | null;
  endedAt: number | null;
  doings: Doing[];
}

/** A key that comes after a silence does not belong to what was before. */
function endedBySilence({ burst, endedAt }: Listening, at: number, setting: ScannerSetting): Rested {
  if (burst === null || at - burst.lastAt <= setting.gapMs) return { burst, endedAt, doings: [] };
  const doing = whatItWas(burst, setting);
  return { burst: null, endedAt: doing.kind === 'giveBack' ? null : burst.lastAt, doings: [doing] };
}

/** Looked at too early: a key typed in time was only told late, so what was given back goes on. */
function resumed(
  { givenBack }: Listening,
  at: number,
  { gapMs }: ScannerSetting,
  doings: readonly Doing[],
): Burst | null {
  return givenBack && doings.length === 0 && at - givenBack.lastAt <= gapMs ? givenBack : null;
}

/**
 * How long no key must have come before `silence` can say what the burst was; counted from when the last key was told,
 * should that be later than when it went down. `null`: there is no burst.
 */
export function silenceAfterMs({ burst }: Listening, { ends, gapMs }: ScannerSetting): number | null {
  if (burst === null) return null;
  if (burst.inTextField || burst.written.length < LEAST) return gapMs;
  return ends === 'silence' ? 2 * gapMs : Math.max(WHOLE_AFTER_MS, gapMs);
}

/** Silence since the last key: what was held is given back, or was a scan. `null`: it is too early to say. */
export function silence(before: Listening, at: number, setting: ScannerSetting): Heard | null {
  const { burst } = before;
  if (burst === null) return { listening: before, doings: [] };
  if (at - burst.lastAt <= (silenceAfterMs(before, setting) ?? 0)) return null;
  const doing = whatItWas(burst, setting);
  const back = doing.kind === 'giveBack';
  return {
    listening: back ? { burst: null, givenBack: burst, endedAt: null } : { ...SILENT, endedAt: burst.lastAt },
    doings: [doing],
  };
}

/** What keys without an end were. Where a scanner is known to end its scans, a scan without end is a piece of one. */
function whatItWas({ written, inTextField }: Burst, { ends }: ScannerSetting): Doing {
  const byItself = ends === 'silence' || (ends === 'unknown' && !inTextField);
  if (written.length < (inTextField ? LEAST_IN_FIELD : LEAST)) return { kind: 'giveBack' };
  if (byItself) return { kind: 'scan', text: textOf(written) };
  return inTextField ? { kind: 'giveBack' } : { kind: 'cut', text: textOf(written) };
}

/** The person went elsewhere (pointer, focus, another window): what is held goes where it was meant for. */
export function interrupted({ burst }: Listening): Heard {
  return { listening: SILENT, doings: burst ? [{ kind: 'giveBack' }] : [] };
}
