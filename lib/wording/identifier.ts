import type { WorkingStep } from '@/lib/calculations/calculation';
import type { DateFault } from '@/lib/calculations/identifier/dates';
import type { Identified } from '@/lib/calculations/identifier/identify';
import type { Fault, FaultOf } from '@/lib/calculations/identifier/reading';
import type { IdentifierInput, Scheme } from '@/lib/calculations/identifier/schema';
import type { CalculationWords } from './calculations';
import { countWord, listWords } from './numbers';

/** What `identifier` says of itself. */
export const identifierWords: CalculationWords = {
  title: 'Identifier',
  question: 'What does this scanned or typed code say, and is anything wrong with it?',
  formula: [
    'GS1 check digit = what brings Σ digit × (3, 1, 3, … from the right) to the next multiple of ten',
    'HIBC check character = Σ character values mod 43',
    'Year of two figures: d = YY − current YY; d ≥ 51 is the previous century, d ≤ −50 the next, otherwise this one',
    'Day 00 of a GS1 date = the last day of the month',
    'Without separators: every way to cut the text into sound elements; one way is the reading, several are none',
  ],
  assumptions: [
    'Digits with no mark of GS1 are taken for a GS1 code only where a key’s check digit matches; one wrong number in ten matches by chance, so look among your own codes first.',
    'Codes of countries, currencies and coupons are checked for length and characters, not against their lists.',
    'HIBC and GS1 give years of two figures their century in the same way (for HIBC: common practice, no source).',
    'A compressed Digital Link and the older names in place of numbers (gtin, lot) are kept as text.',
    'A GSRN of a recipient names a person: it is read, and is not to be stored.',
  ],
  sources: [
    { text: 'GS1 General Specifications: application identifiers, check digits, dates, character sets' },
    { text: 'GS1 Digital Link Standard: URI syntax', fromMemory: true },
    { text: 'ISO/IEC 15424: symbology identifiers', fromMemory: true },
    { text: 'ANSI/HIBC 2: supplier labelling', fromMemory: true },
    { text: 'FDA, UDI formats by FDA-accredited issuing agency, version 1.3 (2017)' },
  ],
};

const SCHEME_WORDS: Record<Scheme, string> = {
  gs1ElementString: 'GS1 element string',
  gs1DigitalLink: 'GS1 Digital Link',
  gs1Key: 'GS1 key',
  hibc: 'HIBC code',
  iccbba: 'ICCBBA code (ISBT 128)',
  unknown: 'Unknown code',
};

export const schemeWord = (scheme: Scheme): string => SCHEME_WORDS[scheme];

/** The whole code in one sentence. */
export function identifiedSentence({
  scheme,
  state,
  elements,
  faults,
  readings,
  complete,
}: Identified): string {
  const word = schemeWord(scheme);
  switch (state) {
    case 'read':
      return `${word}: ${listWords(
        elements
          .filter(({ meaning }) => meaning !== 'checkCharacter' && meaning !== 'packLevel')
          .map(({ name, plain, value }) => `${name} ${plain ?? value}`),
      )}.`;
    case 'faulty':
      return `${word} with ${faults.length === 1 ? 'one fault' : `${countWord(faults.length)} faults`}: do not use it; scan it again, or check the label.`;
    case 'ambiguous':
      return `${word} without separators: it can be read in ${complete ? countWord(readings.length) : `more than ${countWord(Math.max(1, readings.length - 1))}`} ways, so it is not read.`;
    case 'unknown':
      return 'Not a code of a scheme known here: kept as text.';
  }
}

export const missingSeparators = ({ readings, complete }: Identified): string =>
  `where the separators stood: the code can be cut in ${complete ? countWord(readings.length) : 'many'} ways. Set the scanner to send separators, or type the code with its brackets`;

const ALLOWED: Record<(FaultOf & { kind: 'bad-character' })['allowed'], string> = {
  digits: 'only digits are allowed',
  standard: 'it is not among the characters GS1 allows there',
  capitals: 'only capitals, digits and the marks of the scheme are allowed',
  base64: 'only letters, digits, - and _ are allowed',
};

/** What is wrong and where, as one sentence. */
export function faultSentence(fault: Fault): string {
  return `Character ${fault.position}: ${faultWords(fault)}`;
}

