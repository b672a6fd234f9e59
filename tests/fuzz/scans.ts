import fc from 'fast-check';
import { identifierCalculation } from '@/lib/calculations/identifier/calculation';
import { gs1CheckDigit } from '@/lib/calculations/identifier/checkDigits';
import { writeBracketed } from '@/lib/calculations/identifier/gs1/elementString';
import type { IdentifierOutput } from '@/lib/calculations/identifier/schema';
import { ownCode } from '@/lib/scanning/ownCodes';
import { namesPerson } from '@/lib/scanning/personCode';
import { spoiltText } from './spoilt';
import { requireSentence, target } from './target';

/** It asks for nothing from outside. */
const NO_PORTS = { solver: () => Promise.reject(new Error('no solver is needed')) };

const GS = '\u001d';
const digits = (long: number) => fc.stringMatching(new RegExp(`^[0-9]{${long}}$`)).map((text) => text);
const gtin = digits(12).map((body) => `0${body}${gs1CheckDigit(`0${body}`)}`);
const dates = fc
  .tuple(fc.integer({ min: 10, max: 40 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 28 }))
  .map((parts) => parts.map((part) => String(part).padStart(2, '0')).join(''));
const lots = fc.string({
  unit: fc.constantFrom(...'0123456789ABCDEFGHabcdefgh-/.'),
  minLength: 1,
  maxLength: 20,
});
const words = fc.string({ unit: fc.constantFrom(...'0123456789ABCDEFGHabcdefgh-/.+ $%'), maxLength: 22 });

/** What a scanner sends when all is well, of each scheme and of our own. */
const sound = fc.oneof(
  fc.tuple(gtin, dates, lots).map(([key, date, lot]) => `]d201${key}17${date}10${lot}${GS}21${lot}`),
  fc.tuple(gtin, lots).map(([key, lot]) => `(01)${key}(10)${lot}`),
  fc.tuple(gtin, words).map(([key, lot]) => `https://example.org/01/${key}/10/${lot}?17=261231`),
  gtin,
  words.map((text) => `+A123BJC5D6E71${text}`),
  words.map((text) => `+$$3261231${text}`),
  words.map((text) => `=/A9999XYZ100T0944=,000025=>014032=}013032&,1000000000000${text}`),
  digits(9).map((number) => `P${number}-1*1`),
  words.map((text) => `L*${text}`),
  words.map((text) => `K*${text}`),
  fc.string({ unit: 'binary', maxLength: 60 }),
);

/** A code by whatever it is: read, or refused with its reason, the same way twice. */
export const scans = target({
  name: 'scans',
  unit: 'scanner strings',
  runs: { long: 1_000_000, short: 3_000 },
  arbitrary: fc.tuple(spoiltText(sound), fc.constantFrom('mayBeLost', 'sent')),
  async hold([text, separators]) {
    const read = await identifierCalculation.evaluate({ text, currentYear: 2026, separators }, NO_PORTS);
    if (!read.ok) {
      // only what no symbol holds is not looked at
      if (text.length >= 1 && text.length <= 1000)
        throw new Error(`not looked at: ${JSON.stringify(read.problems)}`);
      for (const { message } of read.problems) requireSentence(message, text);
      return 'refused';
    }
    if (read.value.outcome === 'notEstablished') {
      requireAmbiguous(read.value.known as IdentifierOutput | null, separators);
      for (const { what } of read.value.missing) requireSentence(what, text);
      return 'refused';
    }
    const said = read.value.answer as IdentifierOutput;
    requireSentence(said.says, text);
    for (const { sentence } of said.problems) requireSentence(sentence, text);
    if (said.state === 'faulty' && said.problems.length === 0)
      throw new Error('faulty, and nothing says why');
    namesPerson(text, said);
    const own = ownCode(text);
    // a code of ours is never one of a scheme: what is scanned would be two things
    if (own && own.kind !== 'name' && said.state === 'read')
      throw new Error(`one of ours, and of ${said.scheme}`);
    return said.state === 'read' ? 'taken' : 'refused';
  },
});

/** A code is left open only where separators may be lost and it can be cut in several ways; each is shown, and none is taken. */
function requireAmbiguous(known: IdentifierOutput | null, separators: 'mayBeLost' | 'sent'): void {
  if (separators === 'sent') throw new Error('separators are there, and it is left open');
  if (known?.state !== 'ambiguous') throw new Error('left open, and not for being ambiguous');
  for (const { reading } of known.readings)
    if (!reading.startsWith(writeBracketed(known.elements))) throw new Error('what is not in doubt differs');
}
