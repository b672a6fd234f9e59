import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { Problem } from '../identity/result';
import { configurationWords as words } from '../wording/configurations';
import type { ConfigurationLine, ConfigurationVersion } from './configuration';

/** What the check looks at: a version's own content, whatever its state. */
export type VersionContent = Pick<
  ConfigurationVersion,
  'layers' | 'lines' | 'promises' | 'basketItemId' | 'containerItemId'
>;

/**
 * Everything that keeps a version from being put in force, each with its path. A draft may be saved with any of
 * it; a version in force has none. The order of lines never matters to what is found.
 */
export function checkVersion(content: VersionContent, items: ReadonlyMap<ItemId, Item>): Problem[] {
  return [
    ...checkLayers(content),
    ...content.lines.flatMap((line, at) => checkLine(line, at, content, items)),
    ...checkSharedSlots(content.lines),
    ...checkCircles(content.lines, items),
    ...checkBoxes(content, items),
    ...checkPromises(content, items),
    ...(content.lines.length === 0 ? [problem(['lines'], 'empty', words.noLines)] : []),
  ];
}

/** Faults the database itself would refuse, or that would point at nothing: not even a draft is saved with them. */
export const NEVER_SAVED: ReadonlySet<string> = new Set([
  'unknown-item',
  'taken',
  'above-expected',
  'itself',
  'circular',
  'duplicate',
]);

/** Worth a second look before a version is put in force; none of it prevents that. */
export function remarksOnVersion(content: VersionContent, items: ReadonlyMap<ItemId, Item>): Problem[] {
  return content.lines.flatMap((line, at): Problem[] => {
    const name = nameOf(line.itemId, items);
    return [
      ...(line.mustHaveClass === 2 && line.substitutes.length === 0
        ? [problem(['lines', at, 'substitutes'], 'no-substitute', words.classTwoWithoutSubstitute(name))]
        : []),
      ...(line.mustHaveClass <= 2 && line.minimum === 0
        ? [problem(['lines', at, 'minimum'], 'minimum-zero', words.mustHaveWithoutMinimum(name))]
        : []),
      ...(items.get(line.itemId)?.massGrams === null
        ? [problem(['lines', at, 'itemId'], 'mass-not-stated', words.massNotStated(name))]
        : []),
    ];
  });
}

function checkBoxes(content: VersionContent, items: ReadonlyMap<ItemId, Item>): Problem[] {
  return (['basket', 'container'] as const).flatMap((kind) => {
    const field = `${kind}ItemId` as const;
    const id = content[field];
    if (id === null) return [];
    const box = items.get(id);
    if (!box) return [problem([field], 'unknown-item', words.unknownItem(id))];
    return box.kind === kind ? [] : [problem([field], 'not-a-box', words.notABox(box.name, kind))];
  });
}

function checkPromises({ promises }: VersionContent, items: ReadonlyMap<ItemId, Item>): Problem[] {
  const seen = new Set<string>();
  return promises.flatMap(({ name, construct }, at) => {
    const again = seen.has(name);
    seen.add(name);
    const gone = construct.plates.some(({ plateItemId }) => {
      const plate = items.get(plateItemId);
      return plate?.kind !== 'plate' || plate.status !== 'current';
    });
    return [
      ...(again ? [problem(['promises', at, 'name'], 'promised-twice', words.promiseTwice(name))] : []),
      ...(gone
        ? [problem(['promises', at, 'name'], 'promised-plate', words.promisedPlateUnknown(name))]
        : []),
    ];
  });
}

function checkLayers({ layers, lines }: VersionContent): Problem[] {
  const seen = new Set<number>();
  const twice = layers.flatMap(({ layer }, at) => {
    const again = seen.has(layer);
    seen.add(layer);
    return again ? [problem(['layers', at, 'layer'], 'duplicate', words.layerTwice(layer))] : [];
  });
  const unnamed = lines.flatMap((line, at) =>
    seen.has(line.layer)
      ? []
      : [problem(['lines', at, 'layer'], 'no-such-layer', words.noSuchLayer(line.layer))],
  );
  return [...twice, ...unnamed];
}

