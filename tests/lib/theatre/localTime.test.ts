import { describe, expect, it } from 'vitest';
import { plainDate } from '@/lib/quantities/plainDate';
import { parseBooking } from '@/lib/theatre/booking';
import { caseReferenceFrom } from '@/lib/theatre/caseReference';
import { instantOf, wallClock } from '@/lib/theatre/localTime';
import { caseReference } from '@/lib/theatre/surgicalCase';

const on = (date: string) => plainDate.parse(date);

describe('the clock on the wall (Europe/London; changes on 29 March and 25 October 2026, IANA time zone database)', () => {
  const cases = [
    {
      date: '2026-01-14',
      time: '08:30',
      instant: '2026-01-14T08:30:00.000Z',
      why: 'winter is universal time',
    },
    {
      date: '2026-07-14',
      time: '08:30',
      instant: '2026-07-14T07:30:00.000Z',
      why: 'summer is an hour ahead',
    },
    {
      date: '2026-07-14',
      time: '00:15',
      instant: '2026-07-13T23:15:00.000Z',
      why: 'the date is the wall’s, not the universal one',
    },
    { date: '2026-03-29', time: '01:30', instant: null, why: 'that half hour is skipped' },
    { date: '2026-10-25', time: '01:30', instant: '2026-10-25T00:30:00.000Z', why: 'of two, the first' },
  ];
  for (const { date, time, instant, why } of cases) {
    it(`${date} ${time}: ${why}`, () => {
      expect(instantOf(on(date), time)).toBe(instant);
      if (instant) expect(wallClock(instant)).toEqual({ date, time });
    });
  }
});

describe('booking a case', () => {
  const good = {
    theatreId: 'theatre_1',
    date: '2026-01-14',
    time: '08:30',
    minutes: '90',
    region: 'ankle',
    limb: 'left',
    surgeonId: 'person_a',
    urgency: 'booked',
    startId: null,
  };

  it('works out both instants', () => {
    const parsed = parseBooking(good, 'Europe/London');
    expect(parsed).toMatchObject({
      ok: true,
      value: { startsAt: '2026-01-14T08:30:00.000Z', endsAt: '2026-01-14T10:00:00.000Z' },
    });
  });

  it('names every fault at once', () => {
    const parsed = parseBooking(
      { ...good, theatreId: '', time: '25:00', minutes: '5', limb: '', surgeonId: 'nobody' },
      'Europe/London',
    );
    expect(parsed.ok ? [] : parsed.problems.map(({ path }) => path.join('.')).sort()).toEqual([
      'limb',
      'minutes',
      'surgeonId',
      'theatreId',
      'time',
    ]);
  });

  it('has no place for anything else, such as a name', () => {
    expect(parseBooking({ ...good, patient: 'somebody' }, 'Europe/London').ok).toBe(false);
  });
});

it('a case reference is of its form and says nothing', () => {
  expect(caseReference.safeParse(caseReferenceFrom('LM', on('2026-01-14'), [0, 31, 7, 12])).success).toBe(
    true,
  );
});
