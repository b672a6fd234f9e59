import type { FeedKind } from '../calendar/feed';
import type { Construct } from '../plans/plan';
import { listWords } from './numbers';
import { LIMB_WORDS, REGION_WORDS } from './plans';

export const FEED_KIND_WORDS: Record<FeedKind, { name: string; about: string }> = {
  theatre: { name: 'Theatre list', about: 'Every case with its theatre, region and side.' },
  sterileServices: {
    name: 'Sets needed',
    about: 'From when the sets of each case must stand in theatre, and which are promised to it.',
  },
  loans: { name: 'Loans', about: 'When loans arrive and go back.' },
};

const regionAndSide = (region: Construct['region'], limb: 'left' | 'right') =>
  `${REGION_WORDS[region]}, ${LIMB_WORDS[limb].toLowerCase()}`;

export const calendarWords = {
  caseSummary: (reference: string, region: Construct['region'], limb: 'left' | 'right') =>
    `${reference}: ${regionAndSide(region, limb)}`,
  surgeon: (name: string) => `Surgeon: ${name}`,
  needSummary: (reference: string, sets: readonly string[]) =>
    sets.length === 0 ? `No set promised yet for ${reference}` : `${listWords([...sets])} for ${reference}`,
  needFacts: (region: Construct['region'], limb: 'left' | 'right', sets: readonly string[]) =>
    `${regionAndSide(region, limb)}. ${
      sets.length === 0
        ? 'No set is promised to the case.'
        : 'To stand in theatre from the beginning of this entry.'
    }`,
  loanSummary: {
    arrival: (name: string) => `Loan arrives: ${name}`,
    return: (name: string) => `Loan goes back: ${name}`,
  },
  /** `Theatre list, Theatre 1`. */
  feedName: (kind: FeedKind, theatre: string | null) =>
    `${FEED_KIND_WORDS[kind].name}, ${kind === 'loans' ? 'all' : (theatre ?? 'every theatre')}`,

  mayNot: (name: string) => `${name} can’t make calendar addresses.`,
  noSuchFeed: 'There is no such address, or it is somebody else’s.',
  noSuchTheatre: 'No such theatre: choose one of the list.',
  loansOfAll: 'Loans have one calendar for all of them.',
  tooMany: (most: number) => `Nobody needs more than ${most} addresses at once: revoke one first.`,
  notHere: 'There is no calendar under this address. It may have been mistyped.',
  over: 'This calendar address was revoked, or its owner works here no longer.',
  tooSoon: (seconds: number) => `Too many wrong addresses came from here. Try again in ${seconds} s.`,
};
