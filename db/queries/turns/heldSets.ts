import { asc, eq } from 'drizzle-orm';
import { type SetId, setId } from '@/lib/identity/ids';
import { type TurnStep, turnStep } from '@/lib/sets/setState';
import { stepsAfterHolds } from '@/lib/turns/steps';
import { mayRead, type Reading } from '../../reader';
import { configurations, configurationVersions, places, sets } from '../../schema';
import { type HeldReason, heldReasons } from './heldReasons';

interface HeldSet {
  id: SetId;
  code: string;
  configuration: string;
  since: string;
  heldFrom: TurnStep | null;
  place: string | null;
  withdrawn: boolean;
  reasons: HeldReason[];
  /** Where a lifted hold may let it go. */
  after: TurnStep[];
}

/** Every held set, the longest held first, with every reason it is held for. */
export async function listHeldSets(db: Reading): Promise<HeldSet[]> {
  mayRead(db, 'readHospital');
  const rows = await db.read
    .select({ set: sets, configuration: configurations.name, place: places.name })
    .from(sets)
    .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
    .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
    .leftJoin(places, eq(places.id, sets.placeId))
    .where(eq(sets.step, 'held'))
    .orderBy(asc(sets.stepSince));
  return Promise.all(
    rows.map(async ({ set, configuration, place }) => {
      const reasons = await heldReasons(db.read, set.id);
      const heldFrom = set.heldFrom === null ? null : turnStep.parse(set.heldFrom);
      return {
        id: setId.parse(set.id),
        code: set.code,
        configuration,
        since: set.stepSince,
        heldFrom,
        place,
        withdrawn: set.withdrawnAt !== null,
        reasons,
        after: stepsAfterHolds(
          reasons.map(({ because }) => because),
          heldFrom,
        ),
      };
    }),
  );
}
