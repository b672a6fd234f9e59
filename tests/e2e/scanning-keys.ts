import type { Page } from '@playwright/test';

/**
 * Types a code as a scanner does: real key events with nothing but the machine's own haste between them, then Enter.
 * Typed one by one by the test they would come as slowly as by hand on a busy machine, and be taken for typing.
 */
export async function scan(page: Page, text: string): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  const keys = [...text].map((character) => ({
    key: character,
    code: codeOf(character),
    shift: /[A-Z]/.test(character),
  }));
  const events = [...keys, { key: 'Enter', code: 'Enter', shift: false }].flatMap(({ key, code, shift }) => {
    const modifiers = shift ? 8 : 0;
    const text = key === 'Enter' ? '\r' : key;
    return [
      { type: 'keyDown' as const, key, code, text, modifiers, windowsVirtualKeyCode: virtualKey(key) },
      { type: 'keyUp' as const, key, code, modifiers, windowsVirtualKeyCode: virtualKey(key) },
    ];
  });
  // sent without waiting for one another, in order
  await Promise.all(events.map((event) => devtools.send('Input.dispatchKeyEvent', event)));
  await devtools.detach();
}

function codeOf(character: string): string {
  if (/\d/.test(character)) return `Digit${character}`;
  if (/[a-z]/i.test(character)) return `Key${character.toUpperCase()}`;
  const named: Record<string, string> = { ']': 'BracketRight', '-': 'Minus', '.': 'Period', '/': 'Slash' };
  return named[character] ?? '';
}

function virtualKey(key: string): number {
  if (key === 'Enter') return 13;
  return /[a-z\d]/i.test(key) ? key.toUpperCase().charCodeAt(0) : key === ']' ? 221 : 0;
}
