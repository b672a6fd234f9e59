import { listOf } from '@/app/api/v1/_reading/list';
import { completenessOfSets, type SetCompleteness } from '@/db/queries/completeness';
import { listSets, type SetOnFile } from '@/db/queries/sets';

/** A set in the list of all, without its lines. */
interface SetListed extends Omit<SetOnFile, 'lines' | 'foreign'> {
  completeness: SetCompleteness | null;
}

/** Every set: where it is in its turn, how complete it is, and to which cases it is promised. */
export const GET = listOf('GET /api/v1/sets', {
  rows: async ({ db }): Promise<SetListed[]> => {
    const [sets, figures] = await Promise.all([listSets(db), completenessOfSets(db)]);
    const figuresOf = new Map(figures.map((one) => [one.setId, one]));
    return sets.map(({ lines: _lines, foreign: _foreign, ...set }) => ({
      ...set,
      completeness: figuresOf.get(set.id) ?? null,
    }));
  },
  keyOf: ({ id }) => [id],
});
