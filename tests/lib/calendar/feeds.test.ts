import { describe, expect, it } from 'vitest';
import { hasAlready } from '@/lib/calendar/entityTag';
import { type CalendarNeed, loanEvent, needEvent, theatreEvent } from '@/lib/calendar/entries';
import { isWorthNotingRead } from '@/lib/calendar/feed';
import { writeCalendar } from '@/lib/calendar/write';

const CASE: CalendarNeed = {
  id: 'case_one',
  reference: 'LM-26-7K2P',
  theatre: 'Theatre 1',
  region: 'forearmShaft',
  limb: 'left',
  startsAt: '2026-01-15T08:30:00.000Z',
  endsAt: '2026-01-15T10:00:00.000Z',
  revision: 3,
  changedAt: '2026-01-14T07:00:00.000Z',
  cancelled: false,
  surgeon: null,
  needBy: '2026-01-15T07:30:00.000Z',
  sets: ['SFS-02', 'CLO-01'],
};

describe('what a calendar says of a case', () => {
  it('is its reference, theatre, region and side', () => {
    expect(theatreEvent(CASE)).toMatchObject({
      summary: 'LM-26-7K2P: Forearm shaft, left',
      location: 'Theatre 1',
      description: null,
    });
  });

  it('names the surgeon only where there is one to name', () => {
    const all = (one: CalendarNeed) =>
      writeCalendar({ name: 'x', refreshMinutes: 15, events: [theatreEvent(one), needEvent(one)] });
    expect(all(CASE)).not.toContain('Surgeon');
    expect(theatreEvent({ ...CASE, surgeon: 'Tobias Wray' }).description).toBe('Surgeon: Tobias Wray');
    // what sterile services read needs no name at all
    expect(needEvent({ ...CASE, surgeon: 'Tobias Wray' })).toEqual(needEvent(CASE));
  });

  it('keeps its name, and counts its revisions from 0', () => {
    // RFC 5545, 3.8.7.4: a sequence begins at 0 and grows with each significant revision
    expect(theatreEvent(CASE)).toMatchObject({ uid: 'case_one.theatre', sequence: 2 });
    expect(theatreEvent({ ...CASE, revision: 1 }).sequence).toBe(0);
    expect(needEvent(CASE).uid).not.toBe(theatreEvent(CASE).uid);
  });

  it('tells sterile services from when the sets are needed, and which', () => {
    expect(needEvent(CASE)).toMatchObject({
      startsAt: CASE.needBy,
      endsAt: CASE.startsAt,
      summary: 'SFS-02 and CLO-01 for LM-26-7K2P',
    });
    expect(needEvent({ ...CASE, sets: [] }).summary).toBe('No set promised yet for LM-26-7K2P');
  });

  it('tells of a loan when it comes and when it goes, as two events', () => {
    const loan = {
      id: 'loan_one',
      name: 'Large fragment, long plates',
      at: '2026-01-15T09:00:00.000Z',
      place: 'Loan bay',
      revision: 1,
      changedAt: CASE.changedAt,
      cancelled: false,
    };
    const [comes, goes] = (['arrival', 'return'] as const).map((moment) => loanEvent({ ...loan, moment }));
    expect(comes).toMatchObject({
      uid: 'loan_one.arrival',
      summary: 'Loan arrives: Large fragment, long plates',
      endsAt: null,
    });
    expect(goes).toMatchObject({ uid: 'loan_one.return', location: 'Loan bay' });
  });
});

describe('whether a reader has what there is', () => {
  // RFC 9110, 13.1.2 and the examples of 8.8.3 and 13.1.2
  it.each([
    [null, '"xyzzy"', false],
    ['"xyzzy"', '"xyzzy"', true],
    ['W/"xyzzy"', '"xyzzy"', true],
    ['"xyzzy", "r2d2xxxx", "c3piozzzz"', '"r2d2xxxx"', true],
    ['W/"xyzzy", W/"r2d2xxxx", W/"c3piozzzz"', '"c3piozzzz"', true],
    ['*', '"xyzzy"', true],
    ['""', '"xyzzy"', false],
    ['"a,b"', '"a,b"', true],
    ['"a", "b"', '"a,b"', false],
    ['xyzzy', '"xyzzy"', false],
    ['"XYZZY"', '"xyzzy"', false],
  ])('%s against %s: %s', (field, tag, has) => {
    expect(hasAlready(field, tag)).toBe(has);
  });
});

it('notes a read at most once a minute', () => {
  expect(isWorthNotingRead(null, '2026-01-14T07:00:00.000Z')).toBe(true);
  expect(isWorthNotingRead('2026-01-14T07:00:00.000Z', '2026-01-14T07:00:59.999Z')).toBe(false);
  expect(isWorthNotingRead('2026-01-14T07:00:00.000Z', '2026-01-14T07:01:00.000Z')).toBe(true);
});
