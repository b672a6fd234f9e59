import type { ItemId } from '../identity/ids';
import type { VersionContent } from './checkVersion';
import type { ConfigurationLine } from './configuration';

export type { VersionContent };

/** A line reduced to what people compare: where it lies and what is asked of it. */
export type LineFacts = Omit<ConfigurationLine, 'id'>;

export type LineChange =
  | { kind: 'added'; after: LineFacts }
  | { kind: 'removed'; before: LineFacts }
  | { kind: 'changed'; before: LineFacts; after: LineFacts; fields: ChangedField[] };

export type ChangedField = 'place' | 'rack' | 'expected' | 'minimum' | 'mustHaveClass' | 'substitutes';

export interface VersionDifference {
  lines: LineChange[];
  layers: { layer: number; before: string | null; after: string | null }[];
  promises: { name: string; change: 'added' | 'removed' | 'changed' }[];
  basketOrContainerChanged: boolean;
}

/**
 * What differs between two versions, for setting them side by side. Lines are matched first by item and place, then by
 * item alone (moved); what is left is added or removed. Empty exactly when both hold the same.
 */
export function compareVersions(before: VersionContent, after: VersionContent): VersionDifference {
  const pairs = pairLines(before.lines, after.lines);
  const lines = pairs.flatMap(([was, is]): LineChange[] => {
    if (was && is) {
      const fields = changedFields(was, is);
      return fields.length === 0
        ? []
        : [{ kind: 'changed', before: factsOf(was), after: factsOf(is), fields }];
    }
    if (is) return [{ kind: 'added', after: factsOf(is) }];
    return was ? [{ kind: 'removed', before: factsOf(was) }] : [];
  });
  return {
    lines: lines.sort((a, b) => comparePlaces(placed(a), placed(b))),
    layers: compareLayers(before, after),
    promises: comparePromises(before, after),
    basketOrContainerChanged:
      before.basketItemId !== after.basketItemId || before.containerItemId !== after.containerItemId,
  };
}

type Pair = [ConfigurationLine | undefined, ConfigurationLine | undefined];

function pairLines(before: readonly ConfigurationLine[], after: readonly ConfigurationLine[]): Pair[] {
  const left = new Set(after);
  const pairs: Pair[] = [];
  const waiting: ConfigurationLine[] = [];
  for (const was of before) {
    const same = [...left].find((is) => is.itemId === was.itemId && samePlace(was, is));
    if (same) {
      left.delete(same);
      pairs.push([was, same]);
    } else waiting.push(was);
  }
  for (const was of waiting) {
    const moved = [...left].find((is) => is.itemId === was.itemId);
    if (moved) left.delete(moved);
    pairs.push([was, moved]);
  }
  for (const is of left) pairs.push([undefined, is]);
  return pairs;
}

function changedFields(was: ConfigurationLine, is: ConfigurationLine): ChangedField[] {
  const fields: [ChangedField, boolean][] = [
    ['place', !samePlace(was, is)],
    ['rack', was.rackItemId !== is.rackItemId],
    ['expected', was.expected !== is.expected],
    ['minimum', was.minimum !== is.minimum],
    ['mustHaveClass', was.mustHaveClass !== is.mustHaveClass],
    ['substitutes', !sameItems(was.substitutes, is.substitutes)],
  ];
  return fields.filter(([, differs]) => differs).map(([field]) => field);
}

function compareLayers(before: VersionContent, after: VersionContent): VersionDifference['layers'] {
  const nameIn = (content: VersionContent, layer: number) =>
    content.layers.find((one) => one.layer === layer)?.name ?? null;
  const numbers = [...new Set([...before.layers, ...after.layers].map(({ layer }) => layer))].sort(
    (a, b) => a - b,
  );
  return numbers
    .map((layer) => ({ layer, before: nameIn(before, layer), after: nameIn(after, layer) }))
    .filter((row) => row.before !== row.after);
}

function comparePromises(before: VersionContent, after: VersionContent): VersionDifference['promises'] {
  const names = [...new Set([...before.promises, ...after.promises].map(({ name }) => name))].sort();
  return names.flatMap((name): VersionDifference['promises'] => {
    const was = before.promises.find((one) => one.name === name);
    const is = after.promises.find((one) => one.name === name);
    if (!was) return [{ name, change: 'added' }];
    if (!is) return [{ name, change: 'removed' }];
    return JSON.stringify(was.construct) === JSON.stringify(is.construct)
      ? []
      : [{ name, change: 'changed' }];
  });
}

const samePlace = (a: ConfigurationLine, b: ConfigurationLine) =>
  a.layer === b.layer && a.row === b.row && a.slot === b.slot;

const sameItems = (a: readonly ItemId[], b: readonly ItemId[]) =>
  a.length === b.length && [...a].sort().join() === [...b].sort().join();

const placed = (change: LineChange) => (change.kind === 'removed' ? change.before : change.after);

const comparePlaces = (a: LineFacts, b: LineFacts) => a.layer - b.layer || a.row - b.row || a.slot - b.slot;

function factsOf({ id: _id, ...facts }: ConfigurationLine): LineFacts {
  return facts;
}
