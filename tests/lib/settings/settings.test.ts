import { describe, expect, it } from 'vitest';
import { boundsOf, entryOf, readEntry, valueWords } from '@/lib/settings/entry';
import { fieldsOf, SETTING_GROUPS, SETTING_KEYS } from '@/lib/settings/fields';
import { LOCAL_SETTINGS, parseSetting } from '@/lib/settings/local';

describe('every local setting', () => {
  it('is declared with its words, field by field, and none is declared that there is not', () => {
    expect(SETTING_KEYS.slice().sort()).toEqual(Object.keys(LOCAL_SETTINGS).sort());
    for (const key of SETTING_KEYS) {
      const stored = Object.keys(parseSetting(key, undefined)).sort();
      expect(
        fieldsOf(key)
          .map(([name]) => name)
          .sort(),
        key,
      ).toEqual(stored);
      for (const [name, field] of fieldsOf(key)) {
        expect(field.about.length, `${key}.${name}`).toBeGreaterThan(10);
        expect(field.source.length, `${key}.${name}`).toBeGreaterThan(5);
      }
      expect(SETTING_GROUPS[key].title).not.toBe('');
    }
  });

  it('goes through its form and comes back the same, at its default', () => {
    for (const key of SETTING_KEYS) {
      const value = parseSetting(key, undefined);
      expect(readEntry(key, entryOf(key, value)), key).toEqual({ ok: true, value });
    }
  });

  it('offers every choice its schema takes, and no other', () => {
    for (const key of SETTING_KEYS) {
      for (const [name, field] of fieldsOf(key)) {
        if (field.kind !== 'choice' && field.kind !== 'several') continue;
        for (const choice of Object.keys(field.choices)) {
          const value = { [name]: field.kind === 'choice' ? choice : [choice] };
          expect(() => parseSetting(key, value), `${key}.${name}: ${choice}`).not.toThrow();
        }
        const stranger = field.kind === 'choice' ? 'noSuchThing' : ['noSuchThing'];
        expect(() => parseSetting(key, { [name]: stranger }), `${key}.${name}`).toThrow();
      }
    }
  });

  it('takes its numbers from bound to bound and nothing beyond, in the unit shown', () => {
    for (const key of SETTING_KEYS) {
      const bounds = boundsOf(key);
      for (const [name, field] of fieldsOf(key)) {
        if (field.kind !== 'number') continue;
        const { min, max } = bounds[name] ?? { min: null, max: null };
        if (min === null || max === null) throw new Error(`${key}.${name} has no bounds`);
        const read = (value: number) =>
          readEntry(key, { ...entryOf(key, parseSetting(key, undefined)), [name]: String(value) });
        const step = 10 ** -field.decimals;
        const beyond = Number((max + step).toFixed(field.decimals));
        expect(read(min).ok, `${key}.${name} at ${min}`).toBe(true);
        expect(read(max).ok, `${key}.${name} at ${max}`).toBe(true);
        expect(read(beyond).ok, `${key}.${name} at ${beyond}`).toBe(false);
      }
    }
  });
});

describe('a form that is wrong', () => {
  const codes = (entry: unknown) => {
    const read = readEntry('sets', entry);
    return read.ok ? [] : read.problems.map(({ path, code }) => [path.join('.'), code]);
  };

  it('says everything at once, each at its field', () => {
    expect(codes({ massLimitsGrams: '7; ten; 400', warnAtPercent: '12.5', colour: 'red' })).toEqual([
      ['colour', 'unknown-field'],
      ['massLimitsGrams', 'not-a-number'],
      ['massLimitsGrams', 'too-large'],
      ['warnAtPercent', 'too-fine'],
    ]);
    expect(codes({})).toEqual([
      ['massLimitsGrams', 'not-stated'],
      ['warnAtPercent', 'not-stated'],
    ]);
    for (const nothing of [null, 'seven', 7, ['7']]) expect(codes(nothing)).toEqual([['', 'not-a-setting']]);
  });

  it('never rounds what was written, and takes no sign, exponent, comma or foreign digit for a number', () => {
    for (const text of ['-7', '1e3', '٧', '7 kg', '0x10', 'Infinity', 'NaN', '7.'])
      expect(codes({ massLimitsGrams: text, warnAtPercent: '90' }), text).toEqual([
        ['massLimitsGrams', 'not-a-number'],
      ]);
    expect(codes({ massLimitsGrams: '7.001', warnAtPercent: '90' })).toEqual([
      ['massLimitsGrams', 'too-fine'],
    ]);
    expect(codes({ massLimitsGrams: '7; 7', warnAtPercent: '90' })).toEqual([['massLimitsGrams', 'twice']]);
  });

  it('keeps units exact: 11.34 kg is 11,340 g (25 lb to the gram and a half: 25 × 453.59237 g), 0.2 mm is 200 µm', () => {
    expect(readEntry('sets', { massLimitsGrams: '11.34; 7', warnAtPercent: '90' })).toEqual({
      ok: true,
      value: { massLimitsGrams: [7000, 11_340], warnAtPercent: 90 },
    });
    expect(Math.abs(25 * 453.59237 - 11_340)).toBeLessThan(1.5);
    expect(readEntry('fit', { sleeveToleranceUm: '0.2' })).toEqual({
      ok: true,
      value: { sleeveToleranceUm: 200 },
    });
    const [, tolerance] = fieldsOf('fit')[0] ?? [];
    if (!tolerance) throw new Error('the tolerance is a field');
    expect(valueWords(tolerance, 200)).toBe('0.2 mm');
  });

  it('takes dates one on a line, each once, and keeps them in order', () => {
    const loans = entryOf('loans', parseSetting('loans', undefined));
    const read = (holidays: unknown) => readEntry('loans', { ...loans, holidays });
    expect(read('2026-12-28\n2026-12-25\n')).toMatchObject({
      ok: true,
      value: { holidays: ['2026-12-25', '2026-12-28'] },
    });
    expect(read(' ')).toMatchObject({ ok: true, value: { holidays: [] } });
    // 2026 is no leap year: it is not divisible by four (calendar of Gregory XIII)
    for (const wrong of ['2026-02-29', '25.12.2026', 'Christmas', '2026-12-25\n2026-13-01'])
      expect(read(wrong), wrong).toMatchObject({
        ok: false,
        problems: [{ path: ['holidays'], code: 'not-a-date' }],
      });
    expect(read('2026-12-25; 2026-12-25')).toMatchObject({
      problems: [{ path: ['holidays'], code: 'twice' }],
    });
    expect(read(undefined)).toMatchObject({ problems: [{ path: ['holidays'], code: 'not-stated' }] });
  });
});
