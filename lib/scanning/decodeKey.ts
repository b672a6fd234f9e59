import { type Layout, layoutOf, NUMBER_PAD, type Written } from './layouts';
import type { ScannerSetting } from './scanner';

/** A key going down, as the browser tells it. */
export interface Keystroke {
  /** Its place on the keyboard; empty where a device does not say. */
  code: string;
  /** What the computer's own layout makes of it. Not used where `code` is known. */
  key: string;
  shift: boolean;
  ctrl: boolean;
  alt: boolean;
  altGraph: boolean;
  meta: boolean;
  capsLock: boolean;
  /** Held down, so that it repeats by itself: a person does that. */
  repeat: boolean;
  /** In milliseconds, of the event itself and not of when it was looked at. */
  at: number;
}

const MODIFIERS = /^(Shift|Control|Alt|Meta|OS)(Left|Right)$|^(CapsLock|NumLock|ScrollLock|AltGraph)$/;

export const isModifier = ({ code, key }: Keystroke): boolean =>
  MODIFIERS.test(code) || (code === '' && /^(Shift|Control|Alt|Meta|AltGraph|CapsLock)$/.test(key));

/** What a key says within a scan. */
export type Said =
  | { kind: 'character'; written: Written }
  | { kind: 'end'; by: 'enter' | 'tab' }
  /** A key that no scanner sends. */
  | { kind: 'other' };

const character = (text: string): Said => ({ kind: 'character', written: { character: text, dead: false } });
const OTHER: Said = { kind: 'other' };

/**
 * What a key means when a scanner set to that layout sent it. Only the place of the key and the modifiers count: the
 * computer's layout and its Caps Lock do not.
 */
export function said(key: Keystroke, setting: ScannerSetting): Said {
  if (key.meta) return OTHER;
  const layout = layoutOf(setting.layout);
  // Windows tells AltGr as Ctrl and Alt together
  const altGr = key.altGraph || key.alt;
  if (key.ctrl && !altGr) return control(key, layout);
  if (key.code === 'Enter' || key.code === 'NumpadEnter' || (key.code === '' && key.key === 'Enter'))
    return altGr ? OTHER : { kind: 'end', by: 'enter' };
  if (key.code === 'Tab' || (key.code === '' && key.key === 'Tab'))
    return altGr || key.shift ? OTHER : { kind: 'end', by: 'tab' };
  if (altGr) {
    const written = layout.altGr.get(key.code);
    return written ? { kind: 'character', written } : OTHER;
  }
  if (key.code === 'Space') return character(' ');
  const onPad = NUMBER_PAD.get(key.code);
  if (onPad) return character(onPad);
  const written = written1(key, layout, setting);
  if (written) return { kind: 'character', written };
  return key.code === '' && [...key.key].length === 1 ? character(key.key) : OTHER;
}

function written1(key: Keystroke, layout: Layout, { minds }: ScannerSetting): Written | undefined {
  const plain = layout.plain.get(key.code);
  const isLetter = plain !== undefined && plain.character.toUpperCase() !== plain.character.toLowerCase();
  const turned = minds === 'capsLock' && key.capsLock && isLetter;
  return (key.shift !== turned ? layout.shift : layout.plain).get(key.code);
}

/** Control characters as ASCII has them: Ctrl and the character 64 places up. Group separators come as Ctrl and `]`. */
function control(key: Keystroke, layout: Layout): Said {
  // scanners send the place of the US keyboard, whatever they are set to, or that of their own layout
  if (key.code === 'BracketRight') return character('\u001d');
  const at = (key.shift ? layout.shift : layout.plain).get(key.code)?.character ?? '';
  if (at === ']') return character('\u001d');
  if (at === '\\') return character('\u001c');
  if (at === '^') return character('\u001e');
  if (at === '_') return character('\u001f');
  if (/^[dD]$/.test(at)) return character('\u0004');
  if (/^[jJmM]$/.test(at)) return { kind: 'end', by: 'enter' };
  if (/^[iI]$/.test(at)) return { kind: 'end', by: 'tab' };
  return OTHER;
}

const COMBINING: Readonly<Record<string, string>> = {
  '^': '\u0302',
  '´': '\u0301',
  '`': '\u0300',
  '¨': '\u0308',
  '~': '\u0303',
};

/** The text of what was written key by key: a dead key writes itself before a space, or goes onto the letter after it. */
export function textOf(keys: readonly Written[]): string {
  let text = '';
  let dead = '';
  for (const { character: next, dead: waits } of keys) {
    if (dead === '') {
      if (waits) dead = next;
      else text += next;
      continue;
    }
    const joined = waits ? '' : (next + (COMBINING[dead] ?? '')).normalize('NFC');
    if (next === ' ' || (waits && next === dead)) text += dead;
    else text += [...joined].length === 1 && COMBINING[dead] ? joined : dead + next;
    dead = '';
  }
  return text + dead;
}
