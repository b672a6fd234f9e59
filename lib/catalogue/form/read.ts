import type { Problem, Result } from '../../identity/result';
import { checkItem } from '../check';
import { type Hole, hole } from '../hole';
import { type Item, type ItemKind, item as itemSchema } from '../item';
import { fieldsOf, type ItemDraft } from './draft';
import { type Reading, readValue } from './readValue';

/**
 * Reads a form into an item. All that is wrong comes back at once, each problem with its path in the item: what can't be
 * read, what its field does not allow, and what does not go together (`checkItem`).
 *
 * @param fixed what the form does not decide: id and status
 */
export function readDraft(
  kind: ItemKind,
  draft: ItemDraft,
  fixed: { id: string; status: Item['status'] },
): Result<Item> {
  const reading: Reading = { draft, problems: [] };
  const raw: Record<string, unknown> = { kind, ...fixed };
  for (const field of fieldsOf(kind)) raw[field.key] = readValue(field, reading);
  const { value, problems } = parseAll(raw, reading.problems);
  const rest = withoutFaults(raw, problems);
  const lenient = value ?? parseAll(rest.raw, []).value;
  const unread = new Set(problems.map(({ path }) => path.join('.')));
  const found = lenient
    ? checkItem(lenient).map((problem) => (value ? problem : atItsHole(problem, rest.holes)))
    : [];
  const together = found.filter(({ path }) => !unread.has(path.join('.')));
  const all = [...problems, ...together];
  return all.length === 0 && value ? { ok: true, value } : { ok: false, problems: all };
}

/**
 * What a half-typed form already says of the thing, for drawing it: what can't be read counts as not stated. `null` while
 * not even that makes an item.
 */
export function sketchDraft(kind: ItemKind, draft: ItemDraft): Item | null {
  const reading: Reading = { draft, problems: [] };
  const raw: Record<string, unknown> = { kind, id: 'item_sketch', status: 'current' };
  for (const field of fieldsOf(kind)) raw[field.key] = readValue(field, reading);
  Object.assign(raw, {
    code: 'sketch',
    name: 'sketch',
    makerId: 'maker_sketch',
    use: 'singleUse',
    gtin: null,
    nickname: null,
  });
  if (kind === 'screw') raw.screwFamily = 'sketch';
  const { value, problems } = parseAll(raw, []);
  return value ?? parseAll(withoutFaults(raw, problems).raw, []).value;
}

/**
 * The holes of a half-typed form that can be drawn, each with its place in the form. A hole needs a place and a class; an
 * id that is not one yet is drawn as it is typed.
 */
export function sketchHoles(draft: ItemDraft): { index: number; hole: Hole }[] {
  const raw = readValue({ entry: 'holes', key: 'holes', label: '' }, { draft, problems: [] }) as Record<
    string,
    unknown
  >[];
  return raw.slice(0, 60).flatMap((fields, index) => {
    const { id, ...place } = fields;
    const parsed = hole.safeParse({ ...place, id: 'S1' });
    const rest = parsed.success
      ? parsed
      : hole.safeParse({ ...withoutUnread(place, parsed.error), id: 'S1' });
    return rest.success ? [{ index, hole: { ...rest.data, id: String(id) || '?' } }] : [];
  });
}

function withoutUnread(
  fields: Record<string, unknown>,
  error: { issues: readonly { path: readonly PropertyKey[] }[] },
) {
  const bad = new Set(error.issues.map(({ path }) => String(path[0])));
  return Object.fromEntries(
    Object.entries(fields).map(([key, value]) => [
      key,
      bad.has(key) && NULLABLE_IN_HOLE.has(key) ? null : value,
    ]),
  );
}

