import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { badgeCode, looksLikeBadge, newBadgeCode } from '@/lib/people/badge';
import { waitSeconds } from '@/lib/people/delay';
import { wayBack } from '@/lib/people/path';
import { passwordFaults, pinFaults } from '@/lib/people/secrets';
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
  // NIST SP 800-63B-4, 3.1.1.2 (quoted from memory: confirm before relying on it): at least 15 characters where the
  // password is the only factor, at least 64 allowed, no rules of composition, and a list of common ones refused.
  test('is long, and not among the first that are guessed', () => {
    expect(passwordFaults(`${'x'.repeat(5)} tea rose lathe`, 'Wren Adeyemi')).toEqual([]);
    expect(passwordFaults('fourteen chars', 'Wren Adeyemi')).toEqual(['tooShort']);
    expect(passwordFaults('password1234567', 'Wren Adeyemi')).toEqual(['common']);
    expect(passwordFaults('wrenadeyemi2026', 'Wren Adeyemi')).toEqual(['name']);
    expect(passwordFaults('abcabcabcabcabc', 'Wren Adeyemi')).toContain('repeated');
    expect(passwordFaults('tea rose lathe '.repeat(4), 'Wren Adeyemi')).toEqual([]);
    expect(passwordFaults(`${'e\u0301'.repeat(7)}lathe sp`, 'Wren Adeyemi'), 'characters, not bytes').toEqual(
      [],
    );
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
