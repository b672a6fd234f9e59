/** Keys that write characters, by their place on the keyboard (`KeyboardEvent.code`), row by row. */
const PLACES = [
  'Backquote Digit1 Digit2 Digit3 Digit4 Digit5 Digit6 Digit7 Digit8 Digit9 Digit0 Minus Equal',
  'KeyQ KeyW KeyE KeyR KeyT KeyY KeyU KeyI KeyO KeyP BracketLeft BracketRight Backslash',
  'KeyA KeyS KeyD KeyF KeyG KeyH KeyJ KeyK KeyL Semicolon Quote',
  'IntlBackslash KeyZ KeyX KeyC KeyV KeyB KeyN KeyM Comma Period Slash',
].map((row) => row.split(' '));

export const LAYOUTS = ['us', 'uk', 'german', 'french', 'swedish'] as const;
/** The keyboard a scanner pretends to be; set in the scanner itself. */
export type LayoutName = (typeof LAYOUTS)[number];

/** What a key writes. A dead key waits for the next one: with a space it writes itself. */
export interface Written {
  character: string;
  dead: boolean;
}
export type Level = 'plain' | 'shift' | 'altGr';
export type Layout = Readonly<Record<Level, ReadonlyMap<string, Written>>>;

interface Drawn {
  /** Four rows of a level, in the order of `PLACES`; a space where a key writes nothing. */
  plain: readonly string[];
  shift: readonly string[];
  altGr: Readonly<Record<string, string>>;
  /** Level and place of the dead keys. */
  dead: readonly `${Level} ${string}`[];
}

// From memory, as the keyboards of these names have them; the tests compare them with the tables of XKB.
const DRAWN: Readonly<Record<LayoutName, Drawn>> = {
  us: {
    plain: ['`1234567890-=', 'qwertyuiop[]\\', "asdfghjkl;'", '\\zxcvbnm,./'],
    shift: ['~!@#$%^&*()_+', 'QWERTYUIOP{}|', 'ASDFGHJKL:"', '|ZXCVBNM<>?'],
    altGr: {},
    dead: [],
  },
  uk: {
    plain: ['`1234567890-=', 'qwertyuiop[]#', "asdfghjkl;'", '\\zxcvbnm,./'],
    shift: ['¬!"£$%^&*()_+', 'QWERTYUIOP{}~', 'ASDFGHJKL:@', '|ZXCVBNM<>?'],
    altGr: { Digit4: '€' },
    dead: [],
  },
  german: {
    plain: ['^1234567890ß´', 'qwertzuiopü+#', 'asdfghjklöä', '<yxcvbnm,.-'],
    shift: ['°!"§$%&/()=?`', "QWERTZUIOPÜ*'", 'ASDFGHJKLÖÄ', '>YXCVBNM;:_'],
    altGr: {
      Digit7: '{',
      Digit8: '[',
      Digit9: ']',
      Digit0: '}',
      Minus: '\\',
      KeyQ: '@',
      KeyE: '€',
      BracketRight: '~',
      IntlBackslash: '|',
    },
    dead: ['plain Backquote', 'plain Equal', 'shift Equal'],
  },
  french: {
    plain: ['²&é"\'(-è_çà)=', 'azertyuiop^$*', 'qsdfghjklmù', '<wxcvbn,;:!'],
    shift: [' 1234567890°+', 'AZERTYUIOP¨£µ', 'QSDFGHJKLM%', '>WXCVBN?./§'],
    altGr: {
      Digit2: '~',
      Digit3: '#',
      Digit4: '{',
      Digit5: '[',
      Digit6: '|',
      Digit7: '`',
      Digit8: '\\',
      Digit9: '^',
      Digit0: '@',
      Minus: ']',
      Equal: '}',
      KeyE: '€',
    },
    dead: ['plain BracketLeft', 'shift BracketLeft', 'altGr Digit2', 'altGr Digit7'],
  },
  swedish: {
    plain: ['§1234567890+´', "qwertyuiopå¨'", 'asdfghjklöä', '<zxcvbnm,.-'],
    shift: ['½!"#¤%&/()=?`', 'QWERTYUIOPÅ^*', 'ASDFGHJKLÖÄ', '>ZXCVBNM;:_'],
    altGr: {
      Digit2: '@',
      Digit4: '$',
      Digit7: '{',
      Digit8: '[',
      Digit9: ']',
      Digit0: '}',
      Minus: '\\',
      KeyE: '€',
      BracketRight: '~',
      IntlBackslash: '|',
    },
    dead: ['plain Equal', 'shift Equal', 'plain BracketRight', 'shift BracketRight', 'altGr BracketRight'],
  },
};

function built({ plain, shift, altGr, dead }: Drawn): Layout {
  const level = (name: Level, pairs: (readonly [string, string])[]) =>
    new Map(
      pairs
        .filter(([, character]) => character.trim() !== '')
        .map(([place, character]) => [
          place,
          { character, dead: dead.includes(`${name} ${place}`) } satisfies Written,
        ]),
    );
  const rows = (drawn: readonly string[]) =>
    PLACES.flatMap((row, at) => row.map((place, key) => [place, drawn[at]?.[key] ?? ''] as const));
  return {
    plain: level('plain', rows(plain)),
    shift: level('shift', rows(shift)),
    altGr: level('altGr', Object.entries(altGr)),
  };
}

const BUILT = new Map<LayoutName, Layout>(LAYOUTS.map((name) => [name, built(DRAWN[name])]));

export function layoutOf(name: LayoutName): Layout {
  const layout = BUILT.get(name);
  if (!layout) throw new Error(`no layout ${name}`);
  return layout;
}

/** The number pad writes the same on all of these, whether Num Lock is on or not. */
export const NUMBER_PAD: ReadonlyMap<string, string> = new Map([
  ...Array.from({ length: 10 }, (_, digit) => [`Numpad${digit}`, String(digit)] as const),
  ['NumpadAdd', '+'],
  ['NumpadSubtract', '-'],
  ['NumpadMultiply', '*'],
  ['NumpadDivide', '/'],
  ['NumpadDecimal', '.'],
]);
