import type { Item } from '../catalogue/item';

/** The words of what is given to other systems in FHIR. */

/** Every dimension some kind of item has: what ends in `Um` and is one length. */
type DimensionOf<I> = I extends unknown
  ? { [K in keyof I & `${string}Um`]: I[K] extends number | null ? K : never }[keyof I & `${string}Um`]
  : never;
export type Dimension = DimensionOf<Item>;

export const DIMENSION_WORDS: Record<Dimension, string> = {
  lengthUm: 'length',
  widthUm: 'width',
  heightUm: 'height',
  headWidthUm: 'width of the head',
  thicknessUm: 'thickness',
  threadUm: 'thread diameter',
  coreUm: 'core diameter',
  shaftUm: 'shaft diameter',
  threadLengthUm: 'thread length',
  pitchUm: 'pitch',
  headUm: 'head diameter',
  cannulationUm: 'cannulation diameter',
  innerUm: 'inner diameter',
  outerUm: 'outer diameter',
  diameterUm: 'diameter',
  pinUm: 'pin diameter',
  fromUm: 'measures from',
  toUm: 'measures to',
  hookUm: 'width of the hook',
  takesThicknessUm: 'takes a thickness up to',
  takesWidthUm: 'takes a width up to',
  forThreadUm: 'for thread diameter',
};

export const propertyWords = {
  mass: 'mass',
  torque: 'torque',
  side: 'side',
  suppliedSterile: 'supplied sterile',
  use: 'use',
  reprocessingLimit: 'reprocessing cycles the maker allows',
  partsPerPiece: 'parts per piece',
  standing: 'standing in the catalogue',
  form: 'form',
  owner: 'owner',
} as const;

export const fhirWords = {
  set: 'instrument set',
  loanSet: 'instrument set on loan',
  setConfiguration: 'configuration of an instrument set',
  piecesOf: 'pieces of the item in this heap',
  unsound: 'unsound, not counted as found',
  openedNotImplanted: 'opened, not implanted',
  damaged: 'dropped or damaged',
  discarded: 'discarded',
  order: (number: string) => `order ${number}`,
  case: (reference: string) => `case ${reference}`,
} as const;

/** What is wrong with a request, in sentences. */
export const fhirProblemWords = {
  noSuchType: (type: string) =>
    `“${type}” is not offered. Offered are the types that the capability statement lists (metadata).`,
  noSuchResource: (type: string, id: string) => `There is no ${type} with the id “${id}”.`,
  noSuchParameter: (name: string, known: readonly string[]) =>
    `“${name}” is no search parameter of this type, and a filter that is passed over would answer another question. Known are ${known.join(', ')}.`,
  modifier: (name: string) =>
    `“${name}” has a modifier, and none is offered. Leave out what follows the colon.`,
  twice: (name: string) =>
    `“${name}” stands more than once. Give it once; several values are parted by commas.`,
  emptyValue: (name: string) => `“${name}” has no value.`,
  tooManyValues: (name: string, most: number) => `“${name}” has more than ${most} values.`,
  notACount: (most: number) => `“_count” is a whole number from 1 to ${most}.`,
  notADate: (name: string, value: string) =>
    `“${value}” is no date for “${name}”. Write a year, a month, a day or an instant, such as ge2026-01-14, with eq, ge, gt, le or lt before it.`,
  notAnId: (value: string) => `“${value}” is no id of this service.`,
  notANext: 'The address of the next page is not one that this service gave.',
  noSuchInteraction:
    'There is nothing at this address. What the service does, its capability statement says (metadata).',
  onlyJson: 'Only JSON is offered: ask for application/fhir+json.',
  notExported: (value: string) => `“${value}” is no format of the export: ndjson or collection.`,
  oneTypeALine: 'A file with one resource a line holds one type: name it with _type.',
} as const;

export const capabilityWords = {
  title: 'Kitwright: devices, stock and supply of a theatre sterile service',
  description:
    'Read and search of the catalogue, sets, shelf stock, counts, requests, deliveries and the use of devices. No patient is kept, so none is given.',
  security:
    'A session of the program. Everybody who is signed in may read; the export is the theatre manager’s.',
  paging:
    'Pages are followed by the link “next”. A parameter that is not listed is refused and never passed over.',
  _id: 'The id of the resource.',
  _count: 'At most so many resources a page.',
  _lastUpdated: 'When the resource was last changed.',
} as const;
