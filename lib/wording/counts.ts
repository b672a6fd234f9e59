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
  noSuchSet: 'There is no such set.',
};
