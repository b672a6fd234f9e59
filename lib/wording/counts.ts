/** What can be wrong with a count, and the way out. */
export const countWords = {
  unknownLine: 'This line is not part of the set’s configuration; reload the set.',
  countedTwice: 'This line was counted twice in one count; keep one.',
  conditionNeeded: 'Say what is wrong with the pieces put aside.',
  unsoundNeeded: 'Say how many pieces are in this condition, or choose “sound”.',
  notCounted: (layer: number, row: number, slot: number) =>
    `Layer ${layer}, row ${row}, slot ${slot} was not counted; a layer is counted whole.`,
  sealed: (code: string) => `${code} is sealed. A set is counted on the bench, with its wrap open.`,
  changed: (code: string) => `${code} was changed by someone else since this count began. Nothing was saved.`,
  notPermitted: (name: string) => `${name} can’t enter a count.`,
  notPieces: 'Whole pieces only, from 0 to 999.',
  leftOut: 'Not counted yet; a layer is counted whole.',
  unknownForeign: (id: string) => `There is no item ${id} in the catalogue; choose the foreign piece again.`,
  noSuchSet: 'There is no such set.',
};
