import type { Act } from '../people/permissions';
import type { PresenceReason, TokenState } from '../people/tokens';

const PRESENCE: Record<PresenceReason, string> = {
  approval: 'A person decides this on the screen: no token approves, confirms or decides.',
  release: 'A person stands for this on the screen: no token releases, lifts or closes anything.',
  hands: 'A person does this with their own hands and eyes, on the screen: no token counts or checks.',
  people: 'Who works here, and by what they prove it, is changed on the screen alone.',
  record: 'The record is corrected by a person on the screen, who proves who they are.',
};

/** What is said of tokens of the API. */
export const tokenWords = {
  presence: (reason: PresenceReason) => PRESENCE[reason],
  noProof: 'This needs somebody who proves on the screen who they are: no token stands for that.',
  noSession: 'Entries made by hand are sent from the screen on which they were made: no token sends them.',
  notInScope: (act: Act) => `This token was not issued for this: it would need “${act}”.`,
  notForRole: (name: string) => `This token acts as ${name}, whose role does not do this.`,
  unknown: 'This token opens nothing here.',
  state: (state: Exclude<TokenState, 'open'>) =>
    ({
      expired: 'This token has expired: an administrator can issue another.',
      revoked: 'This token was revoked.',
      leftBehind: 'The person this token acts for works here no longer.',
    })[state],
  mayNot: (name: string) => `${name} can’t issue or revoke tokens: an administrator can.`,
  noSuchPerson: 'Nobody who works here is meant by this.',
  notOfRole: (name: string, act: Act) => `${name}’s role does not do “${act}”, so no token of theirs can.`,
  nameTaken: (name: string) =>
    `There is an open token for ${name} already: revoke it, or name this one apart.`,
  noSuchToken: 'There is no such token.',
} as const;

export const TOKEN_STATE_WORDS: Record<TokenState, string> = {
  open: 'Open',
  expired: 'Expired',
  revoked: 'Revoked',
  leftBehind: 'Its person has left',
};

/** `keepTheatreList` → `Keep theatre list`: an act as it is chosen from a list. */
export const actName = (act: string): string => {
  const spaced = act.replaceAll(/([a-z])([A-Z])/g, (_, a, b) => `${a} ${b.toLowerCase()}`);
  return spaced.charAt(0).toUpperCase() + spaced.slice(1);
};
