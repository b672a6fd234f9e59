import { z } from 'zod';
import { dateWords } from '../documents/edition';
import { failed, ok, type Problem, type Result } from '../identity/result';
import { type PlainDate, plainDate } from '../quantities/plainDate';
import { fieldsOf, type SettingField } from './fields';
import { LOCAL_SETTINGS, parseSetting, type SettingKey, type SettingValue } from './local';

/** A setting as a form holds it: text for numbers and choices, a list for several, true or false for a flag. */
export type SettingEntry = Record<string, string | boolean | string[]>;

/** What bounds a number, in the unit shown. */
export interface ShownBounds {
  min: number | null;
  max: number | null;
}

interface NumberSchema {
  minimum?: number;
  maximum?: number;
  items?: NumberSchema;
  /** Of a number that may be left not stated: the number itself first. */
  anyOf?: NumberSchema[];
}

/** The bounds of each field, read off the schema, so that they are stated in one place. */
export function boundsOf(key: SettingKey): Record<string, ShownBounds> {
  const schema = z.toJSONSchema(LOCAL_SETTINGS[key], { io: 'output' }) as {
    properties?: Record<string, NumberSchema>;
  };
  return Object.fromEntries(
    fieldsOf(key).map(([name, field]) => {
      const own = schema.properties?.[name] ?? {};
      const { minimum, maximum } = (field.kind === 'numbers' ? own.items : (own.anyOf?.[0] ?? own)) ?? {};
      const per = 'per' in field ? field.per : 1;
      return [name, { min: shown(minimum, per), max: shown(maximum, per) }];
    }),
  );
}

const shown = (stored: number | undefined, per: number) => (stored === undefined ? null : tidy(stored / per));

/** `0.2`, not `0.20000000000000001`. */
const tidy = (value: number) => Number(value.toPrecision(12));

/** A setting's value as a form shows it. */
export function entryOf(key: SettingKey, value: Record<string, unknown>): SettingEntry {
  return Object.fromEntries(fieldsOf(key).map(([name, field]) => [name, entryValue(field, value[name])]));
}

function entryValue(field: SettingField, value: unknown): string | boolean | string[] {
  switch (field.kind) {
    case 'flag':
      return value === true;
    case 'choice':
      return String(value);
    case 'several':
      return (value as string[]).map(String);
    case 'number':
      return value === null ? '' : String(tidy((value as number) / field.per));
    case 'numbers':
      return (value as number[]).map((one) => String(tidy(one / field.per))).join('; ');
    case 'dates':
      return (value as string[]).join('\n');
  }
}

/** A value in words, with its unit, as it is read: `7 kg, 10 kg and 11.34 kg`. */
export function valueWords(field: SettingField, value: unknown): string {
  switch (field.kind) {
    case 'flag':
      return value === true ? field.yes : field.no;
    case 'choice':
      return field.choices[String(value)] ?? String(value);
    case 'several': {
      const words = (value as string[]).map((one) => field.choices[one] ?? one);
      return words.length === 0 ? 'none' : words.join(', ');
    }
    case 'number':
      return value === null ? 'not stated' : `${tidy((value as number) / field.per)} ${field.unit}`;
    case 'numbers':
      return (value as number[]).map((one) => `${tidy(one / field.per)} ${field.unit}`).join(', ');
    case 'dates':
      return (value as PlainDate[]).map(dateWords).join(', ') || 'none';
  }
}

/**
 * Reads a form into a setting. Everything that is wrong with it at once, each at its field and in the unit shown; nothing is
 * rounded or left at its default silently.
 */
export function readEntry<K extends SettingKey>(key: K, raw: unknown): Result<SettingValue<K>> {
  if (raw === null || typeof raw !== 'object' || Array.isArray(raw)) {
    return failed({
      path: [],
      code: 'not-a-setting',
      message: 'Send each field of the setting by its name.',
    });
  }
  const given = raw as Record<string, unknown>;
  const fields = fieldsOf(key);
  const bounds = boundsOf(key);
  const problems: Problem[] = Object.keys(given)
    .filter((name) => !fields.some(([known]) => known === name))
    .map((name) => ({ path: [name], code: 'unknown-field', message: `There is no field “${name}”.` }));
  const value: Record<string, unknown> = {};
  for (const [name, field] of fields) {
    const limits = bounds[name] ?? { min: null, max: null };
    const read = readField(field, given[name], limits);
    if (read.ok) value[name] = read.value;
    else problems.push(...read.problems.map((one) => ({ ...one, path: [name] })));
  }
  if (problems.length > 0) return failed(...problems);
  return ok(parseSetting(key, value));
}

