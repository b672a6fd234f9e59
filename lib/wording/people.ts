import type { PasswordFault } from '../people/password';
import { ROLE_WORDS, type Role } from '../people/role';
import { PIN_LENGTH, type PinFault, SHORTEST_PASSWORD } from '../people/secrets';

const seconds = (count: number) => (count === 1 ? '1 second' : `${count} seconds`);
const roleWord = (role: Role) => ROLE_WORDS[role].toLowerCase();
const article = (word: string) => (/^[aeiou]/.test(word) ? 'an' : 'a');

/** What is said of people, sessions and secrets. */
export const peopleWords = {
  notSignedIn: 'Nobody is signed in here, or the session is over: sign in and try again.',
  fromElsewhere: 'This was sent by a page that is not Kitwright’s, so nothing was done.',
  changePasswordFirst: 'Choose a password of your own first: the present one was given to you.',
  notForRole: (role: Role) => `This is not for ${article(roleWord(role))} ${roleWord(role)}.`,
  wrongName: (wait: number) =>
    `The name and the password do not go together.${wait > 0 ? ` Wait ${seconds(wait)} before the next try.` : ''}`,
  wrongBadge: (wait: number) =>
    `The badge and the PIN do not go together.${wait > 0 ? ` Wait ${seconds(wait)} before the next try.` : ''}`,
  wrongSecret: (what: 'PIN' | 'password', wait: number) =>
    `That ${what} is not right.${wait > 0 ? ` Wait ${seconds(wait)} before the next try.` : ''}`,
  tooSoon: (wait: number) => `Too soon after a wrong one: wait ${seconds(wait)}, then try again.`,
  pinOnlyAtWorkstation: 'A PIN is taken at an enrolled workstation only. Give the password here.',
  notAWorkstation: 'This browser is not an enrolled workstation: sign in with your name and password.',
  wrongFirstCode: (wait: number) =>
    `That is not the code, or it is over.${wait > 0 ? ` Wait ${seconds(wait)} before the next try.` : ''} The server prints a new one each time it starts.`,
  firstRunOver: 'There is an administrator already: sign in.',
  mayNot: (name: string) => `${name} can’t look after people: an administrator can.`,
  noSuchPerson: 'There is no such person.',
  hasLeft: (name: string) => `${name} has left.`,
  nameTaken: (name: string) =>
    `There is ${article(name)} ${name} already: add a second name or an initial, so that each can sign in by it.`,
  nameLength: 'Write a name of 2 to 80 characters.',
  lastAdministrator: 'This is the only administrator: name another first.',
  isHere: (name: string) => `${name} works here already.`,
  hasNoBadge: (name: string) => `${name} has no badge.`,
  samePassword: 'That is the present password: take another.',
  mayNotEnrol: (name: string) => `${name} can’t enrol workstations: an administrator can.`,
  workstationNameLength: 'Write a name of 1 to 60 characters, such as “Bench 2”.',
  workstationNameTaken: (name: string) => `A workstation is called ${name} already.`,
  noSuchWorkstation: 'There is no such workstation in use.',
  notSecure:
    'This page is not open over a secure connection, so the browser will not keep a session. Put TLS in front of Kitwright, or open it as http://localhost on the machine it runs on.',
} as const;

export const PASSWORD_FAULTS: Record<PasswordFault, string> = {
  tooShort: `Take at least ${SHORTEST_PASSWORD} characters: four or five unrelated words are easy to keep.`,
  tooLong: 'Take at most 128 characters.',
  common:
    'This is among the first passwords a guesser tries, alone, repeated or with figures and marks: take four or five unrelated words.',
  name: 'A name alone is the first thing a guesser tries: take another.',
  place:
    'These are names and words of this hospital alone, which anybody here would guess: take four or five unrelated words.',
  repeated: 'This repeats itself or runs in one direction: take another.',
};

export const PIN_FAULTS: Record<PinFault, string> = {
  notDigits: `Take ${PIN_LENGTH.least} to ${PIN_LENGTH.most} digits.`,
  pattern: 'This repeats itself, runs in one direction or reads as a day: take another.',
};
