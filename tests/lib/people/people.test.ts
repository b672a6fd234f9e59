import { dictionary } from '@zxcvbn-ts/language-common';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { badgeCode, looksLikeBadge, newBadgeCode } from '@/lib/people/badge';
import { waitSeconds } from '@/lib/people/delay';
import { passwordFaults } from '@/lib/people/password';
import { wayBack } from '@/lib/people/path';
import { pinFaults, SHORTEST_PASSWORD } from '@/lib/people/secrets';
import { endOfSession, isAlive } from '@/lib/people/session';
import { entryInSession } from '@/lib/people/ticket';

const at = (minutes: number) => new Date(Date.UTC(2026, 0, 14, 6, 0) + minutes * 60_000).toISOString();

test('the wait grows and ends at a minute, so that nobody is locked out', () => {
  const waits = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 40].map(waitSeconds);
  expect(waits).toEqual([0, 0, 1, 2, 4, 8, 16, 32, 60, 60, 60]);
});

describe('a session', () => {
  const times = { beganAt: at(0), seenAt: at(0), endsAt: at(720), endedAt: null };

  test('ends after the idle time, at its absolute limit or by hand, whichever comes first', () => {
    expect(endOfSession(times, 30)).toBe(at(30));
    expect(endOfSession({ ...times, seenAt: at(710) }, 30)).toBe(at(720));
    expect(endOfSession({ ...times, endedAt: at(5) }, 30)).toBe(at(5));
    expect(isAlive(times, at(29), 30)).toBe(true);
    expect(isAlive(times, at(30), 30)).toBe(false);
    expect(isAlive({ ...times, endedAt: at(5) }, at(1), 30)).toBe(false);
  });

  test('takes an entry of its own time for twelve hours after its end, and no other', () => {
    const over = { ...times, endedAt: at(60) };
    expect(entryInSession(over, at(59), at(60 + 12 * 60))).toBe('good');
    expect(entryInSession(over, at(59), at(61 + 12 * 60))).toBe('tooLate');
    expect(entryInSession(over, at(66), at(67))).toBe('outside');
    expect(entryInSession(over, at(-6), at(1))).toBe('outside');
    expect(entryInSession(over, 'no time at all', at(1))).toBe('outside');
  });
});

describe('a badge', () => {
  test('is known in whatever a scanner types around it, and whole only when it is whole', () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 26, maxLength: 26 }), (random) => {
        const code = newBadgeCode(random);
        expect(badgeCode(code)).toBe(code);
        expect(badgeCode(`]d1${code.toLowerCase()}`)).toBe(code);
        expect(badgeCode(code.slice(0, -1))).toBeNull();
        expect(looksLikeBadge(code.slice(0, 12).toLowerCase())).toBe(true);
      }),
      { seed: 20260114, numRuns: 200 },
    );
    expect(looksLikeBadge('0109521234543213')).toBe(false);
  });
});

