/** What can be wrong with a place, or with moving something there, and the way out. */
export const placeWords = {
  notPermitted: (name: string) => `${name} can’t change places.`,
  mayNotMove: (name: string) => `${name} can’t move pouches.`,
  noSuchPlace: 'There is no such place.',
  noSuchPouch: 'There is no such pouch.',
  nameTaken: (name: string) => `There is a place of this name already: ${name}.`,
  changed: (name: string) => `${name} was changed by someone else. Nothing was saved.`,
  notEmpty: (name: string, sets: number, heaps: number) =>
    `${name} is not empty (${[
      sets === 0 ? null : sets === 1 ? 'one set' : `${sets} sets`,
      heaps === 0 ? null : heaps === 1 ? 'one line of stock' : `${heaps} lines of stock`,
    ]
      .filter((part) => part !== null)
      .join(', ')}): move what lies there first.`,
  outOfUse: (name: string) => `${name} is out of use: choose another place.`,
  notOnAShelf: (number: string) => `${number} lies on no shelf: it is not sterile yet, or it was opened.`,
};
