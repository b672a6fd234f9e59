import { COMMON_PASSWORDS } from './commonPasswords';
import { comparableName } from './name';
import { isNothingBut, isOneOf } from './nothing-but';
import { wordsOfPlace } from './placeWords';
import { isRepeated } from './repeated';
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from './secrets';

export type PasswordFault = 'tooShort' | 'tooLong' | 'common' | 'name' | 'place' | 'repeated';

/** What somebody who guesses knows beforehand. */
export interface Guessable {
  /** Of whose password it is. */
  name: string;
  /** What the hospital and its parts are called. */
  placeNames: readonly string[];
  /** Passwords that many people take, in lower case; besides the first ones guessed, which are always known. */
  common: ReadonlySet<string>;
}

/** What is wrong with a password its owner chose: too short, too long, or the first a guesser would try. */
export function passwordFaults(password: string, { name, placeNames, common }: Guessable): PasswordFault[] {
  const written = password.normalize('NFC');
  const length = [...written].length;
  const plain = written.toLocaleLowerCase('en-GB');
  const faults: PasswordFault[] = [];
  if (length < SHORTEST_PASSWORD) faults.push('tooShort');
  // what is longer is not looked into
  if (length > LONGEST_PASSWORD) return [...faults, 'tooLong'];
  if (isOneOf(plain, (text) => COMMON_PASSWORDS.has(text) || common.has(text))) faults.push('common');
  const ownWords = comparableName(name).split(/[^\p{L}]+/u);
  const own = [...ownWords, ownWords.join('')];
  if (isNothingBut(plain, own)) faults.push('name');
  else if (isNothingBut(plain, [...own, ...wordsOfPlace(placeNames)])) faults.push('place');
  if (length > 0 && isRepeated(plain)) faults.push('repeated');
  return faults;
}
