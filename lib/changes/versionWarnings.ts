import type { ItemId } from '../identity/ids';
import type { ConfigurationLine, MustHaveClass } from '../sets/configuration';
import { MUST_HAVE_WORDS } from '../wording/configurations';
import type { VersionWarning } from './trial';

interface Asked {
  expected: number;
  minimum: number;
  mustHaveClass: MustHaveClass;
  substitutes: Set<ItemId>;
}

/**
 * Where a version asks less, or otherwise, of an item than the one before: by item, so that moving a line is none.
 * A back-up taken out, a spare taken out and every change of a must-have class stands by itself; taking a back-up out is
 * a person's decision and is never made for them.
 */
export function versionWarnings(
  before: readonly ConfigurationLine[],
  after: readonly ConfigurationLine[],
  name: (id: ItemId) => string,
): VersionWarning[] {
  const [was, is] = [byItem(before), byItem(after)];
  const ids = [...new Set([...was.keys(), ...is.keys()])];
  return ids.flatMap((itemId): VersionWarning[] => {
    const [old, fresh] = [was.get(itemId), is.get(itemId)];
    if (!old) return [];
    const warn = (kind: VersionWarning['kind'], from: string, to: string): VersionWarning => ({
      kind,
      itemId,
      name: name(itemId),
      before: from,
      after: to,
      mustHaveClass: old.mustHaveClass,
    });
    if (!fresh) {
      if (old.mustHaveClass === 4) return [];
      const kind = old.mustHaveClass === 3 ? 'backUpRemoved' : 'mustHaveRemoved';
      return [warn(kind, `${old.expected} expected, ${classWords(old.mustHaveClass)}`, 'not there')];
    }
    const counts: VersionWarning[] =
      fresh.expected < old.expected && old.mustHaveClass !== 4
        ? [
            warn(
              old.mustHaveClass === 3 ? 'backUpFewer' : 'spareFewer',
              `${old.expected} expected`,
              `${fresh.expected} expected`,
            ),
          ]
        : [];
    const weaker = fresh.mustHaveClass > old.mustHaveClass;
    const classes =
      fresh.mustHaveClass === old.mustHaveClass
        ? []
        : [
            warn(
              weaker ? 'classWeaker' : 'classStronger',
              classWords(old.mustHaveClass),
              classWords(fresh.mustHaveClass),
            ),
          ];
    const minimum =
      fresh.minimum < old.minimum && old.mustHaveClass <= 2
        ? [warn('minimumLower', `minimum ${old.minimum}`, `minimum ${fresh.minimum}`)]
        : [];
    const gone = [...old.substitutes].filter((one) => !fresh.substitutes.has(one)).map(name);
    const added = [...fresh.substitutes].filter((one) => !old.substitutes.has(one)).map(name);
    return [
      ...counts,
      ...classes,
      ...minimum,
      ...(gone.length > 0 ? [warn('substituteRemoved', gone.join(', '), 'no longer a substitute')] : []),
      ...(added.length > 0 ? [warn('substituteAdded', 'no substitute', added.join(', '))] : []),
    ];
  });
}

const classWords = (one: MustHaveClass) => `class ${one}, ${MUST_HAVE_WORDS[one]}`;

/** What all lines of an item ask together; the gravest class speaks for it. */
function byItem(lines: readonly ConfigurationLine[]): Map<ItemId, Asked> {
  const asked = new Map<ItemId, Asked>();
  for (const { itemId, expected, minimum, mustHaveClass, substitutes } of lines) {
    const known = asked.get(itemId);
    if (!known) asked.set(itemId, { expected, minimum, mustHaveClass, substitutes: new Set(substitutes) });
    else {
      known.expected += expected;
      known.minimum += minimum;
      known.mustHaveClass = Math.min(known.mustHaveClass, mustHaveClass) as MustHaveClass;
      for (const one of substitutes) known.substitutes.add(one);
    }
  }
  return asked;
}
