import { describe, expect, it } from 'vitest';
import { caseId, setId, theatreId } from '@/lib/identity/ids';
import { attributed, type ListEntry } from '@/lib/theatre/report/attribution';
import { changesSince } from '@/lib/theatre/report/changes';
import type { SeenCase } from '@/lib/theatre/report/seen';
import { changeLines, whyWords } from '@/lib/wording/day-changes';

const DAY = '2026-01-14';
const NOW = '2026-01-14T06:30:00.000Z';
const SET_A = { id: setId.parse('set_sfs-01'), code: 'SFS-01' };
const SET_B = { id: setId.parse('set_sfs-02'), code: 'SFS-02' };

/** A case of this day at 08:30 for two hours, planned, confirmed, and ready. */
function seen(name: string, more: Partial<SeenCase> = {}): SeenCase {
  return {
    id: caseId.parse(`case_${name}`),
    reference: `LM-26-${name.toUpperCase()}`,
    theatreId: theatreId.parse('theatre_1'),
    theatre: 'Theatre 1',
    startsAt: `${DAY}T08:30:00.000Z`,
    endsAt: `${DAY}T10:30:00.000Z`,
    cancelled: false,
    planVersion: 1,
    confirmed: true,
    promised: [SET_A],
    standing: { kind: 'ready', until: null, sets: [SET_A] },
    ...more,
  };
}
const at = (time: string, hours: number, day = DAY) => ({
  startsAt: `${day}T${time}:00.000Z`,
  endsAt: new Date(Date.parse(`${day}T${time}:00Z`) + hours * 3_600_000).toISOString(),
});
const waiting = (until: string): SeenCase['standing'] => ({
  kind: 'waiting',
  until: `${DAY}T${until}:00.000Z`,
  sets: [SET_A],
});
const changes = (then: SeenCase[], now: SeenCase[]) => changesSince(then, now, { toldFrom: 30, day: DAY });
const kinds = (then: SeenCase[], now: SeenCase[]) => changes(then, now).cases.map(({ what }) => what.kind);

describe('what changed on a day since it was seen', () => {
  it('nothing, where nothing is other', () => {
    const day = [seen('aaaa'), seen('bbbb', { theatreId: theatreId.parse('theatre_2') })];
    expect(changes(day, structuredClone(day))).toEqual({ cases: [], orders: [] });
  });

  it.each<[string, SeenCase[], SeenCase[], string[]]>([
    ['a case that was not there', [], [seen('aaaa')], ['added']],
    ['one booked and cancelled between two looks is no news', [], [seen('aaaa', { cancelled: true })], []],
    [
      'cancelled, whatever else',
      [seen('aaaa')],
      [seen('aaaa', { cancelled: true, promised: [] })],
      ['cancelled'],
    ],
    [
      'put back, without its sets',
      [seen('aaaa', { cancelled: true, promised: [], standing: null })],
      [seen('aaaa', { promised: [], standing: null })],
      ['putBack'],
    ],
    ['to another time', [seen('aaaa')], [seen('aaaa', at('12:00', 2))], ['moved']],
    [
      'to another theatre',
      [seen('aaaa')],
      [seen('aaaa', { theatreId: theatreId.parse('theatre_2'), theatre: 'Theatre 2' })],
      ['moved'],
    ],
    ['an end alone', [seen('aaaa')], [seen('aaaa', at('08:30', 3))], ['moved']],
    ['to another day', [seen('aaaa')], [seen('aaaa', at('08:30', 2, '2026-01-16'))], ['leftDay']],
    ['the plan confirmed', [seen('aaaa', { confirmed: false })], [seen('aaaa')], ['plan']],
    ['a newer plan', [seen('aaaa')], [seen('aaaa', { planVersion: 2 })], ['plan']],
    ['another set promised', [seen('aaaa')], [seen('aaaa', { promised: [SET_B] })], ['promises']],
    ['ready, now waiting', [seen('aaaa')], [seen('aaaa', { standing: waiting('07:10') })], ['standing']],
    [
      'an estimate that moved by less than the wanted margin is no news',
      [seen('aaaa', { standing: waiting('07:10') })],
      [seen('aaaa', { standing: waiting('07:39') })],
      [],
    ],
    [
      'one that moved by as much is',
      [seen('aaaa', { standing: waiting('07:10') })],
      [seen('aaaa', { standing: waiting('07:40') })],
      ['standing'],
    ],
    [
      'waiting, now overdue',
      [seen('aaaa', { standing: waiting('06:40') })],
      [seen('aaaa', { standing: { kind: 'waiting', until: null, sets: [SET_A] } })],
      ['standing'],
    ],
    ['a case that began is no news', [seen('aaaa')], [seen('aaaa', { standing: null })], []],
    [
      'one that was beyond what is planned ahead and now stands somehow is',
      [seen('aaaa', { standing: null })],
      [seen('aaaa')],
      ['standing'],
    ],
    [
      'several at once',
      [seen('aaaa')],
      [
        seen('aaaa', {
          ...at('12:00', 2),
          promised: [],
          standing: { kind: 'noSetFree', until: null, sets: [] },
        }),
      ],
      ['moved', 'promises', 'standing'],
    ],
  ])('%s', (_what, then, now, expected) => {
    expect(kinds(then, now)).toEqual(expected);
  });

  it('the day is the hospital’s: a case at half past midnight in summer belongs to the day of its wall clock', () => {
    // British Summer Time is an hour ahead of UTC from the last Sunday of March (The Summer Time Order 2002)
    const night = { startsAt: '2026-07-13T23:30:00.000Z', endsAt: '2026-07-14T00:30:00.000Z' };
    const one = seen('aaaa', night);
    expect(changesSince([one], [one], { toldFrom: 30, day: '2026-07-14' }).cases).toEqual([]);
    expect(changesSince([one], [one], { toldFrom: 30, day: '2026-07-13' }).cases[0]?.what.kind).toBe(
      'leftDay',
    );
  });

  it('an order that changed is said once for its theatre, cases that came or went aside', () => {
    const [a, b, c] = [seen('aaaa'), seen('bbbb', at('11:00', 1)), seen('cccc', at('13:00', 1))];
    const now = [{ ...b, ...at('08:30', 1) }, { ...a, ...at('09:30', 2) }, seen('dddd', at('15:00', 1))];
    expect(changes([a, b, c], now).orders).toEqual([
      {
        theatre: 'Theatre 1',
        from: ['LM-26-AAAA', 'LM-26-BBBB'],
        to: ['LM-26-BBBB', 'LM-26-AAAA'],
        caseIds: ['case_bbbb', 'case_aaaa'],
      },
    ]);
    expect(changes([a, b, c], [a, c]).orders).toEqual([]);
    expect(changes([a, b], [{ ...a, ...at('09:00', 1) }, b]).orders).toEqual([]);
  });
});

