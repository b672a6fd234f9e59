import type { DateFault } from './dates';

/** What an element of a code is to us; `other` is known and of no further use here, `unknown` is not known. */
export const MEANINGS = [
  'gtin',
  'containedGtin',
  'deviceIdentifier',
  'lot',
  'serial',
  'useBy',
  'bestBefore',
  'sellBy',
  'productionDate',
  'packagingDate',
  'dueDate',
  'count',
  'variant',
  'catalogueNumber',
  'logisticUnit',
  'asset',
  'place',
  'measure',
  'donation',
  'person',
  'packLevel',
  'linkCharacter',
  'checkCharacter',
  'internal',
  'other',
  'unknown',
] as const;
export type Meaning = (typeof MEANINGS)[number];

/** One piece of a code. */
export interface Element {
  /** As the standard writes it (`01`, `$$2`, `=>`); `null` where no identifier stands before the value. */
  identifier: string | null;
  name: string;
  /** The characters as they stand in the code. */
  value: string;
  meaning: Meaning;
  /** The value read: a date as `YYYY-MM-DD`, a GTIN of fourteen digits, a count without zeros; `null` if it is faulty. */
  plain: string | null;
  /** Where the value begins in the text as given; the first character is 1. */
  position: number;
}

/** What is wrong, as data; the sentence is made in the wording. */
export type FaultOf =
  | { kind: 'check-digit'; name: string; given: string; due: string }
  | { kind: 'check-character'; given: string; due: string }
  | {
      kind: 'bad-character';
      name: string;
      character: string;
      allowed: 'digits' | 'standard' | 'capitals' | 'base64';
    }
  | { kind: 'too-short'; name: string; given: number; least: number }
  | { kind: 'too-long'; name: string; given: number; most: number; separated: boolean }
  | { kind: 'no-such-date'; name: string; fault: DateFault }
  | { kind: 'no-such-time'; name: string; given: string }
  | { kind: 'not-allowed'; name: string; given: string; due: string }
  | { kind: 'unknown-identifier'; scheme: 'gs1' | 'hibc' | 'iccbba'; given: string }
  | { kind: 'repeated-identifier'; identifier: string; name: string }
  | { kind: 'excluded-pair'; identifier: string; other: string }
  | { kind: 'unclosed-bracket' }
  | { kind: 'stray-text'; given: string }
  | { kind: 'bad-percent-code'; given: string }
  | { kind: 'not-a-key-qualifier'; identifier: string; key: string }
  | { kind: 'bad-form'; what: 'hibcPrimary' | 'hibcSecondary' | 'hibcTooShort' }
  | { kind: 'not-a-gs1-carrier'; carrier: string }
  | { kind: 'nothing-after-mark' };

export type Fault = FaultOf & { position: number };

/** A code as read, with all that is wrong with it. */
export interface Reading {
  elements: Element[];
  faults: Fault[];
}
