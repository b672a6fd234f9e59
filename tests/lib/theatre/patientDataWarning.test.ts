import { describe, expect, it } from 'vitest';
import { patientDataWarnings } from '@/lib/theatre/patientDataWarning';

/** 943 476 5919 is the example number of the NHS Data Dictionary (from memory); 9434765918 fails its check digit. */
const cases: { text: string; kinds: string[]; why: string }[] = [
  { text: 'NHS 943 476 5919', kinds: ['nationalNumber'], why: 'a valid national number' },
  { text: 'ring 9434765918', kinds: [], why: 'ten digits that fail the check are no such number' },
  { text: 'DOB 3/4/61', kinds: ['dateOfBirth'], why: 'a date of birth by its name' },
  { text: 'Mabel Thornbury 03/04/1961', kinds: ['dateOfBirth'], why: 'a name beside a date' },
  { text: 'Mrs Thornbury, fell', kinds: ['nameWithTitle'], why: 'a name by its title' },
  { text: 'hospital no 1234567', kinds: ['hospitalNumber'], why: 'a hospital number by its name' },
  { text: 'K1234567', kinds: ['hospitalNumber'], why: 'a letter and seven digits' },
  { text: 'lives at LS1 4AP', kinds: ['postcode'], why: 'a postcode' },
  { text: 'm.thornbury@example.org', kinds: ['email'], why: 'an address' },
  { text: '07700 900123', kinds: ['telephone'], why: 'a telephone number (the range kept for drama)' },
  {
    text: 'As LM-26-7K2P, plate CR-NC35-07, 3.5 mm and 16 mm',
    kinds: [],
    why: 'references, codes and lengths are what notes are for',
  },
  { text: 'Both trays by 08:30 on 14/01/2026 please', kinds: [], why: 'a date alone is a theatre date' },
  { text: 'Poor bone; keep the 6.5 set unopened', kinds: [], why: 'plain words' },
];

describe('text that looks like a patient’s data', () => {
  for (const { text, kinds, why } of cases) {
    it(`${text}: ${why}`, () => expect(patientDataWarnings(text).map(({ kind }) => kind)).toEqual(kinds));
  }
});