describe('who, when and why', () => {
  const entry = (
    seq: number,
    action: string,
    things: string[],
    more: Partial<ListEntry> = {},
  ): ListEntry => ({
    seq,
    at: NOW,
    by: 'Gwen Sallis',
    action,
    why: null,
    things,
    ...more,
  });
  const by = (then: SeenCase[], now: SeenCase[], entries: ListEntry[]) =>
    attributed(changes(then, now), entries).cases.map((one) => one.by);

  it('names the newest entry that can have made the change, and no other', () => {
    const then = [seen('aaaa')];
    const now = [seen('aaaa', at('12:00', 2))];
    const entries = [
      entry(5, 'move-case', ['case_aaaa'], { by: 'Amir Foxton' }),
      entry(7, 'promise-set', ['case_aaaa']),
      entry(6, 'move-case', ['case_aaaa']),
      entry(9, 'move-case', ['case_bbbb']),
    ];
    expect(by(then, now, entries)).toMatchObject([{ by: 'Gwen Sallis', action: 'move-case', setCode: null }]);
    expect(by(then, now, entries.slice(1, 2))).toEqual([null]);
  });

  it('a case booked and then moved was added by its booking; one only moved came from another day', () => {
    const now = [seen('aaaa')];
    const booked = [entry(5, 'book-case', ['case_aaaa']), entry(6, 'move-case', ['case_aaaa'])];
    expect(by([], now, booked)[0]?.action).toBe('book-case');
    const lines = (entries: ListEntry[]) => changeLines(attributed(changes([], now), entries), NOW);
    expect(lines(booked)[0]?.word).toBe('Added');
    expect(lines(booked.slice(1))[0]?.word).toBe('Moved here');
  });

  it('how a case stands is put to the newest act on it or on its sets, which is said', () => {
    const then = [seen('aaaa')];
    const now = [seen('aaaa', { promised: [SET_A], standing: { kind: 'noSetFree', until: null, sets: [] } })];
    const held = entry(8, 'hold-set', [SET_A.id], { by: 'Wren Adeyemi', why: 'because its wrap was torn' });
    expect(by(then, now, [held, entry(4, 'confirm-plan', ['case_aaaa'])])).toMatchObject([
      { action: 'hold-set', setCode: 'SFS-01', why: 'because its wrap was torn' },
    ]);
    const [line] = changeLines(attributed(changes(then, now), [held]), NOW);
    expect(line?.sentence).toBe('No set free; it was ready.');
    expect(line?.by).toBe(
      'the newest on SFS-01: Set held by Wren Adeyemi, today 06:30: because its wrap was torn',
    );
    expect(changeLines(attributed(changes(then, now), []), NOW)[0]?.by).toBe(
      'no entry of the ledger: time went on',
    );
  });

  it('reads the reason of an entry from its detail, whatever form it has', () => {
    expect(whyWords({ because: 'no recovery bed' })).toBe('no recovery bed');
    expect(whyWords({ because: 'disputedCount' })).toBe('because its count is disputed');
    expect(whyWords({ reason: 'looked at again' })).toBe('looked at again');
    expect(whyWords({ from: 'a' })).toBeNull();
    expect(whyWords(null)).toBeNull();
  });
});