const wrong = (code: string, message: string): Result<never> => failed({ path: [], code, message });

function readField(field: SettingField, given: unknown, bounds: ShownBounds): Result<unknown> {
  switch (field.kind) {
    case 'flag':
      return typeof given === 'boolean'
        ? ok(given)
        : wrong('not-stated', `Say whether: ${field.yes}, or ${field.no}.`);
    case 'choice':
      return typeof given === 'string' && Object.hasOwn(field.choices, given)
        ? ok(given)
        : wrong('unknown-choice', `Choose one of: ${Object.values(field.choices).join('; ')}.`);
    case 'several': {
      const all = Array.isArray(given) && given.every((one) => typeof one === 'string');
      if (!all || (given as string[]).some((one) => !Object.hasOwn(field.choices, one)))
        return wrong('unknown-choice', `Choose among: ${Object.values(field.choices).join('; ')}.`);
      return ok(Object.keys(field.choices).filter((one) => (given as string[]).includes(one)));
    }
    case 'number':
      return field.optional && typeof given === 'string' && given.trim() === ''
        ? ok(null)
        : readNumber(field, given, bounds);
    case 'numbers':
      return readNumbers(field, given, bounds);
    case 'dates':
      return readDates(given);
  }
}

function readNumber(
  { unit, per, decimals }: { unit: string; per: number; decimals: number },
  given: unknown,
  { min, max }: ShownBounds,
): Result<number> {
  const text = typeof given === 'string' ? given.trim() : '';
  if (text === '') return wrong('not-stated', `State a number, in ${unit}.`);
  if (!/^\d{1,9}(\.\d{1,9})?$/.test(text))
    return wrong(
      'not-a-number',
      `“${text.slice(0, 30)}” is not a number: write digits, with a point for decimals.`,
    );
  if ((text.split('.')[1]?.length ?? 0) > decimals) {
    return wrong(
      'too-fine',
      decimals === 0 ? `Write whole ${unit}.` : `Write at most ${decimals} decimals, in ${unit}.`,
    );
  }
  const value = Number(text);
  if (min !== null && value < min) return wrong('too-small', `At least ${min} ${unit}.`);
  if (max !== null && value > max) return wrong('too-large', `At most ${max} ${unit}.`);
  const stored = tidy(value * per);
  return ok(per >= 1 ? Math.round(stored) : stored);
}

const MOST_NUMBERS = 6;

function readNumbers(
  field: Extract<SettingField, { kind: 'numbers' }>,
  given: unknown,
  bounds: ShownBounds,
): Result<number[]> {
  const parts = (typeof given === 'string' ? given.split(/[;,]/) : [])
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length === 0) return wrong('not-stated', `State at least one, in ${field.unit}, set apart by ;.`);
  if (parts.length > MOST_NUMBERS) return wrong('too-many', `At most ${MOST_NUMBERS}.`);
  const read = parts.map((part) => readNumber(field, part, bounds));
  const problems = read.flatMap((one, at) =>
    one.ok ? [] : one.problems.map((it) => ({ ...it, message: `${parts[at]}: ${it.message}` })),
  );
  if (problems.length > 0) return { ok: false, problems };
  const numbers = read.flatMap((one) => (one.ok ? [one.value] : []));
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  return sorted.length === numbers.length
    ? ok(sorted)
    : wrong('twice', 'One of them is stated twice: keep one.');
}

const MOST_DATES = 400;

function readDates(given: unknown): Result<PlainDate[]> {
  if (typeof given !== 'string') return wrong('not-stated', 'State the dates, or leave it empty.');
  const parts = given.split(/[\s;,]+/).filter((part) => part !== '');
  if (parts.length > MOST_DATES) return wrong('too-many', `At most ${MOST_DATES}.`);
  const read = parts.map((part) => plainDate.safeParse(part));
  const unread = parts.filter((_, at) => !read[at]?.success);
  if (unread.length > 0) {
    return failed(
      ...unread.slice(0, 5).map((part) => ({
        path: [],
        code: 'not-a-date',
        message: `“${part.slice(0, 30)}” is not a date: write year, month and day, as 2026-12-25.`,
      })),
    );
  }
  const dates = read.flatMap((one) => (one.success ? [one.data] : []));
  const twice = dates.find((date, at) => dates.indexOf(date) !== at);
  return twice === undefined ? ok(dates.sort()) : wrong('twice', `${twice} is stated twice: keep one.`);
}
