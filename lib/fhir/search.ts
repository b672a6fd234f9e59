import { z } from 'zod';
import type { Problem } from '../identity/result';
import { fhirProblemWords as words } from '../wording/fhir';
import { type DateBounds, dateBounds } from './dateBounds';
import { type OfferedType, type ParameterType, parametersOf } from './offered';

/** A value of a token parameter: `system|code`, `|code` (of no system), or `code` of any system. */
export interface Token {
  /** `null`: of any. */
  system: string | null;
  code: string;
}

/** A search as asked, parsed: what stands in several values is any of them, several parameters are all of them. */
export interface Search {
  tokens: Partial<Record<string, Token[]>>;
  strings: Partial<Record<string, string[]>>;
  dates: Partial<Record<string, DateBounds[]>>;
  count: number;
  /** The id after which the page begins; `null`: from the start. */
  after: string | null;
}

export const COUNT_UNLESS_ASKED = 50;
export const MOST_COUNT = 200;
const MOST_VALUES = 100;

/** `_after` is ours: the id that the page before ended with. Clients only ever follow the link that has it. */
export const AFTER = '_after';
/** Said to any FHIR service; only JSON is offered, so they change nothing here. */
const PASSED = new Set(['_format']);

const aCount = z
  .string()
  .regex(/^[1-9]\d{0,2}$/)
  .transform(Number)
  .pipe(z.number().max(MOST_COUNT));

/** The parameters of an address as a search of a type, or everything that is wrong with them. */
export function parseSearch(
  type: OfferedType,
  params: URLSearchParams,
): { ok: true; search: Search } | { ok: false; problems: Problem[] } {
  const known = parametersOf(type);
  const search: Search = { tokens: {}, strings: {}, dates: {}, count: COUNT_UNLESS_ASKED, after: null };
  const problems: Problem[] = [];
  const wrong = (name: string, code: string, message: string) =>
    problems.push({ path: [name], code, message });
  for (const name of new Set(params.keys())) {
    const all = params.getAll(name);
    const [given = ''] = all;
    if (PASSED.has(name)) continue;
    if (all.length > 1 && known[name]?.type !== 'date') {
      wrong(name, 'invalid', words.twice(name));
    } else if (name === '_count') {
      const parsed = aCount.safeParse(given);
      if (parsed.success) search.count = parsed.data;
      else wrong(name, 'value', words.notACount(MOST_COUNT));
    } else if (name === AFTER) {
      search.after = given;
    } else if (name.includes(':')) {
      wrong(name, 'not-supported', words.modifier(name));
    } else if (!Object.hasOwn(known, name)) {
      wrong(name, 'not-supported', words.noSuchParameter(name, [...Object.keys(known), '_count']));
    } else {
      const { type: kind } = known[name] as { type: ParameterType };
      take(search, { name, kind, all }, wrong);
    }
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, search };
}

function take(
  search: Search,
  { name, kind, all }: { name: string; kind: ParameterType; all: readonly string[] },
  wrong: (name: string, code: string, message: string) => void,
): void {
  if (kind === 'date') {
    // a range is given as two of the same parameter, and both must hold
    const bounds = all.map((value) => ({ value, bounds: dateBounds(value) }));
    for (const one of bounds) if (one.bounds === null) wrong(name, 'value', words.notADate(name, one.value));
    search.dates[name] = bounds.flatMap((one) => one.bounds ?? []);
    return;
  }
  const values = splitValues(all[0] ?? '');
  if (values.some((value) => value === '')) wrong(name, 'value', words.emptyValue(name));
  if (values.length > MOST_VALUES) wrong(name, 'too-long', words.tooManyValues(name, MOST_VALUES));
  if (kind === 'string') search.strings[name] = values;
  else search.tokens[name] = values.map(tokenOf);
}

/** Values are parted by commas; `\,`, `\|`, `\$` and `\\` stand for the sign itself (hl7.org/fhir/R5/search.html#escaping). */
function splitValues(text: string): string[] {
  return text.split(/(?<!\\),/).map((part) => part.trim());
}

const unescaped = (text: string) => text.replaceAll(/\\([,|$\\])/g, '$1');

function tokenOf(value: string): Token {
  const at = /(?<!\\)\|/.exec(value)?.index;
  if (at === undefined) return { system: null, code: unescaped(value) };
  return { system: unescaped(value.slice(0, at)), code: unescaped(value.slice(at + 1)) };
}

/** The codes that are asked for of one system, or of any; `null`: nothing is asked of that parameter. */
export function codesIn(tokens: readonly Token[] | undefined, system: string): string[] | null {
  if (tokens === undefined) return null;
  return tokens.filter((token) => token.system === null || token.system === system).map(({ code }) => code);
}
