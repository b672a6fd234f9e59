import type { CDPSession, Page } from '@playwright/test';
import type { LayoutName } from '@/lib/scanning/layouts';
import { presses } from '../lib/scanning/presses';

interface Scanner {
  /** Between two keys, by the clock of the keyboard: the machine that runs the test may be slow. */
  everyMs?: number;
  ends?: 'Enter' | 'Tab' | 'nothing';
  layout?: LayoutName;
}

/**
 * Types a code as a scanner does: real key events, each with the moment the scanner sent it, then Enter. Typed one by one
 * by the test they would come as slowly as by hand on a busy machine, and be taken for typing. A GS goes as Ctrl and ].
 */
export async function scan(page: Page, text: string, scanner: Scanner = {}): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  await sendScan(devtools, text, scanner);
  await devtools.detach();
}

/** The same on a connection that is already there, where the time of a scan is measured. */
export async function sendScan(
  devtools: CDPSession,
  text: string,
  { everyMs = 5, ends = 'Enter', layout = 'us' }: Scanner = {},
): Promise<void> {
  const keys = presses(text, layout);
  if (!keys) throw new Error(`a scanner set to ${layout} can't send ${text}`);
  const last = ends === 'nothing' ? [] : [{ code: ends, level: 'plain' as const, ctrl: false }];
  const all = [...keys, ...last];
  const begin = Date.now() - all.length * everyMs;
  const events = all.flatMap(({ code, level, ctrl }, order) => {
    const modifiers = (level === 'altGr' ? 1 : 0) + (ctrl ? 2 : 0) + (level === 'shift' ? 8 : 0);
    const timestamp = (begin + (order + 1) * everyMs) / 1000;
    const key = code === 'Enter' || code === 'Tab' ? code : 'x';
    const written = code === 'Enter' ? '\r' : code === 'Tab' || ctrl ? undefined : 'x';
    const common = { code, key, modifiers, timestamp, windowsVirtualKeyCode: VIRTUAL[code] ?? 88 };
    return [
      { ...common, type: 'keyDown' as const, text: written },
      { ...common, type: 'keyUp' as const },
    ];
  });
  // sent without waiting for one another, in order
  await Promise.all(events.map((event) => devtools.send('Input.dispatchKeyEvent', event)));
}

const VIRTUAL: Readonly<Record<string, number>> = { Enter: 13, Tab: 9, Space: 32 };
