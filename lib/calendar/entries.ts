import type { Construct } from '../plans/plan';
import { calendarWords as words } from '../wording/calendar';
import type { CalendarEvent } from './write';

/**
 * A case as a calendar may know it: reference, theatre, region and side. Nothing about the patient is in it, for there is
 * nothing to be had; whoever holds the address reads it without signing in.
 */
export interface CalendarCase {
  id: string;
  reference: string;
  theatre: string;
  region: Construct['region'];
  limb: 'left' | 'right';
  startsAt: string;
  endsAt: string;
  revision: number;
  changedAt: string;
  cancelled: boolean;
  /** `null` where the hospital does not name surgeons in calendars. */
  surgeon: string | null;
}

/** A case as an event of its theatre. */
export function theatreEvent(booked: CalendarCase): CalendarEvent {
  return {
    uid: `${booked.id}.theatre`,
    ...revisionOf(booked),
    startsAt: booked.startsAt,
    endsAt: booked.endsAt,
    summary: words.caseSummary(booked.reference, booked.region, booked.limb),
    location: booked.theatre,
    description: booked.surgeon === null ? null : words.surgeon(booked.surgeon),
    cancelled: booked.cancelled,
  };
}

/** What sterile services have to have ready for a case, and by when. */
export interface CalendarNeed extends CalendarCase {
  /** When its sets must stand in theatre. */
  needBy: string;
  /** Codes of the sets promised to it. */
  sets: readonly string[];
}

/** A case as sterile services see it: from when its sets must stand in theatre until it begins. */
export function needEvent(need: CalendarNeed): CalendarEvent {
  return {
    uid: `${need.id}.need`,
    ...revisionOf(need),
    startsAt: need.needBy,
    endsAt: need.startsAt,
    summary: words.needSummary(need.reference, need.sets),
    location: need.theatre,
    description: words.needFacts(need.region, need.limb, need.sets),
    cancelled: need.cancelled,
  };
}

// a revision begins at 1, a sequence at 0
const revisionOf = ({ revision, changedAt }: { revision: number; changedAt: string }) => ({
  sequence: revision - 1,
  changedAt,
});

/** When something on loan comes or goes. Who keeps loans says what there is; a calendar needs no more than this. */
export interface LoanMoment {
  /** The loan's own id: an arrival and a return of one loan are two events. */
  id: string;
  moment: 'arrival' | 'return';
  /** What the loan is called. */
  name: string;
  /** An instant, or a date where no time of day is stated. */
  at: string;
  place: string | null;
  revision: number;
  changedAt: string;
  cancelled: boolean;
}

/** A loan's arrival or return as an event that has a moment, or a day, and no length. */
export function loanEvent(loan: LoanMoment): CalendarEvent {
  return {
    uid: `${loan.id}.${loan.moment}`,
    ...revisionOf(loan),
    startsAt: loan.at,
    endsAt: null,
    summary: words.loanSummary[loan.moment](loan.name),
    location: loan.place,
    description: null,
    cancelled: loan.cancelled,
  };
}
