/** The words that only stand on labels. */
export const labelWords = {
  short: 'SHORT',
  openQuestions: (count: number) =>
    count === 1 ? 'OPEN QUESTION from theatre' : `${count} OPEN QUESTIONS from theatre`,
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

/** Instead of a label that can't be printed: what is wrong, and the way out. */
export const noLabelWords = {
  noPack: {
    title: 'No such pack',
    sentence: 'There is no pack under this address, so there is no label. It may have been mistyped.',
    link: { href: '/sets', words: 'Go to the sets' },
  },
  open: (number: string, id: string) => ({
    title: `${number} is open`,
    sentence: 'A pack that was opened has no label any more. Destroy the ones that are left.',
    link: { href: `/packs/${id}`, words: `See ${number}` },
  }),
  neverPrinted: (number: string, id: string) => ({
    title: `${number} has no label yet`,
    sentence: 'It was packed before labels were counted. Print its first one on its page.',
    link: { href: `/packs/${id}`, words: `See ${number}` },
  }),
};
