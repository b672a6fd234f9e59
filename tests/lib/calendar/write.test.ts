import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarEvent, escapeText, foldLine, utcTime, writeCalendar } from '@/lib/calendar/write';

/**
 * Against the rules and examples of RFC 5545 (Internet Calendaring and Scheduling Core Object Specification), quoted beside
 * each check, and read back by ical.js, a parser of that specification which is not ours.
 */

const EVENT: CalendarEvent = {
  uid: 'case_one.theatre',
  sequence: 0,
  changedAt: '2026-01-14T06:30:00.000Z',
  startsAt: '2026-01-15T02:10:00.000Z',
  endsAt: '2026-01-15T03:50:00.000Z',
  summary: 'LM-26-7K2P: Forearm shaft, left',
  location: 'Theatre 3, trauma',
  description: null,
  cancelled: false,
};
const written = (...events: CalendarEvent[]) =>
  writeCalendar({ name: 'Theatre list, every theatre', refreshMinutes: 15, events });

/** Lines as they are on the wire: the end of each is CR LF, and no CR or LF stands alone. */
function lines(text: string): string[] {
  expect(text.endsWith('\r\n')).toBe(true);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  return text.slice(0, -2).split('\r\n');
}
const unfolded = (text: string) => lines(text.replaceAll(/\r\n[ \t]/g, ''));
const octets = (line: string) => new TextEncoder().encode(line).length;

/** What ical.js makes of it. */
function read(text: string) {
  const root = new ICAL.Component(ICAL.parse(text));
  return { root, events: root.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one)) };
}

describe('an event without a time of day', () => {
  it('begins with a DATE, and lasts that day', () => {
    // RFC 5545, 3.6.1: "DTSTART;VALUE=DATE:19971102" … without an end "the event's duration is taken to be one day"
    const text = written({ ...EVENT, startsAt: '1997-11-02', endsAt: null });
    expect(unfolded(text)).toContain('DTSTART;VALUE=DATE:19971102');
    const [event] = read(text).events;
    expect(event?.startDate.isDate).toBe(true);
    expect(event?.endDate.toString()).toBe('1997-11-03');
  });
});

describe('a text value', () => {
  it('is escaped as in the example of 3.3.11', () => {
    // RFC 5545, 3.3.11: "Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    expect(escapeText('Project XYZ Final Review\nConference Room - 3B\nCome Prepared.')).toBe(
      'Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.',
    );
  });

  it('has backslash, semicolon and comma escaped, and the colon not', () => {
    // RFC 5545, 3.3.11: ESCAPED-CHAR = ("\\" / "\;" / "\," / "\N" / "\n"); a colon "SHALL NOT be escaped"
    expect(escapeText('a\\b;c,d:e')).toBe('a\\\\b\\;c\\,d:e');
  });

  it('holds no control but the tab', () => {
    // RFC 5545, 3.1: CONTROL = %x00-08 / %x0A-1F / %x7F; "All the controls except HTAB"
    const controls = String.fromCharCode(
      ...Array.from({ length: 32 }, (_, code) => code).filter((code) => ![9, 10, 13].includes(code)),
      127,
    );
    expect(escapeText(`a${controls}b\tc`)).toBe('ab\tc');
    expect(escapeText('one\r\ntwo\rthree')).toBe('one\\ntwo\\nthree');
  });
});

