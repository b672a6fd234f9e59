/** What is said of a correction that cannot be taken, and of one that was. */
export const correctionWords = {
  notPermitted: (name: string) =>
    `${name} can’t correct the record: the decontamination lead, the incident lead or an administrator does.`,
  notProven: 'Prove who you are again to say “I correct this record”.',
  noSuchEntry: 'There is no such entry in the ledger.',
  notCorrected: 'This entry is not corrected: correct the entry it speaks of.',
  noSuchValue: 'The entry says nothing there that can be corrected.',
  changed: 'Somebody corrected this meanwhile: it is shown as it stands now.',
  reasonNeeded: 'Say why it is corrected.',
  remarkNeeded: 'Write what is right.',
  same: 'This is what the entry says already.',
  notATime: 'Give a date and a time.',
  notADate: 'Give a date, such as 2026-01-14.',
  inFuture: 'It can’t have been done later than now.',
  afterEntry: 'It was entered before that, so it can’t have been done later.',
  otherKind: 'Give the same kind of value: a number for a number, words for words.',
  notWhole: 'Give a whole number.',
  negative: 'Give none or more.',
  keptBoth:
    'The entry stays as it was written. The correction is an entry of its own; both are shown from now on.',
};
