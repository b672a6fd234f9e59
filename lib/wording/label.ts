/** The words that only stand on labels. */
export const labelWords = {
  short: 'SHORT',
  shortFor: (reference: string) => `SHORT, for ${reference} only`,
  more: (count: number, shown: number) =>
    shown === 0 ? 'What it stops: scan the code.' : `And ${count} more: scan the code.`,
  stopsNothing: 'Stops no promised construct.',
  shortOf: (pieces: string) => `Short: ${pieces}.`,
  travels: (pouches: string) => `With it: ${pouches}.`,
  packedAt: (moment: string) => `Packed ${moment}`,
  packedBy: (name: string) => `by ${name}`,
  copy: (copy: number) => `copy ${copy}`,
  lot: (lot: string) => `lot ${lot}`,
  followsVersion: (version: number) => `version ${version}`,
  notSterile: 'NOT STERILE until its load is accepted',
  notSterileYet: 'NOT STERILE until accepted',
  goodThrough: (date: string) => `Sterile, use-by ${date}`,
  eventRelated: 'Sterile while whole and dry: no use-by',
  undecided: 'Sterile: use-by not stated',
};
