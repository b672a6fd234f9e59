import type { ItemId } from '../identity/ids';
import type { ChangedField, LineChange, LineFacts, VersionDifference } from '../sets/compareVersions';
import { MUST_HAVE_WORDS } from './configurations';

/** One row of two versions set side by side. */
export interface ChangeRow {
  about: string;
  before: string | null;
  after: string | null;
}

/** What differs between two versions, in words, ready to be set side by side. */
export function versionChangeRows(difference: VersionDifference, name: (id: ItemId) => string): ChangeRow[] {
  return [
    ...difference.layers.map(({ layer, before, after }) => ({ about: `Layer ${layer}`, before, after })),
    ...difference.lines.map((change) => lineRow(change, name)),
    ...difference.promises.map(({ name: promise, change }) => ({
      about: `Promised: ${promise}`,
      before: change === 'added' ? null : 'promised',
      after: change === 'removed' ? null : change === 'changed' ? 'promised, stated otherwise' : 'promised',
    })),
    ...(difference.basketOrContainerChanged
      ? [{ about: 'Basket and container', before: 'as before', after: 'changed' }]
      : []),
  ];
}

function lineRow(change: LineChange, name: (id: ItemId) => string): ChangeRow {
  if (change.kind === 'added')
    return { about: name(change.after.itemId), before: null, after: wholeLine(change.after, name) };
  if (change.kind === 'removed')
    return { about: name(change.before.itemId), before: wholeLine(change.before, name), after: null };
  const { before, after, fields } = change;
  return {
    about: name(after.itemId),
    before: fields.map((field) => fieldWords(field, before, name)).join('; '),
    after: fields.map((field) => fieldWords(field, after, name)).join('; '),
  };
}

const ALL: ChangedField[] = ['expected', 'minimum', 'mustHaveClass', 'substitutes', 'place'];

const wholeLine = (line: LineFacts, name: (id: ItemId) => string): string =>
  ALL.filter((field) => field !== 'substitutes' || line.substitutes.length > 0)
    .map((field) => fieldWords(field, line, name))
    .join('; ');

function fieldWords(field: ChangedField, line: LineFacts, name: (id: ItemId) => string): string {
  switch (field) {
    case 'expected':
      return `${line.expected} expected`;
    case 'minimum':
      return `minimum ${line.minimum}`;
    case 'mustHaveClass':
      return `class ${line.mustHaveClass}, ${MUST_HAVE_WORDS[line.mustHaveClass]}`;
    case 'substitutes':
      return line.substitutes.length === 0
        ? 'no substitute'
        : `substitutes ${line.substitutes.map(name).join(', ')}`;
    case 'place':
      return `layer ${line.layer}, row ${line.row}, slot ${line.slot}`;
    case 'rack':
      return line.rackItemId === null ? 'in no rack' : `in ${name(line.rackItemId)}`;
  }
}
