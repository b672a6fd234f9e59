/** What is said while a change is tried and approved. */
export const changeWords = {
  mayNotTry: (name: string) =>
    `${name} may not try this change: a theatre manager, a decontamination lead or an administrator may.`,
  notTried: (name: string) =>
    `${name} has not tried this change yet: try it first, so that what it would do has been seen.`,
  draftChanged: 'The draft was changed after it was tried: try it again.',
  basisChanged: 'What is in force changed after it was tried: try it again.',
  triedLongAgo: (minutes: number) =>
    `It was tried more than ${minutes} minutes ago, and the store has moved: try it again.`,
  notProven: 'Approving needs your password or PIN once more, with the words “I approve”.',
  noSuchChange:
    'There is nothing to try: it was approved, withdrawn or discarded meanwhile. Load the page again.',
};