/** Parses, and puts what the schema finds behind what could not be read, never twice at one path. */
function parseAll(
  raw: Record<string, unknown>,
  before: readonly Problem[],
): { value: Item | null; problems: Problem[] } {
  const parsed = itemSchema.safeParse(raw);
  if (parsed.success) return { value: before.length === 0 ? parsed.data : null, problems: [...before] };
  const known = new Set(before.map(({ path }) => path.join('.')));
  // one word a field: a code that is empty is not also badly spelt
  const first = (key: string) => !known.has(key) && known.add(key) !== undefined;
  const found = parsed.error.issues
    .map((issue): Problem => {
      const path = issue.path.map((key) => (typeof key === 'number' ? key : String(key)));
      return { path, code: issue.code.replaceAll('_', '-'), message: inPlainWords(issue, path) };
    })
    .filter(({ path }) => first(path.join('.')));
  return { value: null, problems: [...before, ...found] };
}

function inPlainWords(
  issue: { code: string; message: string; input?: unknown },
  path: readonly (string | number)[],
): string {
  if (issue.code === 'invalid_value' || issue.code === 'invalid_union') return 'Choose one of the list.';
  if (issue.code === 'invalid_type') return 'This is needed.';
  if (path.at(-1) === 'makerId') return 'Choose the maker.';
  if (issue.message.startsWith('Too small: expected string')) return 'This is needed.';
  return `${issue.message.charAt(0).toUpperCase()}${issue.message.slice(1)}.`;
}

/**
 * The raw item with everything faulty replaced by "not stated" or, where that is not allowed, by something harmless.
 * `holes` says which of its holes are still there.
 */
function withoutFaults(
  raw: Record<string, unknown>,
  problems: readonly Problem[],
): { raw: Record<string, unknown>; holes: number[] } {
  const copy = structuredClone(raw);
  const harmless: Record<string, unknown> = {
    code: 'x',
    name: 'x',
    makerId: 'maker_x',
    use: 'singleUse',
    packMultiple: 1,
    partsPerPiece: 1,
    screwFamily: 'x',
    shape: 'anatomic',
    screwKind: 'cannulated',
    form: copy.kind === 'drillSleeve' ? 'insert' : 'straight',
    rows: 1,
    columns: 1,
    takesThreadsUm: [],
    ends: [
      { boreUm: null, outerUm: null, outerForm: null, seatsOn: null, positions: null, lockingFamily: null },
    ],
    holes: [],
    fixedHandle: false,
  };
  const faultyHoles = new Set<number>();
  for (const { path } of problems) {
    const [top, index, field] = path;
    if (top === undefined) continue;
    if (top === 'holes' && typeof index === 'number') {
      const hole = (copy.holes as Record<string, unknown>[])[index];
      if (hole && typeof field === 'string' && NULLABLE_IN_HOLE.has(field)) hole[field] = null;
      else if (hole && (field === 'tiltAlongDegrees' || field === 'tiltAcrossDegrees')) hole[field] = 0;
      else faultyHoles.add(index);
    } else if (top === 'ends' && typeof index === 'number' && typeof field === 'string') {
      const end = (copy.ends as Record<string, unknown>[])[index];
      if (end) end[field] = null;
    } else copy[String(top)] = String(top) in harmless ? harmless[String(top)] : null;
  }
  const all = Array.isArray(copy.holes) ? copy.holes : [];
  const holes = [...all.keys()].filter((index) => !faultyHoles.has(index));
  if (Array.isArray(copy.holes)) copy.holes = holes.map((index) => all[index]);
  return { raw: copy, holes };
}

/** A problem of a hole among those that could be read, with the hole's place among all of them. */
function atItsHole(problem: Problem, holes: readonly number[]): Problem {
  const [top, index, ...more] = problem.path;
  if (top !== 'holes' || typeof index !== 'number') return problem;
  return { ...problem, path: [top, holes[index] ?? index, ...more] };
}

const NULLABLE_IN_HOLE = new Set([
  'openingUm',
  'seatUm',
  'plainSeat',
  'slotUm',
  'lockingFamily',
  'lockingConeDegrees',
]);
