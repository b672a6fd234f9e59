import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ItemId, LineId } from '@/lib/identity/ids';
import { checkVersion, remarksOnVersion } from '@/lib/sets/checkVersion';
import { compareVersions } from '@/lib/sets/compareVersions';
import type { ConfigurationLine, MustHaveClass } from '@/lib/sets/configuration';
import { catalogueOf, lineOf, versionOf } from './fixtures';

const A = 'item_a' as ItemId;
const B = 'item_b' as ItemId;
const RACK = 'item_rack' as ItemId;
const items = catalogueOf(['a', 'b', 'c', 'old'], ['old']);
const two = { row: 1, slot: 2 };

/** Expected answers are the project's own rules for a version (common practice, no source). */
const cases: {
  why: string;
  lines: ConfigurationLine[];
  codes: string[];
  change?: Parameters<typeof versionOf>[1];
}[] = [
  { why: 'a sound version has nothing against it', lines: [lineOf('a'), lineOf('b', two)], codes: [] },
  { why: 'a set of nothing is no set', lines: [], codes: ['empty'] },
  { why: 'an item that was withdrawn can’t be asked for', lines: [lineOf('old')], codes: ['not-current'] },
  { why: 'an id nobody knows points at nothing', lines: [lineOf('ghost')], codes: ['unknown-item'] },
  {
    why: 'a minimum above the expected is never met',
    lines: [lineOf('a', { minimum: 2 })],
    codes: ['above-expected'],
  },
  { why: 'two lines can’t lie in one slot', lines: [lineOf('a'), lineOf('b')], codes: ['taken'] },
  { why: 'a line in no named layer is lost', lines: [lineOf('a', { layer: 2 })], codes: ['no-such-layer'] },
  { why: 'nothing stands in for itself', lines: [lineOf('a', { substitutes: [A] })], codes: ['itself'] },
  {
    why: 'a substitute stands in one way: a circle of two leads nowhere, and both lines say so',
    lines: [lineOf('a', { substitutes: [B] }), lineOf('b', { ...two, substitutes: [A] })],
    codes: ['circular', 'circular'],
  },
  {
    why: 'a longer circle is a circle too',
    lines: [
      lineOf('a', { substitutes: [B] }),
      lineOf('b', { ...two, substitutes: ['item_c' as ItemId] }),
      lineOf('c', { row: 2, substitutes: [A] }),
    ],
    codes: ['circular', 'circular', 'circular'],
  },
  {
    why: 'a chain of substitutes that comes back to nobody is fine',
    lines: [lineOf('a', { substitutes: [B] }), lineOf('b', { ...two, substitutes: ['item_c' as ItemId] })],
    codes: [],
  },
  {
    why: 'a cell beyond the rack’s columns does not exist',
    lines: [lineOf('rack', two), lineOf('a', { slot: 4, row: 2, rackItemId: RACK })],
    codes: ['off-the-rack'],
  },
  {
    why: 'a rack that is not in the layer holds nothing there',
    lines: [lineOf('a', { rackItemId: RACK })],
    codes: ['rack-not-in-layer'],
  },
  {
    why: 'an instrument is no basket',
    lines: [lineOf('a')],
    codes: ['not-a-box'],
    change: { basketItemId: B },
  },
  {
    why: 'a layer named twice is two names for one thing',
    lines: [lineOf('a')],
    codes: ['duplicate'],
    change: {
      layers: [
        { layer: 1, name: 'One' },
        { layer: 1, name: 'Again' },
      ],
    },
  },
];

describe('checkVersion', () => {
  it.each(cases)('$why', ({ lines, codes, change }) => {
    expect(checkVersion(versionOf(lines, change), items).map(({ code }) => code)).toEqual(codes);
  });

  it('collects all problems at once, each at its line', () => {
    const problems = checkVersion(versionOf([lineOf('old'), lineOf('ghost', { ...two, minimum: 5 })]), items);
    expect(problems.map(({ path }) => path.join('.'))).toEqual([
      'lines.0.itemId',
      'lines.1.itemId',
      'lines.1.minimum',
    ]);
  });

  it('remarks on a class 2 line without a substitute, and prevents nothing', () => {
    const version = versionOf([lineOf('a', { mustHaveClass: 2 })]);
    expect(remarksOnVersion(version, items).map(({ code }) => code)).toEqual(['no-substitute']);
    expect(checkVersion(version, items)).toEqual([]);
  });
});

const anyLine = fc
  .record({
    item: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
    slot: fc.integer({ min: 1, max: 9 }),
    expected: fc.integer({ min: 1, max: 9 }),
    mustHaveClass: fc.constantFrom<MustHaveClass>(1, 2, 3, 4),
  })
  .map(({ item, ...change }) => lineOf(item, change));
const anyVersion = fc
  .uniqueArray(anyLine, { maxLength: 8, selector: ({ slot }) => slot })
  .map((lines) => versionOf(lines.map((line, at) => ({ ...line, id: `line_${at}` as LineId }))));

describe('compareVersions', () => {
  it('finds nothing between a version and itself, whatever the ids and the order of its lines', () => {
    fc.assert(
      fc.property(anyVersion, (version) => {
        const again = versionOf(
          [...version.lines].reverse().map((line, at) => ({ ...line, id: `line_new-${at}` as LineId })),
        );
        expect(compareVersions(version, again).lines).toEqual([]);
      }),
    );
  });

  it('says the same from the other side: what was added is then removed, and no piece is lost', () => {
    fc.assert(
      fc.property(anyVersion, anyVersion, (before, after) => {
        const there = compareVersions(before, after).lines;
        const back = compareVersions(after, before).lines;
        const count = (changes: typeof there, kind: string) =>
          changes.filter((one) => one.kind === kind).length;
        expect(count(back, 'added')).toBe(count(there, 'removed'));
        expect(count(back, 'removed')).toBe(count(there, 'added'));
        expect(before.lines.length + count(there, 'added') - count(there, 'removed')).toBe(
          after.lines.length,
        );
      }),
    );
  });

  it('tells a line that moved from one that was taken out', () => {
    const [change] = compareVersions(versionOf([lineOf('a')]), versionOf([lineOf('a', two)])).lines;
    expect(change).toMatchObject({ kind: 'changed', fields: ['place'] });
  });
});