describe('a line', () => {
  it('is folded where the example of 3.1 may be, and unfolds to itself', () => {
    // RFC 5545, 3.1: "Lines of text SHOULD NOT be longer than 75 octets, excluding the line break"
    const line = `DESCRIPTION:This is a long description that exists on a long line. ${'x'.repeat(300)}`;
    const parts = foldLine(line).split('\r\n');
    expect(parts.map(octets)).toEqual([75, 75, 75, 75, expect.any(Number)]);
    for (const part of parts.slice(1)) expect(part.startsWith(' ')).toBe(true);
    expect(parts.map((part, at) => (at === 0 ? part : part.slice(1))).join('')).toBe(line);
  });

  it('of exactly 75 octets is left whole, and one more is folded', () => {
    expect(foldLine('x'.repeat(75))).toBe('x'.repeat(75));
    expect(foldLine('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`);
  });

  it('is never folded inside a character, and no part is too long', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        const line = text.replaceAll(/[\r\n]/g, '');
        const parts = foldLine(line).split('\r\n');
        for (const part of parts) expect(octets(part)).toBeLessThanOrEqual(75);
        // each part is whole UTF-8 by itself, so it comes back as it went
        const bytes = parts.map((part) =>
          new TextDecoder('utf-8', { fatal: true }).decode(new TextEncoder().encode(part)),
        );
        expect(bytes.map((part, at) => (at === 0 ? part : part.slice(1))).join('')).toBe(line);
      }),
    );
  });
});

describe('a calendar', () => {
  it('begins and ends as 3.4 and 3.6 say, with version and product', () => {
    const all = unfolded(written(EVENT));
    expect(all[0]).toBe('BEGIN:VCALENDAR');
    expect(all.at(-1)).toBe('END:VCALENDAR');
    // RFC 5545, 3.6: PRODID and VERSION "are REQUIRED, but MUST NOT occur more than once"; 3.7.4: "2.0"
    expect(all.filter((line) => line === 'VERSION:2.0')).toHaveLength(1);
    expect(all.filter((line) => line.startsWith('PRODID:'))).toHaveLength(1);
  });

  it('has of each event what 3.6.1 requires, each at most once', () => {
    const all = unfolded(written(EVENT));
    const inside = all.slice(all.indexOf('BEGIN:VEVENT') + 1, all.indexOf('END:VEVENT'));
    const names = inside.map((line) => line.split(/[:;]/)[0]);
    expect(new Set(names).size).toBe(names.length);
    // RFC 5545, 3.6.1: UID and DTSTAMP are required, and DTSTART where the calendar has no METHOD
    expect(names).toEqual(
      expect.arrayContaining(['UID', 'DTSTAMP', 'DTSTART', 'SEQUENCE', 'STATUS', 'SUMMARY']),
    );
    expect(all.some((line) => line.startsWith('METHOD'))).toBe(false);
    expect(inside).toContain('LOCATION:Theatre 3\\, trauma');
  });

  it('marks what was cancelled', () => {
    // RFC 5545, 3.8.1.11: statvalue-event = "TENTATIVE" / "CONFIRMED" / "CANCELLED"
    expect(unfolded(written({ ...EVENT, cancelled: true }))).toContain('STATUS:CANCELLED');
    expect(unfolded(written(EVENT))).toContain('STATUS:CONFIRMED');
  });

  it('gives no end to what has none, or none after its beginning', () => {
    // RFC 5545, 3.8.2.2: DTEND "MUST be later in time than the value of the DTSTART property"
    for (const endsAt of [null, EVENT.startsAt, '2026-01-15T01:00:00.000Z'])
      expect(written({ ...EVENT, endsAt })).not.toContain('DTEND');
  });

  it('holds one component even when there is no event', () => {
    // RFC 5545, 3.4: component = 1*(eventc / todoc / journalc / freebusyc / timezonec / …)
    const { root, events } = read(written());
    expect(events).toHaveLength(0);
    const zones = root.getAllSubcomponents('vtimezone');
    expect(zones).toHaveLength(1);
    expect(zones[0]?.getAllSubcomponents('standard')).toHaveLength(1);
  });

  it('is the same text for the same facts, in whatever order they come', () => {
    const other = { ...EVENT, uid: 'case_two.theatre', startsAt: '2026-01-14T09:00:00.000Z' };
    expect(written(EVENT, other)).toBe(written(other, EVENT));
  });

  it('asks to be read again as RFC 7986 writes it', () => {
    // RFC 7986, 5.7: REFRESH-INTERVAL;VALUE=DURATION:P1W
    expect(unfolded(written())).toContain('REFRESH-INTERVAL;VALUE=DURATION:PT15M');
    expect(unfolded(written())).toContain('NAME:Theatre list\\, every theatre');
  });
});

