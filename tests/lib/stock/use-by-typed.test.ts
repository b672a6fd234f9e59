import { describe, expect, it } from 'vitest';
import { typedUseBy } from '@/lib/stock/useByTyped';

describe('a use-by as it is typed', () => {
  it('is a date, or the last day of a month', () => {
    expect(typedUseBy('2028-03-31')).toBe('2028-03-31');
    expect(typedUseBy(' 2028-3-1 ')).toBe('2028-03-01');
    // GS1 General Specifications, AI 17: where only year and month are stated, the last day of the month is meant
    expect(typedUseBy('2028-02')).toBe('2028-02-29');
    expect(typedUseBy('2027-02')).toBe('2027-02-28');
    expect(typedUseBy('2028-11')).toBe('2028-11-30');
  });

  it('is never guessed', () => {
    for (const text of [
      '',
      '31.3.2028',
      '2028-13',
      '2028-02-30',
      '2027-02-29',
      '2028-03-00',
      '28-03-31',
      'soon',
    ])
      expect(typedUseBy(text), text).toBeNull();
  });
});
