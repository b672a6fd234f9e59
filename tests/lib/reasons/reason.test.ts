import { describe, expect, it } from 'vitest';
import { newReason, offered, sameIds } from '@/lib/reasons/reason';

describe('a reason of the hospital’s own', () => {
  it('has a short code in capitals and words; everything wrong with it is told at once', () => {
    expect(newReason.parse({ kind: 'waste', code: ' w1 ', words: ' fell ' })).toEqual({
      kind: 'waste',
      code: 'W1',
      words: 'fell',
    });
    const wrong = newReason.safeParse({ kind: '', code: 'no spaces', words: '  ' });
    expect(wrong.error?.issues.map(({ path }) => path.join('.'))).toEqual(['kind', 'code', 'words']);
  });

  it('is offered in its order while it is in use, for its own kind alone', () => {
    const all = [
      { id: 'a', kind: 'waste' as const, inUse: true },
      { id: 'b', kind: 'delay' as const, inUse: true },
      { id: 'c', kind: 'waste' as const, inUse: false },
      { id: 'd', kind: 'waste' as const, inUse: true },
    ];
    expect(offered(all, 'waste').map(({ id }) => id)).toEqual(['a', 'd']);
  });

  it.each([
    [['a', 'b'], ['b', 'a'], true],
    [['a', 'b'], ['a'], false],
    [['a', 'b'], ['a', 'a'], false],
    [['a', 'a'], ['a', 'b'], false],
  ])('%j and %j name the same: %s', (a, b, same) => expect(sameIds(a, b)).toBe(same));
});
