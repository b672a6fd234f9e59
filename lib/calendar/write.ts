import { plainDate } from '../quantities/plainDate';

/**
 * Calendars as RFC 5545 (iCalendar) writes them. A writer of our own: what is sent is a handful of properties, and it must be
 * the same octets for the same facts, so that a reader who asks again is told that nothing changed.
 */

/** One event. Instants are ISO, and are written in UTC, so that no change of the clocks can move them. */
export interface CalendarEvent {
  /** The same for the same thing, for ever. */
  uid: string;
  /** Grows with every change of the thing; from 0. */
  sequence: number;
  /** When the thing was last changed: without a METHOD that is what DTSTAMP says (RFC 5545, 3.8.7.2). */
  changedAt: string;
  /** An instant, or a date for what is on that day at no stated time. */
  startsAt: string;
  /** After the beginning; `null` for something that happens at one moment, or on a whole day. */
  endsAt: string | null;
  summary: string;
  location: string | null;
  description: string | null;
  cancelled: boolean;
}

export interface Calendar {
  name: string;
  /** How often a reader should ask again. */
  refreshMinutes: number;
  events: readonly CalendarEvent[];
}

/** The whole calendar as text, every line ended by CR LF. Events come in the order of their beginning. */
export function writeCalendar({ name, refreshMinutes, events }: Calendar): string {
  const inOrder = [...events].sort(
    (a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt) || (a.uid < b.uid ? -1 : 1),
  );
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Kitwright//Calendar feeds//EN',
    // RFC 7986, and the name by which older readers know it
    `NAME:${escapeText(name)}`,
    `X-WR-CALNAME:${escapeText(name)}`,
    `REFRESH-INTERVAL;VALUE=DURATION:PT${refreshMinutes}M`,
    ...(inOrder.length === 0 ? ONLY_UTC : inOrder.flatMap(eventLines)),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${foldLine(line)}\r\n`).join('');
}

/** A calendar must hold one component at least (RFC 5545, 3.6): without an event, the zone its times would be in. */
const ONLY_UTC = [
  'BEGIN:VTIMEZONE',
  'TZID:Etc/UTC',
  'BEGIN:STANDARD',
  'DTSTART:19700101T000000',
  'TZOFFSETFROM:+0000',
  'TZOFFSETTO:+0000',
  'TZNAME:UTC',
  'END:STANDARD',
  'END:VTIMEZONE',
];

function eventLines(event: CalendarEvent): string[] {
  const ends = event.endsAt !== null && Date.parse(event.endsAt) > Date.parse(event.startsAt);
  return [
    'BEGIN:VEVENT',
    `UID:${escapeText(event.uid)}`,
    `DTSTAMP:${utcTime(event.changedAt)}`,
    isDate(event.startsAt)
      ? `DTSTART;VALUE=DATE:${event.startsAt.replaceAll('-', '')}`
      : `DTSTART:${utcTime(event.startsAt)}`,
    ...(ends && event.endsAt !== null ? [`DTEND:${utcTime(event.endsAt)}`] : []),
    `SEQUENCE:${event.sequence}`,
    `STATUS:${event.cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    // whoever subscribes is not thereby busy
    'TRANSP:TRANSPARENT',
    `SUMMARY:${escapeText(event.summary)}`,
    ...(event.location === null ? [] : [`LOCATION:${escapeText(event.location)}`]),
    ...(event.description === null ? [] : [`DESCRIPTION:${escapeText(event.description)}`]),
    'END:VEVENT',
  ];
}

const isDate = (when: string): boolean => plainDate.safeParse(when).success;

/** `2026-03-29T00:30:00.000Z → 20260329T003000Z`: form 2 of DATE-TIME (RFC 5545, 3.3.5). Throws on what is no instant. */
export function utcTime(instant: string): string {
  return new Date(instant)
    .toISOString()
    .replace(/\.\d{3}Z$/, 'Z')
    .replaceAll(/[-:]/g, '');
}

// what TEXT may not hold: controls other than the tab; line ends are written as \n
const CONTROLS = /(?!\t)\p{Cc}/gu;

/** A text as a value of type TEXT (RFC 5545, 3.3.11). */
export function escapeText(text: string): string {
  return text
    .replaceAll(/\r\n?/g, '\n')
    .split('\n')
    .map((line) => line.replaceAll(CONTROLS, '').replaceAll(/[\\;,]/g, (sign) => `\\${sign}`))
    .join('\\n');
}

/** RFC 5545, 3.1: lines are no longer than this, without their end. */
const MOST_OCTETS = 75;

/** A content line folded: each part has at most 75 octets, the blank that marks a continuation included, and no character is split. */
export function foldLine(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      parts.push(part);
      [part, octets] = [' ', 1];
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n');
}

/** How many octets a character takes in UTF-8. A lone half of a pair is written as the replacement character, which takes three. */
function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
