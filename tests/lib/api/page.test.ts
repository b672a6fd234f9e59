import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compareKeys, type Key, rowsAfter } from '@/lib/api/page';

interface Row {
  at: string;
  id: number;
}
const keyOf = ({ at, id }: Row): Key => [at, id];
const row = fc.record({ at: fc.constantFrom('a', 'b', 'c', 'ä', ''), id: fc.nat(400) });
const rows = fc.uniqueArray(row, { selector: ({ at, id }) => `${at} ${id}`, maxLength: 60 });

/** Walks a list page by page; `meanwhile` is what the list is by the time the next page is asked for. */
function walked(limit: number, newestFirst: boolean, meanwhile: (page: number) => readonly Row[]): Row[] {
  const all: Row[] = [];
  let after: Key | null = null;
  for (let page = 0; ; page += 1) {
    const found = rowsAfter(meanwhile(page), { keyOf, newestFirst, after, limit: limit + 1 });
    const shown = found.slice(0, limit);
    all.push(...shown);
    const last = shown.at(-1);
    if (found.length <= limit || last === undefined) return all;
    after = keyOf(last);
  }
}

const inOrder = (list: readonly Row[], newestFirst: boolean) =>
  [...list].sort((a, b) => (newestFirst ? -1 : 1) * compareKeys(keyOf(a), keyOf(b)));

test('pages one after the other are the whole list, in its order, whatever the length of a page', () => {
  fc.assert(
    fc.property(rows, fc.integer({ min: 1, max: 9 }), fc.boolean(), (list, limit, newestFirst) => {
      expect(walked(limit, newestFirst, () => list)).toEqual(inOrder(list, newestFirst));
    }),
  );
});

test('while rows come and go nothing is told twice, and whatever was there all the time is told', () => {
  fc.assert(
    fc.property(
      rows,
      fc.array(rows, { maxLength: 6 }),
      fc.integer({ min: 1, max: 5 }),
      fc.boolean(),
      (stays, comings, limit, newestFirst) => {
        const lists = [stays, ...comings.map((others) => unique([...stays, ...others]))];
        const told = walked(limit, newestFirst, (page) => lists[Math.min(page, lists.length - 1)] ?? stays);
        expect(told).toEqual(inOrder(told, newestFirst));
        expect(unique(told)).toHaveLength(told.length);
        const named = new Set(told.map((one) => JSON.stringify(one)));
        expect(stays.filter((one) => !named.has(JSON.stringify(one)))).toEqual([]);
      },
    ),
  );
});

const unique = (list: readonly Row[]): Row[] => [
  ...new Map(list.map((one) => [`${one.at} ${one.id}`, one])).values(),
];

test('keys are in one order: no key is before itself, and of two different ones one comes first', () => {
  const key = fc.tuple(fc.string(), fc.integer());
  fc.assert(
    fc.property(key, key, (a, b) => {
      expect(Math.sign(compareKeys(a, b)) + Math.sign(compareKeys(b, a))).toBe(0);
      expect(compareKeys(a, b) === 0).toBe(a[0] === b[0] && a[1] === b[1]);
    }),
  );
});