describe('a time', () => {
  it('is written in UTC, form 2 of 3.3.5', () => {
    // RFC 5545, 3.3.5: "19980119T070000Z", "January 19, 1998, at 0700 UTC"
    expect(utcTime('1998-01-19T07:00:00.000Z')).toBe('19980119T070000Z');
    expect(utcTime('1998-01-19T08:00:00+01:00')).toBe('19980119T070000Z');
  });

  // Days and offsets: IANA time zone database (2025b), from memory; Lord Howe Island changes by half an hour
  const EDGES = [
    { zone: 'Europe/London', before: '2026-03-29T00:59:00.000Z', shown: ['00:59', '02:00'] },
    { zone: 'Europe/London', before: '2026-10-25T00:59:00.000Z', shown: ['01:59', '01:00'] },
    { zone: 'America/New_York', before: '2026-03-08T06:59:00.000Z', shown: ['01:59', '03:00'] },
    { zone: 'America/New_York', before: '2026-11-01T05:59:00.000Z', shown: ['01:59', '01:00'] },
    { zone: 'Australia/Lord_Howe', before: '2026-04-04T14:59:00.000Z', shown: ['01:59', '01:30'] },
  ];

  it.each(EDGES)(
    'is the same instant either side of a change of the clocks: $zone, $before',
    ({ zone, before, shown }) => {
      const after = new Date(Date.parse(before) + 60_000).toISOString();
      const { events } = read(written({ ...EVENT, startsAt: before, endsAt: after }));
      const [start, end] = [events[0]?.startDate.toJSDate(), events[0]?.endDate.toJSDate()];
      expect([start?.toISOString(), end?.toISOString()]).toEqual([before, after]);
      const wall = new Intl.DateTimeFormat('en-GB', {
        timeZone: zone,
        hour: '2-digit',
        minute: '2-digit',
        hourCycle: 'h23',
      });
      expect([start, end].map((at) => wall.format(at))).toEqual(shown);
    },
  );
});

describe('read by ical.js', () => {
  const instant = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true });
  const words = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 120 });

  it('what was written comes back, whatever the texts hold', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(
          fc.record({
            uid: fc.uuid(),
            start: instant,
            minutes: fc.integer({ min: 1, max: 900 }),
            summary: words,
            location: words,
            sequence: fc.nat(999),
            cancelled: fc.boolean(),
          }),
          {
            selector: ({ uid }) => uid,
            maxLength: 6,
          },
        ),
        (given) => {
          const events = given.map(({ start, minutes, ...one }): CalendarEvent => {
            const startsAt = new Date(Math.floor(start.getTime() / 1000) * 1000).toISOString();
            return {
              ...one,
              changedAt: '2026-01-14T06:30:00.000Z',
              startsAt,
              endsAt: new Date(Date.parse(startsAt) + minutes * 60_000).toISOString(),
              description: null,
            };
          });
          const back = read(written(...events)).events;
          expect(back).toHaveLength(events.length);
          for (const event of events) {
            const found = back.find(({ uid }) => uid === event.uid);
            expect(found?.startDate.toJSDate().toISOString()).toBe(event.startsAt);
            expect(found?.endDate.toJSDate().toISOString()).toBe(event.endsAt);
            expect(found?.sequence).toBe(event.sequence);
            expect(found?.component.getFirstPropertyValue('status')).toBe(
              event.cancelled ? 'CANCELLED' : 'CONFIRMED',
            );
            expect(found?.summary).toBe(plain(event.summary));
            expect(found?.location).toBe(plain(event.location ?? ''));
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  /** A text without what a TEXT value may not hold. */
  const plain = (text: string) =>
    text.replaceAll(/\r\n?/g, '\n').replaceAll(/\p{Cc}/gu, (sign) => ('\t\n'.includes(sign) ? sign : ''));
});
