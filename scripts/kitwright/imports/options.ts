import { ENCODINGS } from '@/lib/lists/decodeText';
import { CannotDo, type Given } from '../command';

/** Everything a file may leave open, as options: what a person would choose on the screen. */
export const IMPORT_OPTIONS = {
  as: { type: 'string' },
  yes: { type: 'boolean' },
  sheet: { type: 'string' },
  encoding: { type: 'string' },
  column: { type: 'string', multiple: true },
  dates: { type: 'string' },
  decimals: { type: 'string' },
  repair: { type: 'string', multiple: true },
  keep: { type: 'string', multiple: true },
  empty: { type: 'string' },
  maker: { type: 'string', multiple: true },
  more: { type: 'string' },
  fewer: { type: 'string' },
  note: { type: 'string' },
  'repeated-hour': { type: 'string' },
  urgency: { type: 'string' },
} as const;

type OptionName = keyof typeof IMPORT_OPTIONS;

/** Refuses options that say nothing about what is brought in, rather than leave them unheard. */
export function onlyThese({ options }: Given, heard: readonly OptionName[]): void {
  const known = new Set<string>(heard);
  const deaf = Object.keys(IMPORT_OPTIONS).filter((name) => options[name] !== undefined && !known.has(name));
  if (deaf.length > 0)
    throw new CannotDo(`${deaf.map((name) => `--${name}`).join(', ')} says nothing of this; leave it out.`);
}

export function text({ options }: Given, name: OptionName): string | null {
  const said = options[name];
  return typeof said === 'string' ? said : null;
}

export function texts({ options }: Given, name: OptionName): string[] {
  const said = options[name];
  return Array.isArray(said) ? said : [];
}

/** One of a few words, or what it stands for where they are typed otherwise than the program calls them. */
export function oneOf<T>(given: Given, name: OptionName, words: Readonly<Record<string, T>>): T | null {
  const said = text(given, name);
  if (said === null) return null;
  const meant = Object.entries(words).find(([word]) => word === said);
  if (!meant) throw new CannotDo(`--${name} is one of ${Object.keys(words).join(', ')}.`);
  return meant[1];
}

export const DATE_ORDERS = { 'day-first': 'dayFirst', 'month-first': 'monthFirst' } as const;
export const ENCODING_NAMES = Object.fromEntries(ENCODINGS.map((one) => [one, one]));

/** `--column code=3`, or `code=none`: which column of the file says what, by the name of ours. */
export function columnsOf<Name extends string>(
  given: Given,
  names: readonly Name[],
): Partial<Record<Name, number | null>> {
  const chosen: Partial<Record<Name, number | null>> = {};
  for (const said of texts(given, 'column')) {
    const [, key = '', number = ''] = /^([^=]+)=(none|[1-9][0-9]{0,3})$/.exec(said) ?? [];
    const name = names.find((one) => one === key);
    if (name === undefined)
      throw new CannotDo(`--column is NAME=NUMBER or NAME=none, the name one of ${names.join(', ')}.`);
    chosen[name] = number === 'none' ? null : Number(number);
  }
  return chosen;
}
