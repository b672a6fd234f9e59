import type { MustHaveClass } from '../sets/configuration';

/** The must-have classes, as every screen and sheet says them. */
export const MUST_HAVE_WORDS: Record<MustHaveClass, string> = {
  1: 'stops the step',
  2: 'stops it unless a substitute is there',
  3: 'back-up',
  4: 'convenience',
};

/** What is wrong with a configuration version, and the way out. */
export const configurationWords = {
  noLines: 'A version in force needs at least one line.',
  layerTwice: (layer: number) => `Layer ${layer} is named twice; keep one.`,
  noSuchLayer: (layer: number) => `There is no layer ${layer}; name it, or choose another.`,
  unknownItem: (id: string) => `There is no item ${id} in the catalogue; choose one that is.`,
  notCurrent: (name: string, status: string) => `${name} is ${status}; choose a current item.`,
  minimumAbove: (minimum: number, expected: number) =>
    `The minimum, ${minimum}, is above what is expected, ${expected}.`,
  substituteIsItself: 'An item can’t stand in for itself.',
  substituteTwice: 'This substitute is named twice; keep one.',
  circularSubstitutes: (line: string, substitute: string) =>
    `${line} and ${substitute} stand in for each other in a circle; a substitute stands in one way.`,
  notARack: (name: string) => `${name} is not a rack.`,
  offTheRack: (name: string, rows: number, columns: number) =>
    `${name} has ${rows} rows of ${columns}; this cell is not on it.`,
  rackNotInLayer: (name: string, layer: number) =>
    `${name} does not lie in layer ${layer}; add a line for it there.`,
  slotTaken: (layer: number, row: number, slot: number) =>
    `Layer ${layer}, row ${row}, slot ${slot} is taken by another line.`,
  classTwoWithoutSubstitute: (name: string) =>
    `${name} is of class 2 and names no substitute, so it stops the step like class 1.`,
  mustHaveWithoutMinimum: (name: string) =>
    `${name} is a must-have with a minimum of 0, so it is always met.`,
  massNotStated: (name: string) =>
    `The mass of ${name} is not stated, so the set’s mass can’t be established.`,
  codeForm: 'Two to eight capital letters or digits.',
  nameNeeded: 'A name is needed.',
  nameTooLong: 'At most 80 characters.',
  codeTaken: (code: string, name: string) => `${code} is the code of ${name}; choose another.`,
  notPermitted: (name: string) => `${name} can’t change a configuration.`,
  noSuchVersion: 'There is no such version.',
  frozen: 'A version in force never changes; begin a new draft.',
  changed: 'Somebody else saved this draft meanwhile. Nothing was saved.',
  notABox: (name: string, kind: 'basket' | 'container') => `${name} is no ${kind}; choose one.`,
  lineOfAnother: 'This line belongs to another version; add it again.',
  promiseTwice: (name: string) => `“${name}” is promised twice; give each its own name.`,
  promisedPlateUnknown: (name: string) =>
    `“${name}” names a plate that is not current in the catalogue; take the construct again.`,
  inThePast: (today: string) => `It can be in force from today, ${today}, at the earliest.`,
  outOfUse: (name: string) =>
    `${name} is out of use: two people bring it back before anything of it is changed.`,
  waits: (version: number, from: string) =>
    `Version ${version} is approved and comes into force on ${from}: take its approval back first, or wait.`,
  notWaiting: 'This version does not wait for its day any more. Load the page again.',
  reason: 'Say why in a few words: 8 to 300 characters.',
  askedAlready: 'That was asked for already; it waits for a second person.',
  notAsked: 'Nobody has asked for that, or it was decided meanwhile. Load the page again.',
  askerAgrees: (name: string) => `${name} asked for it: a second person has to agree.`,
  outAlready: (name: string) => `${name} is out of use already.`,
  inUse: (name: string) => `${name} is in use, so there is nothing to bring back.`,
};
