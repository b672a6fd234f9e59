import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { configurationLines, labelPrints, packs, setContents, sets } from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import { packNumberOf } from '@/lib/packs/packNumber';
import { type HospitalClock, localDate } from '../hospitalClock';
import { setIdOf } from '../insertSets';
import type { SetHistory, TurnTaken } from './history';
import { decisionIdOf, insertShortDecisions, packedShort } from './packedShort';

const USE_BY_DAYS = 180;
const PACKS_BEFORE = 3_100;

/** One pack of the history, on its way into a load. */
export interface PackMade {
  history: SetHistory;
  turn: TurnTaken;
  turnId: string;
  packedAt: number;
  packedBy: string;
  packId: string;
  /** Whether this is the turn the set is in now. */
  present: boolean;
}

/** The packs with what lay in them, their first labels, and for those closed short what let them go. */
export async function insertPacks(
  write: Queries,
  made: readonly PackMade[],
  loadOf: ReadonlyMap<string, string>,
  clock: HospitalClock,
): Promise<void> {
  const setOf = new Map((await write.select().from(sets)).map((row) => [row.id, row]));
  const held = groupBy(await write.select().from(setContents), ({ setId }) => setId);
  const lineOf = new Map((await write.select().from(configurationLines)).map((row) => [row.id, row]));
  const contentsOf = (setId: string) =>
    (held.get(setId) ?? []).flatMap(({ lineId, found }) => {
      const line = lineOf.get(lineId);
      if (!line) return [];
      return [
        { lineId, itemId: line.itemId, mustHaveClass: line.mustHaveClass, expected: line.expected, found },
      ];
    });
  const present = made.filter((pack) => pack.present);
  const short = await packedShort(
    write,
    present.map(({ history: { plan }, turnId, packedBy, packedAt }) => {
      return { plan, setId: setIdOf(plan.code), turnId, packedBy, packedAt };
    }),
    clock.now.toISOString(),
  );
  await insertShortDecisions(write, short);
  const shortOf = new Map(short.map((one) => [one.turnId, one]));
  await insertMany(
    write,
    packs,
    made.map((pack, index) => {
      const setId = setIdOf(pack.history.plan.code);
      const accepted = pack.turn.steps.find(({ step }) => step === 'inSterileStore')?.at ?? null;
      const lacks = shortOf.get(pack.turnId);
      return {
        id: pack.packId,
        number: packNumberOf(PACKS_BEFORE + index + 1),
        kind: 'set',
        setId,
        turnId: pack.turnId,
        versionId: setOf.get(setId)?.versionId ?? null,
        barrier: index % 4 === 0 ? 'container' : 'wrap',
        packedBy: pack.packedBy,
        packedAt: new Date(pack.packedAt).toISOString(),
        contents: contentsOf(setId),
        short: lacks?.short ?? null,
        decisionId: lacks ? decisionIdOf(lacks) : null,
        forCaseId: lacks?.short.forCase?.id ?? null,
        loadId: loadOf.get(pack.packId) ?? null,
        useBy: pack.present
          ? (setOf.get(setId)?.useBy ?? null)
          : accepted === null
            ? null
            : localDate(new Date(accepted + USE_BY_DAYS * 86_400_000)),
        state: packState(pack),
        revision: 1,
      };
    }),
  );
  await insertMany(
    write,
    labelPrints,
    made.map(({ packId, packedBy, packedAt }) => ({
      id: `print_demo-${packId.slice('pack_demo-'.length)}`,
      packId,
      copy: 1,
      because: null,
      printedBy: packedBy,
      printedAt: new Date(packedAt).toISOString(),
    })),
  );
}

/** How a pack stands now: those of turns before were opened in theatre. */
export function packState(pack: PackMade): string {
  if (!pack.present) return 'opened';
  switch (pack.history.heldFrom ?? pack.history.plan.step) {
    case 'packed':
      return 'closed';
    case 'inSteriliser':
      return 'inLoad';
    case 'awaitingAcceptance':
      return 'awaitingAcceptance';
    case 'inSterileStore':
      return 'sterile';
    default:
      return 'opened';
  }
}
