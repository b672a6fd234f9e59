import { type Layout, type LayoutName, type Level, layoutOf } from '@/lib/scanning/layouts';

/** A key a scanner presses, and with what. */
export interface Press {
  code: string;
  level: Level;
  ctrl?: boolean;
}

/** The keys a scanner set to that layout presses for a text; `null` where it has no key for a character. */
export function presses(text: string, name: LayoutName): Press[] | null {
  const layout = layoutOf(name);
  const keys: Press[] = [];
  for (const character of text) {
    if (character === ' ') keys.push({ code: 'Space', level: 'plain' });
    else if (character === '\u001d') keys.push({ code: 'BracketRight', level: 'plain', ctrl: true });
    else {
      const found = keyFor(character, layout);
      if (!found) return null;
      keys.push(found.press);
      // a dead key writes itself only before a space
      if (found.dead) keys.push({ code: 'Space', level: 'plain' });
    }
  }
  return keys;
}

function keyFor(character: string, layout: Layout): { press: Press; dead: boolean } | null {
  for (const level of ['plain', 'shift', 'altGr'] as const)
    for (const [code, written] of layout[level])
      if (written.character === character && code !== 'IntlBackslash')
        return { press: { code, level }, dead: written.dead };
  for (const level of ['plain', 'shift', 'altGr'] as const) {
    const written = layout[level].get('IntlBackslash');
    if (written?.character === character)
      return { press: { code: 'IntlBackslash', level }, dead: written.dead };
  }
  return null;
}
