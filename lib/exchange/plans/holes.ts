import { draftFromItem, HOLE_FIELDS, holeTexts } from '../../catalogue/form/draft';
import { formName } from '../../catalogue/form/fields';
import { readDraft } from '../../catalogue/form/read';
import type { Item, Plate } from '../../catalogue/item';
import { groupBy } from '../../lists/groupBy';
import { exchangeRules as words } from '../../wording/exchange-rules';
import { type Change, type Planned, type RowOutcome, ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';
import { type CatalogueFacts, codeKey, type ItemWork } from './catalogue';

/** The holes of a plate as rows of cells. */
export const rowsOfHoles = (plate: Plate): Record<string, string>[] =>
  plate.holes.map((hole) => ({ plate: plate.code, ...holeTexts(hole) }));

/** What giving plates the holes of the file would do, plate by plate. */
export function planHoles(
  rows: readonly SettledRow[],
  { items }: Pick<CatalogueFacts, 'items'>,
): Planned<ItemWork> {
  const known = new Map(items.map((one) => [codeKey(one.item.code), one]));
  const outcomes: RowOutcome<ItemWork>[] = [];
  const problems: CellProblem[] = [];
  const plates = groupBy(
    rows.filter(({ cells }) => (cells.plate ?? '') !== ''),
    ({ cells }) => codeKey(cells.plate ?? ''),
  );
  for (const [key, own] of plates) {
    const [first] = own;
    if (!first) continue;
    const code = first.cells.plate ?? '';
    const stands = known.get(key);
    if (stands?.item.kind !== 'plate') {
      const sentence = stands ? words.notAPlate(code) : words.noSuchItem(code);
      problems.push(
        ...own.map(({ row }) =>
          ruleProblem(row, 'plate', stands ? 'not-a-plate' : 'no-such-item', sentence, code),
        ),
      );
      continue;
    }
    const plan = planPlate(own, stands.item, stands.revision);
    problems.push(...plan.problems);
    if (plan.outcome) outcomes.push(plan.outcome);
  }
  return { outcomes, problems };
}

function planPlate(
  rows: readonly SettledRow[],
  plate: Plate,
  revision: number,
): { outcome: RowOutcome<ItemWork> | null; problems: CellProblem[] } {
  const kept = Object.entries(draftFromItem(plate)).filter(([key]) => !key.startsWith('holes.'));
  const draft: Record<string, string> = { ...Object.fromEntries(kept), 'holes.count': String(rows.length) };
  rows.forEach(({ cells }, at) => {
    for (const field of HOLE_FIELDS) draft[`holes.${at}.${field}`] = cells[field] ?? '';
  });
  const read = readDraft('plate', draft, { id: plate.id, status: plate.status });
  if (!read.ok) {
    const problems = read.problems.map(({ path, code, message }) => holeProblem(rows, path, code, message));
    return { outcome: null, problems };
  }
  const changes = holeChanges(plate, read.value);
  return {
    outcome: {
      rows: rows.map(({ row }) => row),
      kind: changes.length > 0 ? 'changed' : 'unchanged',
      name: `${plate.code}, ${plate.name}`,
      id: plate.id,
      revision,
      changes,
      remarks: [],
      work: { kind: 'plate', draft, maker: { id: plate.makerId } },
    },
    problems: [],
  };
}

/** A problem of a plate at the row of its hole; one of the plate itself at its first. */
function holeProblem(
  rows: readonly SettledRow[],
  path: readonly (string | number)[],
  code: string,
  message: string,
): CellProblem {
  const [top, index, field] = path;
  const at = top === 'holes' && typeof index === 'number' ? rows[index] : rows[0];
  const name = top === 'holes' && typeof field === 'string' ? formName(field) : null;
  const column = name !== null && (HOLE_FIELDS as readonly string[]).includes(name) ? name : null;
  return ruleProblem(at?.row ?? 0, column, code, message, column ? at?.cells[column] || null : null);
}

function holeChanges(before: Plate, after: Item): Change[] {
  if (after.kind !== 'plate') return [];
  const was = new Map(before.holes.map((hole) => [hole.id, holeTexts(hole)]));
  const is = new Map(after.holes.map((hole) => [hole.id, holeTexts(hole)]));
  const gone = [...was.keys()].filter((id) => !is.has(id)).map((id) => ({ column: 'id', from: id, to: '' }));
  const changed = [...is].flatMap(([id, now]) => {
    const then = was.get(id);
    if (!then) return [{ column: 'id', from: '', to: id }];
    return HOLE_FIELDS.flatMap((field) =>
      then[field] === now[field] ? [] : [{ column: field, from: then[field], to: now[field], of: id }],
    );
  });
  const order = (holes: Plate['holes']) => holes.map(({ id }) => id).join(' ');
  const all = [...gone, ...changed];
  return all.length > 0 || order(before.holes) === order(after.holes)
    ? all
    : [{ column: 'id', from: order(before.holes), to: order(after.holes) }];
}
