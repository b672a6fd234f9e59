/** The words of preference cards on paper, and of what a card asks for beside a kit. */
export const cardPaperWords = {
  asked: 'Asked for by the preference card',
  askedBy: (surgeon: string, procedure: string, version: number) =>
    `${surgeon}, ${procedure}, version ${version}; what is not there holds nothing up`,
  newer: (version: number, newest: number) =>
    `The card has version ${newest} by now; this case was booked by version ${version}.`,
  caption: 'What the preference card asks for beside the plan',
  columns: {
    tick: 'Done',
    quantity: 'Quantity',
    item: 'Item, and the surgeon’s note',
    where: 'Where it is',
    initials: 'Initials',
  },
  inOpened: (code: string, pieces: number) => `${code}, opened anyway: ${pieces}`,
  inPack: (form: string, pieces: number, place: string, lot: string, useBy: string) =>
    `${place}: ${pieces} in ${form}, ${lot}, ${useBy}`,
  inClosed: (codes: string) => `also in ${codes}, not opened for this plan`,
  lacking: (pieces: number) => `${pieces} not to be had`,

  facts: {
    surgeon: 'Surgeon',
    procedure: 'Procedure',
    region: 'Region',
    version: 'Version',
    saved: 'Saved',
    used: 'Cases booked by it',
  },
  retiredWord: 'RETIRED',
  retired: 'This card is no longer in use: it is printed for the record.',
  starts: 'Saved starts',
  startsNote: 'the surgeon chooses one, or states another plan',
  startsCaption: 'Saved starts named by the card, and what the sets in store can build of each',
  startColumns: { name: 'Start', states: 'What it states', today: 'From what is in store' },
  startVersion: (version: number) => `version ${version}`,
  startRetired: 'retired',
  noStarts: 'The card names no saved start: the plan is stated for each case.',
  extras: 'Beside the plan',
  extrasCaption: 'Instruments and consumables wanted beside what the plan makes necessary',
  extraColumns: { tick: 'Done', quantity: 'Quantity', drawing: 'Drawing', item: 'Item', note: 'Note' },
  noExtras: 'Nothing is asked for beside what the plan makes necessary.',
  note: 'Note',
  caution: 'A card states wishes. It is no plan: implants are stated by the operating surgeon for each case.',
};
