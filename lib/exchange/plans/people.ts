import { comparableName } from '../../people/name';
import type { Role } from '../../people/role';
import { exchangeRules as words } from '../../wording/exchange-rules';
import { type Planned, type RowOutcome, ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';

/** Everyone who works or worked here. */
export interface PeopleFacts {
  people: readonly { id: string; name: string; role: Role; leftAt: string | null }[];
}

export interface PersonWork {
  name: string;
  role: Role;
}

/** What bringing in people would do. Nobody is removed, and no name is taken twice. */
export function planPeople(rows: readonly SettledRow[], { people }: PeopleFacts): Planned<PersonWork> {
  const here = new Map(
    people.flatMap((one) => (one.leftAt === null ? [[comparableName(one.name), one] as const] : [])),
  );
  const gone = new Set(people.flatMap((one) => (one.leftAt === null ? [] : [comparableName(one.name)])));
  const seen = new Map<string, number[]>();
  for (const { row, cells } of rows) {
    const key = comparableName(cells.name ?? '');
    seen.set(key, [...(seen.get(key) ?? []), row]);
  }
  const outcomes: RowOutcome<PersonWork>[] = [];
  const problems: CellProblem[] = [];
  for (const { row, cells } of rows) {
    const name = (cells.name ?? '').normalize('NFC').trim().replace(/\s+/g, ' ');
    const role = cells.role as Role | '';
    if (name === '' || role === '') continue;
    const key = comparableName(name);
    const same = seen.get(key) ?? [];
    const stands = here.get(key);
    if (same.length > 1) problems.push(ruleProblem(row, 'name', 'twice', words.twice(name, same), name));
    else if (name.length < 2 || name.length > 80)
      problems.push(ruleProblem(row, 'name', 'name-length', words.nameLength, name));
    else if (!stands && gone.has(key))
      problems.push(ruleProblem(row, 'name', 'has-left', words.hasLeft(name), name));
    else {
      const differs = stands !== undefined && stands.role !== role;
      outcomes.push({
        rows: [row],
        kind: !stands ? 'new' : differs ? 'changed' : 'unchanged',
        name: stands?.name ?? name,
        id: stands?.id ?? null,
        revision: null,
        changes: differs ? [{ column: 'role', from: stands.role, to: role }] : [],
        remarks: [],
        work: { name, role },
      });
    }
  }
  return { outcomes, problems: [...problems, ...administratorsGone(outcomes, [...here.values()])] };
}

/** Somebody must be able to name others: the last administrator keeps the role, unless the list names another. */
function administratorsGone(
  outcomes: readonly RowOutcome<PersonWork>[],
  here: readonly { id: string; role: Role }[],
): CellProblem[] {
  const changed = new Map(outcomes.map((one) => [one.id, one.work.role]));
  const before = here.filter(({ role }) => role === 'administrator');
  const after =
    here.filter(({ id, role }) => (changed.get(id) ?? role) === 'administrator').length +
    outcomes.filter(({ id, work }) => id === null && work.role === 'administrator').length;
  if (before.length === 0 || after > 0) return [];
  return outcomes
    .filter(({ id, kind }) => kind === 'changed' && before.some((one) => one.id === id))
    .map(({ rows }) => ruleProblem(rows[0] ?? 0, 'role', 'last-administrator', words.lastAdministrator));
}
