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

async function sendScan(devtools: CDPSession, text: string, scanner: Scanner): Promise<void> {
  // a scan lasts, and begins after what was typed before it
  const lasts = (text.length + 1) * (scanner.everyMs ?? 5);
  await new Promise((resolve) => setTimeout(resolve, lasts + 120));
  // sent without waiting for one another, in order
  await Promise.all(keyEvents(text, scanner, Date.now()).map((event) => press(devtools, event)));
}

/**
 * A scan whose time is measured: its end is sent at the very moment it is stamped with, so that what is measured from
 * there on is the page, not the way of all its other keys to the browser. Those are sent ahead of their time, which must
 * not be nearer than `aheadMs`, and take as long as this answers.
 */
export async function sendTimedScan(
  devtools: CDPSession,
  text: string,
  aheadMs: number,
  scanner: Scanner = {},
): Promise<number> {
  const sent = Date.now();
  const endsAt = sent + aheadMs;
  const events = keyEvents(text, scanner, endsAt);
  const end = events.splice(-2);
  await Promise.all(events.map((event) => press(devtools, event)));
  const onItsWay = Date.now() - sent;
  await new Promise((resolve) => setTimeout(resolve, Math.max(0, endsAt - Date.now())));
  const timestamp = Date.now() / 1000;
  await Promise.all(end.map((event) => press(devtools, { ...event, timestamp })));
  return onItsWay;
}

interface KeyEvent {
  type: 'keyDown' | 'keyUp';
  code: string;
  key: string;
  modifiers: number;
  /** In seconds since 1970. */
  timestamp: number;
  windowsVirtualKeyCode: number;
  text?: string;
}
const press = (devtools: CDPSession, event: KeyEvent) => devtools.send('Input.dispatchKeyEvent', event);

/** Down and up of every key, the last of them at `endsAt`. */
function keyEvents(
  text: string,
  { everyMs = 5, ends = 'Enter', layout = 'us' }: Scanner,
  endsAt: number,
): KeyEvent[] {
  const keys = presses(text, layout);
  if (!keys) throw new Error(`a scanner set to ${layout} can't send ${text}`);
  const last = ends === 'nothing' ? [] : [{ code: ends, level: 'plain' as const, ctrl: false }];
  const all = [...keys, ...last];
  const begin = endsAt - all.length * everyMs;
  return all.flatMap(({ code, level, ctrl }, order) => {
    const modifiers = (level === 'altGr' ? 1 : 0) + (ctrl ? 2 : 0) + (level === 'shift' ? 8 : 0);
    const timestamp = (begin + (order + 1) * everyMs) / 1000;
    const key = code === 'Enter' || code === 'Tab' ? code : 'x';
    const written = code === 'Enter' ? '\r' : code === 'Tab' || ctrl ? undefined : 'x';
    const common = { code, key, modifiers, timestamp, windowsVirtualKeyCode: VIRTUAL[code] ?? 88 };
    return [
      { ...common, type: 'keyDown' as const, ...(written === undefined ? {} : { text: written }) },
      { ...common, type: 'keyUp' as const },
    ];
  });
}

const VIRTUAL: Readonly<Record<string, number>> = { Enter: 13, Tab: 9, Space: 32 };
