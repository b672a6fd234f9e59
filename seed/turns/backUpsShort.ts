import type { Queries } from '@/db/client';
import { loadSetStandings } from '@/db/queries/setStandings';
import { shortFacts } from '@/db/queries/short/facts';
import { THE_PROGRAM } from '@/db/reader';
import { refillJobs, sets, shortDecisions } from '@/db/schema';
import type { PackShort, PackStop } from '@/lib/packs/pack';
import { shortAsk, shortLinesOf } from '@/lib/sets/short/ask';
import { PEOPLE } from '../hospital/people';
import { insertAll } from '../insertAll';

/** Sets that are short in back-ups alone, by id: a packer may close those, and the pack says SHORT. */
export async function backUpsShort(write: Queries, now: string): Promise<Map<string, PackShort>> {
  const { sets: standings } = await loadSetStandings({ read: write, reader: THE_PROGRAM }, { now });
  const stopsOf = new Map<string, PackStop[]>(
    standings.map(({ set, standing }) => [set.id, standing.stops as PackStop[]]),
  );
  const found = new Map<string, PackShort>();
  for (const set of await write.select().from(sets)) {
    const ask = shortAsk(await shortFacts(write, set, now));
    if (ask.asks !== 'technician') continue;
    const stops = stopsOf.get(set.id) ?? [];
    found.set(set.id, { lines: shortLinesOf(ask.findings), stops, substitutes: [], forCase: null });
  }
  return found;
}

export interface PackedShort {
  setId: string;
  turnId: string;
  packedBy: string;
  packedAt: string;
  short: PackShort;
}

/** The decision under which a packer closed a set that is short in back-ups alone. */
export const decisionIdOf = ({ setId }: Pick<PackedShort, 'setId'>) => `decision_demo-${setId.slice(4)}`;

/** What packing such a set leaves beside its pack: the packer's own decision, and a job for each line to be filled. */
export async function insertBackUpsDecisions(write: Queries, packed: readonly PackedShort[]): Promise<void> {
  await insertAll(
    write,
    shortDecisions,
    packed.map(({ setId, turnId, packedBy, packedAt, short }) => ({
      id: decisionIdOf({ setId }),
      setId,
      turnId,
      kind: 'backUps',
      lines: short.lines,
      substitutes: [],
      reason: 'None of it on the shelf, and the must-haves are there.',
      caseId: null,
      approvals: [
        {
          as: 'technician',
          personId: packedBy,
          name: PEOPLE.find(({ id }) => id === packedBy)?.name ?? packedBy,
          method: 'pin',
          at: packedAt,
        },
      ],
      decidedAt: packedAt,
      lapsesAt: null,
      lapsedAt: null,
    })),
  );
  await insertAll(
    write,
    refillJobs,
    packed.flatMap(({ setId, turnId, packedBy, packedAt, short }) =>
      short.lines.map(({ lineId, itemId, short: quantity }, at) => ({
        id: `refill_demo-${setId.slice(4)}-${at + 1}`,
        setId,
        lineId,
        itemId,
        quantity,
        foundBy: packedBy,
        openedAt: packedAt,
        turnId,
      })),
    ),
  );
}
