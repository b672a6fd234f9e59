import type { Keystroke } from '@/lib/scanning/decodeKey';
import { hear, type Listening, SILENT, silence } from '@/lib/scanning/keystrokes';
import { type ScannerSetting, UNTRIED_SCANNER } from '@/lib/scanning/scanner';
import published from '../../fixtures/keyboard-layouts.json';
import type { Press } from './presses';

/** A computer's own layout, as XKB has it: what the browser makes of a key. Nothing the decoder should depend on. */
export type ComputerLayout = keyof typeof published.layouts;
export const COMPUTERS = Object.keys(published.layouts) as ComputerLayout[];

/** Those keys as a browser tells them on a computer with its own layout and Caps Lock. */
export function strokes(
  keys: readonly Press[],
  computer: ComputerLayout,
  { from, everyMs, capsLock = false }: { from: number; everyMs: number; capsLock?: boolean },
): Keystroke[] {
  return keys.map(({ code, level, ctrl = false }, order) => {
    const row = (published.layouts[computer] as Record<string, string[]>)[code] ?? [];
    const own = row[level === 'plain' ? 0 : level === 'shift' ? 1 : 2] ?? 'Unidentified';
    const key = code === 'Space' ? ' ' : own.startsWith('Dead') ? 'Dead' : own;
    const turned = capsLock && key.length === 1 ? turn(key) : key;
    return {
      ...NO_MODIFIER,
      code,
      key: turned,
      shift: level === 'shift',
      altGraph: level === 'altGr',
      ctrl,
      capsLock,
      at: from + order * everyMs,
    };
  });
}

const turn = (key: string): string => (key === key.toLowerCase() ? key.toUpperCase() : key.toLowerCase());

export const NO_MODIFIER = {
  shift: false,
  ctrl: false,
  alt: false,
  altGraph: false,
  meta: false,
  capsLock: false,
  repeat: false,
};

export const enter = (at: number): Keystroke => ({ ...NO_MODIFIER, code: 'Enter', key: 'Enter', at });
export const tab = (at: number): Keystroke => ({ ...NO_MODIFIER, code: 'Tab', key: 'Tab', at });

export interface Came {
  scans: string[];
  /** Keys that reached the page: those let through, and those given back. */
  typed: string[];
  cut: string[];
}

/** Plays keys as the page would hear them, silences between them looked at in time, and says where each went. */
export function play(
  keys: readonly Keystroke[],
  {
    inTextField = false,
    setting = UNTRIED_SCANNER,
  }: { inTextField?: boolean; setting?: ScannerSetting } = {},
): Came {
  let listening: Listening = SILENT;
  let held: Keystroke[] = [];
  const came: Came = { scans: [], typed: [], cut: [] };
  const giveBack = () => {
    for (const { key } of held) came.typed.push(key);
    held = [];
  };
  const act = (doings: ReturnType<typeof hear>['doings'], key?: Keystroke) => {
    for (const doing of doings) {
      if (doing.kind === 'giveBack') giveBack();
      else if (doing.kind === 'hold' && key) held.push(key);
      else if (doing.kind === 'pass' && key) came.typed.push(key.key);
      else if (doing.kind === 'scan' || doing.kind === 'cut') {
        held = [];
        came[doing.kind === 'scan' ? 'scans' : 'cut'].push(doing.text);
      }
    }
  };
  const rest = (at: number) => {
    const heard = silence(listening, at, setting);
    if (!heard) return;
    listening = heard.listening;
    act(heard.doings);
  };
  for (const key of keys) {
    rest(key.at - 1);
    const heard = hear(listening, key, inTextField, setting);
    listening = heard.listening;
    act(heard.doings, key);
  }
  rest((keys.at(-1)?.at ?? 0) + 1000);
  return came;
}
