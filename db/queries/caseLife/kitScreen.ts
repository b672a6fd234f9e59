import { eq, inArray } from 'drizzle-orm';
import type { LifeStage } from '@/lib/caseLife/life';
import { matchPicks, type Picked } from '@/lib/caseLife/match';
import { mayRead, type Reading } from '../../reader';
import { people, places, plans } from '../../schema';
import { blindToKit } from './blind';
import { type KitLine, kitLines, type PickedThing, problemsOfPick } from './kitLines';
import { pickNames } from './names';
import { type KitOnRecord, kitOnRecord, meetingLines, type PickRow, stands } from './standing';

export interface KitScreen {
  stage: LifeStage;
  /** 0 where nothing was begun. */
  revision: number;
  planVersion: number | null;
  /** The version confirmed now; `null` where none is. */
  confirmedVersion: number | null;
  listMadeAt: string | null;
  listMadeBy: string | null;
  pickedNote: string | null;
  /** What was picked is not shown to whoever is to check it. */
  hidden: boolean;
  lines: KitLine[];
  /** Picked, and asked for by no line: to be put back. Of a cancelled case, everything. */
  toPutBack: PickedThing[];
  /** Asked for by theatre once the kit was there, and by no list. */
  fetchedLater: PickedThing[];
  steps: { act: 'picked' | 'checked' | 'issued' | 'taken'; by: string; at: string }[];
}

/** The kit of a case as its screens show it; `null` when there is no such case. */
export async function kitScreen(db: Reading, caseId: string, now: string): Promise<KitScreen | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const kit = await kitOnRecord(read, caseId);
  if (!kit) return null;
  const { life } = kit;
  const hidden = blindToKit(db, kit);
  const [confirmed, everybody] = await Promise.all([
    read.select({ version: plans.version, status: plans.status }).from(plans).where(eq(plans.caseId, caseId)),
    read.select({ id: people.id, name: people.name }).from(people),
  ]);
  const nameOf = new Map(everybody.map(({ id, name }) => [id, name]));
  const called = (id: string | null) => nameOf.get(id ?? '') ?? '';
  const standing = hidden ? [] : meetingLines(kit);
  const issued = kit.picks.filter(({ issuedAt }) => issuedAt !== null);
  const shown =
    kit.stage === 'issued' || kit.stage === 'inTheatre' || kit.stage === 'back' ? issued : standing;
  const things = new Map((await thingsOf(db, kit, shown, called, now)).map((one) => [one.pickId, one]));
  const cancelled = kit.booked.cancelledAt !== null;
  const matched = matchPicks(kit.list, shown as Picked[]);
  return {
    stage: kit.stage,
    revision: life?.revision ?? 0,
    planVersion: life?.planVersion ?? null,
    confirmedVersion: confirmed.find(({ status }) => status === 'confirmed')?.version ?? null,
    listMadeAt: life?.listMadeAt ?? null,
    listMadeBy: life === null ? null : called(life.listMadeBy),
    pickedNote: hidden ? null : (life?.pickedNote ?? null),
    hidden,
    lines: hidden || cancelled ? [] : await kitLines(db, kit, matched.lines, things, now),
    toPutBack: (cancelled
      ? [...things.values()]
      : [...new Set(matched.surplus.map(({ pickId }) => pickId))].flatMap((id) => things.get(id) ?? [])
    ).filter(({ out }) => !out),
    fetchedLater:
      cancelled || life?.issuedAt == null
        ? []
        : [...new Set(matched.surplus.map(({ pickId }) => pickId))].flatMap((id) => things.get(id) ?? []),
    steps: [
      ['picked', life?.pickedBy, life?.pickedAt],
      ['checked', life?.checkedBy, life?.checkedAt],
      ['issued', life?.issuedBy, life?.issuedAt],
      ['taken', life?.takenBy, life?.takenAt],
    ].flatMap(([act, by, at]) =>
      by && at ? [{ act: act as KitScreen['steps'][number]['act'], by: called(by), at }] : [],
    ),
  };
}

async function thingsOf(
  { read }: Reading,
  kit: KitOnRecord,
  picks: readonly PickRow[],
  called: (id: string) => string,
  now: string,
): Promise<PickedThing[]> {
  const [names, from] = await Promise.all([
    pickNames(read, picks),
    read
      .select({ id: places.id, name: places.name })
      .from(places)
      .where(
        inArray(
          places.id,
          picks.flatMap(({ placeId }) => placeId ?? []),
        ),
      ),
  ]);
  const placeOf = new Map(from.map(({ id, name }) => [id, name]));
  return Promise.all(
    picks.map(async (pick) => ({
      pickId: pick.id,
      name: names.get(pick.id) ?? pick.id,
      quantity: pick.quantity,
      by: called(pick.pickedBy),
      at: pick.doneAt,
      place: placeOf.get(pick.placeId ?? '') ?? null,
      out: pick.issuedAt !== null,
      problems: stands(pick) ? await problemsOfPick({ read }, kit, pick, now) : [],
    })),
  );
}