describe('a password', () => {
  const common = new Set(dictionary['passwords-common'].map(String));
  const placeNames = ['Saint Osyth’s Hospital', 'Theatre 4', 'Burns theatre', 'Bay C', 'Kestrel'];
  const faults = (password: string, name = 'Wren Adeyemi') =>
    passwordFaults(password, { name, placeNames, common });

  // NIST SP 800-63B-4, 3.1.1.2 (quoted from memory: confirm before relying on it): at least 15 characters where the
  // password is the only factor, at least 64 allowed, no rules of composition, and a list of common ones refused.
  test('is long, and not among the first that are guessed', () => {
    expect(faults(`${'x'.repeat(5)} tea rose lathe`)).toEqual([]);
    expect(faults('fourteen chars')).toEqual(['tooShort']);
    expect(faults('password1234567')).toContain('common');
    expect(faults('wrenadeyemi2026')).toEqual(['name']);
    expect(faults('Adeyemi, Wr3n: adeyemi')).toEqual(['name']);
    expect(faults('abcabcabcabcabc')).toContain('repeated');
    expect(faults('tea rose lathe '.repeat(4))).toEqual([]);
    expect(faults(`${'e\u0301'.repeat(7)}lathe sp`), 'characters, not bytes').toEqual([]);
    expect(faults('a1'.repeat(64))).not.toContain('tooLong');
    expect(faults(`${'a1'.repeat(64)}b`)).toEqual(['tooLong']);
  });

  test('is not made of names and words of the place alone', () => {
    const ofPlace = [
      'saint osyth’s hospital',
      'SAINTOSYTHSHOSPITAL',
      'Osyth-Hospital-2026',
      'kestrel & burns theatre 4!',
      'kitwright kitwright 1',
      'K1twright/Kestr3l',
      'Sterile Services Department',
      'decontamination lead 07',
      'wren adeyemi at kestrel',
      '2026 hospital hospital',
    ];
    for (const password of ofPlace) expect(faults(password), password).toContain('place');
    const more = [
      'kestrel plum lathe mist',
      'saint osyth eats cedar',
      'burns theatre zebra',
      'osyth k9w2q8xv4jd',
    ];
    for (const password of more) expect(faults(password), password).toEqual([]);
    expect(passwordFaults('kestrel kestrel', { name: 'Wren Adeyemi', placeNames: [], common })).not.toContain(
      'place',
    );
  });

  // Against the list itself (@zxcvbn-ts/language-common): few of its own are long enough, so those that are, and its
  // first 3,000 made long enough in the ways people do it.
  test('is none of thousands that many take, as they are or made longer', () => {
    const listed = [...common];
    expect(listed.length).toBeGreaterThan(49_000);
    const long = listed.filter((one) => one.length >= SHORTEST_PASSWORD);
    expect(long.length).toBeGreaterThan(30);
    const first = listed.slice(0, 3000);
    const ways: ((one: string) => string)[] = [
      (one) => one.repeat(Math.ceil(SHORTEST_PASSWORD / one.length)),
      (one) => `${one} `.repeat(Math.ceil(SHORTEST_PASSWORD / one.length)),
      // what is added to figures makes another number: only words are known again
      (one) => (/\p{L}/u.test(one) ? one.padEnd(SHORTEST_PASSWORD, '1987!2024') : one.repeat(15)),
      (one) =>
        /\p{L}/u.test(one) ? `2024-${one.toUpperCase()}`.padEnd(SHORTEST_PASSWORD, '!') : one.repeat(15),
    ];
    const tried = [...long, ...ways.flatMap((way) => first.map(way))];
    expect(tried.filter((password) => faults(password).length === 0).slice(0, 20)).toEqual([]);
    const different = new Set(tried.map((one) => one.toLowerCase()));
    expect([...different].filter((one) => [...one].length >= SHORTEST_PASSWORD).length).toBeGreaterThan(
      10_000,
    );
  });

  test('of several common words is a good one', () => {
    for (const password of [
      'dragon monkey shadow lathe',
      'summer.purple.cookie.wizard',
      'plumcedarmistlathe',
    ])
      expect(faults(password), password).toEqual([]);
  });
});

test('a PIN has six to eight digits and no pattern', () => {
  expect(['274091', '5093817', '60391748'].map(pinFaults)).toEqual([[], [], []]);
  for (const digits of ['12345', '123456789', '12a456', '']) expect(pinFaults(digits)).toEqual(['notDigits']);
  for (const pattern of ['111111', '123456', '987654', '121212', '123123', '112211', '190784', '19840719'])
    expect(pinFaults(pattern), pattern).toEqual(['pattern']);
});

test('the way back after signing in never leads out of the program', () => {
  expect(wayBack('/sets?step=onBench')).toBe('/sets?step=onBench');
  const outside = [
    '//evil.example',
    'https://evil.example/',
    '/\\evil.example',
    'javascript:alert(1)',
    '',
    null,
    '/sign-in',
  ];
  for (const from of outside) expect(wayBack(from), String(from)).toBe('/');
});