function faultWords(fault: Fault): string {
  switch (fault.kind) {
    case 'check-digit':
      return `the check digit of ${fault.name} is ${fault.given} but should be ${fault.due}: a digit is wrong, or two are swapped.`;
    case 'check-character':
      return `the check character is “${fault.given}” but should be “${fault.due}”: a character is wrong or missing.`;
    case 'bad-character':
      return `“${visible(fault.character)}” in ${fault.name}: ${ALLOWED[fault.allowed]}.`;
    case 'too-short':
      return fault.given === 0
        ? `${fault.name} is empty.`
        : `${fault.name} has ${fault.given} characters; it needs ${fault.least}.`;
    case 'too-long':
      return `${fault.name} goes on after ${fault.most} characters, which is the most it can have (it has ${fault.given})${fault.separated ? '' : ': a separator may be missing here'}.`;
    case 'no-such-date':
      return `${fault.name}: ${dateWords(fault.fault)}.`;
    case 'no-such-time':
      return `${fault.name}: there is no time ${fault.given}.`;
    case 'not-allowed':
      return `${fault.name}: “${fault.given}” stands where ${fault.due} must stand.`;
    case 'unknown-identifier':
      return `“${visible(fault.given)}” begins no element that ${fault.scheme === 'gs1' ? 'GS1' : fault.scheme === 'hibc' ? 'HIBC' : 'ICCBBA'} has; what follows is kept as text.`;
    case 'repeated-identifier':
      return `${fault.name} (${fault.identifier}) stands here a second time, with another value.`;
    case 'excluded-pair':
      return `(${fault.identifier}) must not stand in one code with (${fault.other}).`;
    case 'unclosed-bracket':
      return 'the bracket is not closed: an identifier is written (01).';
    case 'stray-text':
      return `“${visible(fault.given)}” has no place here.`;
    case 'bad-percent-code':
      return `“${visible(fault.given)}” cannot be decoded: % must be followed by two hexadecimal digits.`;
    case 'not-a-key-qualifier':
      return `(${fault.identifier}) cannot follow (${fault.key}) in the path of a link, or not in this order.`;
    case 'bad-form':
      return FORMS[fault.what];
    case 'not-a-gs1-carrier':
      return `this would be a GS1 string, but ${fault.carrier} without the mark of GS1 does not carry one: kept as text.`;
    case 'nothing-after-mark':
      return 'there is nothing to read.';
  }
}

const FORMS: Record<(FaultOf & { kind: 'bad-form' })['what'], string> = {
  hibcPrimary:
    'a HIBC primary code is +, four characters for the labeller, 1 to 18 for the product and one digit for the pack level.',
  hibcSecondary: 'a HIBC secondary code begins with +$, +$$ or five digits of a date.',
  hibcTooShort: 'too short for a HIBC code.',
};

function dateWords(fault: DateFault): string {
  switch (fault.part) {
    case 'month':
      return `there is no month ${String(fault.given).padStart(2, '0')}`;
    case 'day':
      return `there is no day ${String(fault.given).padStart(2, '0')} in month ${fault.month} of ${fault.year}, which has ${fault.most} days`;
    case 'dayOfYear':
      return `there is no day ${fault.given} in ${fault.year}, which has ${fault.most} days`;
  }
}

/** Characters that cannot be seen, by their number. */
function visible(text: string): string {
  return [...text]
    .map((one) => {
      const code = one.codePointAt(0) ?? 0;
      return code <= 32 || code === 127
        ? code === 32
          ? 'space'
          : `U+${code.toString(16).toUpperCase().padStart(4, '0')}`
        : one;
    })
    .join('');
}

const SEPARATOR_WORDS: Record<Identified['separators'], string> = {
  notNeeded: 'none there, and none is needed: there is one way to read it',
  there: 'there, so each element ends at the next one',
  none: 'none there, though the scanner sends them',
  lost: 'none there',
};

/** How it was read. */
export function identifierWorking(read: Identified, { currentYear }: IdentifierInput): WorkingStep[] {
  const { scheme, carrier, separators, readings, elements, state } = read;
  const checked = elements.filter(({ plain }) => plain !== null).length;
  return [
    { label: 'Scheme', expression: carrier ?? 'no symbology identifier', value: schemeWord(scheme) },
    ...(scheme === 'gs1ElementString'
      ? [
          {
            label: 'Separators',
            expression: SEPARATOR_WORDS[separators],
            value:
              state === 'ambiguous'
                ? `${readings.length} readings`
                : separators === 'lost'
                  ? 'one sound reading'
                  : 'as the standard',
          },
        ]
      : []),
    {
      label: 'Elements',
      expression: `length, characters, check digit, date (current year ${currentYear})`,
      value: `${checked} of ${elements.length} sound`,
    },
  ];
}
