import { COMMON_PASSWORDS } from './commonPasswords';
import { comparableName } from './name';

/** NIST SP 800-63B asks for 15 characters where a password stands alone, and for no rules of composition. */
export const SHORTEST_PASSWORD = 15;
export const LONGEST_PASSWORD = 128;
export const PIN_LENGTH = { least: 6, most: 8 } as const;

/** A PIN is digits alone, and no password is so short: one field can take either. */
export const isPin = (secret: string): boolean => /^\d{6,8}$/.test(secret);

export type PasswordFault = 'tooShort' | 'tooLong' | 'common' | 'name' | 'repeated';

/** What is wrong with a password its owner chose: too short, too long, or the first a guesser would try. */
export function passwordFaults(password: string, name: string): PasswordFault[] {
  const length = [...password.normalize('NFC')].length;
  const plain = password.normalize('NFC').toLocaleLowerCase('en-GB');
  const letters = plain.replaceAll(/[^\p{L}]/gu, '');
  const faults: PasswordFault[] = [];
  if (length < SHORTEST_PASSWORD) faults.push('tooShort');
  if (length > LONGEST_PASSWORD) faults.push('tooLong');
  if (COMMON_PASSWORDS.has(plain) || COMMON_PASSWORDS.has(letters)) faults.push('common');
  const words = comparableName(name).split(' ').join('');
  if (letters !== '' && letters.replaceAll(words, '') === '') faults.push('name');
  if (length > 0 && isRepeated(plain)) faults.push('repeated');
  return faults;
}

/** The same few characters again and again, or one step up or down each time. */
function isRepeated(text: string): boolean {
  const longest = Math.min(4, Math.floor(text.length / 2));
  for (let period = 1; period <= longest; period += 1) {
    if ([...text].every((character, at) => character === text[at % period])) return true;
  }
  return isRun(text);
}

function isRun(text: string): boolean {
  const steps = [...text].slice(1).map((character, at) => character.charCodeAt(0) - text.charCodeAt(at));
  return steps.length > 0 && (steps.every((step) => step === 1) || steps.every((step) => step === -1));
}

export type PinFault = 'notDigits' | 'pattern';

/** What is wrong with a PIN its owner chose. */
export function pinFaults(pin: string): PinFault[] {
  if (!isPin(pin)) return ['notDigits'];
  const few = new Set(pin).size < 3;
  return few || isRepeated(pin) || isDay(pin) ? ['pattern'] : [];
}

/** Six or eight digits that read as a day, the first thing tried of a PIN: 190784, 19840719, 07191984. */
function isDay(pin: string): boolean {
  const shapes = [
    /^(0[1-9]|[12]\d|3[01])(0[1-9]|1[0-2])(\d{2}|(19|20)\d{2})$/,
    /^(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])(\d{2}|(19|20)\d{2})$/,
    /^(19|20)\d{2}(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])$/,
  ];
  return shapes.some((shape) => shape.test(pin));
}
