import { describe, expect, it } from 'vitest';
import { loadSetStanding, loadSetStandings } from '@/db/queries/setStandings';
import { listSets, type SetOnFile } from '@/db/queries/sets';
import { singlePacks } from '@/db/queries/singlePacks';
import { whatLiesBeside } from '@/db/queries/whatLiesBeside';
import type { CaseId } from '@/lib/identity/ids';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { lacksNothing } from '@/lib/sets/standing';
import { demoDatabase } from '../../setup/database';

const now = '2026-01-14T08:00:00.000Z';

describe('what lies beside a set for a case', () => {
  it('is what going through every set gives, whoever has decided what and whatever is out of service', async () => {
    const db = await demoDatabase();
    const all = await listSets(db);
    const packs = await singlePacks(db.read, now);
    const promised = all.flatMap((set) => set.promisedTo.map(({ caseId }) => ({ set, caseId })));
    expect(promised.length).toBeGreaterThan(5);
    // sets that serve some cases and not others, in turn and in no order of any other fact
    const decided = new Set(all.filter((_, at) => at % 3 === 0).map(({ id }) => id));
    const serves = (set: SetOnFile, forCase: string) =>
      !set.outOfService && !(decided.has(set.id) && (set.code.length + forCase.length) % 2 === 0);
    const beside = whatLiesBeside({ sets: all, packs, serves, hasDecision: ({ id }) => decided.has(id) });
    const travelling = packs.map((pack, at) => ({
      ...pack,
      with: at % 2 === 0 ? [all[at % all.length]?.id ?? ''] : [],
    }));
    const withPacks = whatLiesBeside({
      sets: all,
      packs: travelling,
      serves,
      hasDecision: ({ id }) => decided.has(id),
    });
    for (const day of ['2026-01-14', '2026-05-01', '2027-02-01'].map((text) => plainDate.parse(text)))
      for (const { set, caseId } of promised) {
        expect(heap(beside(set, caseId as CaseId, day))).toEqual(plain(set, caseId, day, packs));
        expect(heap(withPacks(set, caseId as CaseId, day))).toEqual(plain(set, caseId, day, travelling));
      }

    function plain(set: SetOnFile, caseId: string, day: PlainDate, single: typeof packs) {
      const ofCase = all.filter((one) => one.promisedTo.some((promise) => promise.caseId === caseId));
      const kinds = new Set<string>(ofCase.map(({ configuration }) => configuration.id));
      const there = all.filter(
        (one) =>
          one.id !== set.id &&
          serves(one, caseId) &&
          (ofCase.includes(one) ||
            (!kinds.has(one.configuration.id) &&
              one.step === 'inSterileStore' &&
              one.promisedTo.length === 0 &&
              (one.useBy === null || one.useBy >= day))),
      );
      const pieces = there.flatMap(({ lines }) =>
        lines.map(({ itemId, found }) => ({ itemId, found: found ?? 0 })),
      );
      const ids = new Set<string>(there.map(({ id }) => id));
      const sent = single.flatMap(({ itemId, with: sets }) =>
        sets.filter((id) => ids.has(id)).map(() => ({ itemId, found: 1 })),
      );
      return heap([...pieces, ...sent]);
    }
  });

  it('a set stands in the list as it stands alone; cases are judged in the list where something is lacking', async () => {
    const db = await demoDatabase();
    const { sets } = await loadSetStandings(db, { now });
    for (const { set, standing, newer } of sets) {
      const alone = await loadSetStanding(db, set.id, now);
      const { cases, ...rest } = alone?.standing ?? { cases: [] };
      expect({ ...standing, cases: [] }).toEqual({ ...rest, cases: [] });
      expect(standing.cases).toEqual(lacksNothing(set.lines) ? [] : cases);
      expect(alone?.newer).toBe(newer);
    }
  });
});

/** Pieces by item, without items of which there are none. */
function heap(pieces: readonly { itemId: string; found: number }[]): Record<string, number> {
  const found: Record<string, number> = {};
  for (const piece of pieces) found[piece.itemId] = (found[piece.itemId] ?? 0) + piece.found;
  return Object.fromEntries(
    Object.entries(found)
      .filter(([, many]) => many !== 0)
      .sort(),
  );
}