function checkLine(
  line: ConfigurationLine,
  at: number,
  content: VersionContent,
  items: ReadonlyMap<ItemId, Item>,
): Problem[] {
  const problems: Problem[] = [];
  const add = (field: string | number | (string | number)[], code: string, message: string) =>
    problems.push(problem(['lines', at, ...[field].flat()], code, message));
  const item = items.get(line.itemId);
  if (!item) add('itemId', 'unknown-item', words.unknownItem(line.itemId));
  else if (item.status !== 'current') add('itemId', 'not-current', words.notCurrent(item.name, item.status));
  if (line.minimum > line.expected)
    add('minimum', 'above-expected', words.minimumAbove(line.minimum, line.expected));
  line.substitutes.forEach((substitute, place) => {
    const other = items.get(substitute);
    if (substitute === line.itemId) add(['substitutes', place], 'itself', words.substituteIsItself);
    else if (!other) add(['substitutes', place], 'unknown-item', words.unknownItem(substitute));
    else if (other.status !== 'current')
      add(['substitutes', place], 'not-current', words.notCurrent(other.name, other.status));
    if (line.substitutes.indexOf(substitute) !== place)
      add(['substitutes', place], 'duplicate', words.substituteTwice);
  });
  if (line.rackItemId !== null) {
    const rack = items.get(line.rackItemId);
    if (rack?.kind !== 'rack')
      add('rackItemId', 'not-a-rack', words.notARack(nameOf(line.rackItemId, items)));
    else if (line.slot > rack.columns)
      add('slot', 'off-the-rack', words.offTheRack(rack.name, rack.rows, rack.columns));
    if (!content.lines.some((other) => other.itemId === line.rackItemId && other.layer === line.layer)) {
      add(
        'rackItemId',
        'rack-not-in-layer',
        words.rackNotInLayer(nameOf(line.rackItemId, items), line.layer),
      );
    }
  }
  return problems;
}

function checkSharedSlots(lines: readonly ConfigurationLine[]): Problem[] {
  const taken = new Map<string, number>();
  return lines.flatMap((line, at) => {
    const place = `${line.layer}/${line.row}/${line.slot}`;
    const first = taken.get(place);
    if (first === undefined) {
      taken.set(place, at);
      return [];
    }
    return [problem(['lines', at, 'slot'], 'taken', words.slotTaken(line.layer, line.row, line.slot))];
  });
}

/** A substitute stands in one way. Where following them comes back to where it began, nobody knows which one leads. */
function checkCircles(lines: readonly ConfigurationLine[], items: ReadonlyMap<ItemId, Item>): Problem[] {
  const next = new Map<ItemId, Set<ItemId>>();
  for (const { itemId, substitutes } of lines) {
    const known = next.get(itemId) ?? new Set<ItemId>();
    for (const substitute of substitutes) if (substitute !== itemId) known.add(substitute);
    next.set(itemId, known);
  }
  return lines.flatMap((line, at) =>
    line.substitutes.flatMap((substitute, place) =>
      substitute !== line.itemId && reaches(substitute, line.itemId, next)
        ? [
            problem(
              ['lines', at, 'substitutes', place],
              'circular',
              words.circularSubstitutes(nameOf(line.itemId, items), nameOf(substitute, items)),
            ),
          ]
        : [],
    ),
  );
}

function reaches(from: ItemId, to: ItemId, next: ReadonlyMap<ItemId, ReadonlySet<ItemId>>): boolean {
  const waiting = [from];
  const seen = new Set<ItemId>();
  for (let one = waiting.pop(); one !== undefined; one = waiting.pop()) {
    if (one === to) return true;
    if (seen.has(one)) continue;
    seen.add(one);
    waiting.push(...(next.get(one) ?? []));
  }
  return false;
}

const nameOf = (id: ItemId, items: ReadonlyMap<ItemId, Item>) => items.get(id)?.name ?? id;
const problem = (path: (string | number)[], code: string, message: string): Problem => ({
  path,
  code,
  message,
});
