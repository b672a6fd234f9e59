import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { loadPacks, loads, sets, sterilisers, turnSteps, turns } from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import type { TurnStep } from '@/lib/sets/setState';
import type { History } from './history/history';
import type { DemoPerson } from './hospital/people';
import type { HospitalClock } from './hospitalClock';
import { setIdOf } from './insertSets';
import { SETS } from './sets/sets';
import { historyOf, type SetHistory, type TurnTaken } from './turns/history';
import { insertPacks, type PackMade, packState } from './turns/insertPacks';
import { STERILISERS, USUAL_PROGRAMME } from './turns/sterilisers';

const TECHNICIANS: DemoPerson[] = ['person_wren-adeyemi', 'person_tomas-birkett', 'person_jolene-stott'];
const LEADS: DemoPerson[] = ['person_maurice-oduya', 'person_hettie-crane'];
const MINUTE = 60_000;
/** What was run before this history begins. */
const RUNS_BEFORE = 1_450;

export async function insertSterilisers(write: Queries): Promise<void> {
  await insertMany(
    write,
    sterilisers,
    STERILISERS.map((one) => ({ ...one })),
  );
}

/**
 * The turns behind the sets' present steps: every step with its person, every pack, and the loads that made them
 * sterile. Needs the sets and what lies in them.
 */
export async function insertTurns(
  write: Queries,
  clock: HospitalClock,
  before: Pick<History, 'turnsBefore'> | null = null,
): Promise<void> {
  const histories = SETS.map((plan, index) => historyOf(plan, index, clock.now.getTime()));
  const made: PackMade[] = [];
  for (const history of histories) {
    const setId = setIdOf(history.plan.code);
    const ids = history.turns.map(({ number }) => turnIdOf(history, number));
    await insertMany(
      write,
      turns,
      history.turns.map(({ number, steps }, at) => ({
        id: ids[at] ?? '',
        setId,
        number: number + (before?.turnsBefore.get(setId) ?? 0),
        beganAt: iso(steps[0]?.at ?? 0),
      })),
    );
    await insertMany(write, turnSteps, stepRows(history, setId));
    for (const turn of history.turns) {
      const packed = turn.steps.find(({ step }) => step === 'packed');
      if (!packed) continue;
      const turnId = turnIdOf(history, turn.number);
      const packId = `pack_demo-${history.plan.code.toLowerCase()}-${turn.number}`;
      made.push({
        history,
        turn,
        turnId,
        packedAt: packed.at,
        packedBy: technicianOf(packId, 3),
        packId,
        present: turn === history.turns.at(-1),
      });
    }
  }
  made.sort((a, b) => a.packedAt - b.packedAt);
  const loadOf = await insertLoads(write, made, clock);
  await insertPacks(write, made, loadOf, clock);
  await insertMany(
    write,
    loadPacks,
    made.flatMap((pack) => {
      const load = loadOf.get(pack.packId);
      if (!load) return [];
      // what is still to be decided was not looked at yet
      const out = timeOf(pack.turn, 'awaitingAcceptance');
      const looked = out === null || timeOf(pack.turn, 'inSterileStore') === null ? null : out + 10 * MINUTE;
      return [
        {
          loadId: load,
          packId: pack.packId,
          putInBy: technicianOf(pack.packId, 1),
          putInAt: iso((timeOf(pack.turn, 'inSteriliser') ?? pack.packedAt) - 5 * MINUTE),
          ...(looked === null
            ? {}
            : { unloadedAs: 'sound', unloadedBy: technicianOf(pack.packId, 2), unloadedAt: iso(looked) }),
        },
      ];
    }),
  );
  await settleSets(write, histories, made);
}

function stepRows(history: SetHistory, setId: string): (typeof turnSteps.$inferInsert)[] {
  let from: TurnStep | null = null;
  return history.turns.flatMap(({ number, steps }) =>
    steps.map(({ step, at }) => {
      const row = {
        setId,
        turnId: turnIdOf(history, number),
        fromStep: from,
        step,
        because: step === 'held' ? (history.plan.heldBecause ?? null) : null,
        personId: step === 'inSterileStore' ? leadOf(at) : technicianOf(setId, at),
        placeId: null,
        doneAt: iso(at),
        enteredAt: iso(at),
      };
      from = step;
      return row;
    }),
  );
}

/** Packs that went in together share a load; answers the load of each pack. */
async function insertLoads(
  write: Queries,
  made: readonly PackMade[],
  clock: HospitalClock,
): Promise<Map<string, string>> {
  const runs = made.flatMap((pack) => {
    const startedAt = timeOf(pack.turn, 'inSteriliser');
    return startedAt === null ? [] : [{ pack, startedAt, key: loadKey(pack, startedAt) }];
  });
  const grouped = [...groupBy(runs, ({ key }) => key)].sort(
    ([, a], [, b]) => (a[0]?.startedAt ?? 0) - (b[0]?.startedAt ?? 0),
  );
  const loadOf = new Map<string, string>();
  const rows = grouped.map(([, members], index): typeof loads.$inferInsert => {
    const first = members[0];
    if (!first) throw new Error('a load has packs');
    const { startedAt, pack } = first;
    const steriliser = STERILISERS[steriliserOf(pack)] ?? STERILISERS[0];
    const run = RUNS_BEFORE + index + 1;
    const id = `load_demo-${run}`;
    for (const member of members) loadOf.set(member.pack.packId, id);
    const ended = timeOf(pack.turn, 'awaitingAcceptance');
    const decided = timeOf(pack.turn, 'inSterileStore');
    const failed = pack.present && pack.history.plan.heldBecause === 'indicatorOrCycleFailed';
    return {
      id,
      number: `L${steriliser.id.slice(-1)}-${String(run).padStart(5, '0')}`,
      steriliserId: steriliser.id,
      programme: USUAL_PROGRAMME,
      cycleNumber: String(4_000 + run),
      state: failed
        ? 'rejected'
        : decided !== null
          ? 'accepted'
          : ended !== null
            ? 'awaitingAcceptance'
            : 'running',
      madeUpBy: technicianOf(id, 1),
      madeUpAt: iso(startedAt - 15 * MINUTE),
      startedBy: technicianOf(id, 1),
      startedAt: iso(startedAt),
      endedBy: ended === null ? null : technicianOf(id, 2),
      endedAt: ended === null ? null : iso(ended),
      decidedBy: failed || decided !== null ? leadOf(startedAt) : null,
      decidedAt: failed
        ? iso(clock.now.getTime() - pack.history.plan.hoursInStep * 3_600_000)
        : decided === null
          ? null
          : iso(decided),
      reason: failed ? 'The chemical indicator in the middle of the load had not changed.' : null,
      revision: 1,
    };
  });
  await insertMany(write, loads, rows);
  return loadOf;
}

/** Ties each set to the turn and the pack it is in. */
async function settleSets(
  write: Queries,
  histories: readonly SetHistory[],
  made: readonly PackMade[],
): Promise<void> {
  const rows = new Map((await write.select().from(sets)).map((row) => [row.id, row]));
  for (const history of histories) {
    const row = rows.get(setIdOf(history.plan.code));
    const last = history.turns.at(-1);
    const since = last?.steps.at(-1)?.at;
    if (!row || !last || since === undefined) throw new Error(`${history.plan.code} has no turn`);
    const pack = made.find((one) => one.history === history && one.present && packState(one) !== 'opened');
    const now = {
      turnId: turnIdOf(history, last.number),
      packId: pack?.packId ?? null,
      heldFrom: history.heldFrom,
      stepSince: iso(since),
    };
    await write
      .insert(sets)
      .values({ ...row, ...now })
      .onConflictDoUpdate({ target: sets.id, set: now });
  }
}

const turnIdOf = ({ plan }: SetHistory, number: number) => `turn_demo-${plan.code.toLowerCase()}-${number}`;

const iso = (ms: number) => new Date(ms).toISOString();

const timeOf = (turn: TurnTaken, step: TurnStep) => turn.steps.find((one) => one.step === step)?.at ?? null;

const steriliserOf = ({ history }: PackMade) =>
  (history.plan.code.charCodeAt(0) + history.plan.code.charCodeAt(2)) % 2;

/** Sets in the same steriliser at the same time are in the same load; what runs now is one load whenever it began. */
function loadKey(pack: PackMade, startedAt: number): string {
  const now = pack.present && timeOf(pack.turn, 'inSterileStore') === null;
  const failed = pack.history.plan.heldBecause === 'indicatorOrCycleFailed' && pack.present;
  if (failed) return `failed ${pack.packId}`;
  return now
    ? `now ${timeOf(pack.turn, 'awaitingAcceptance') === null ? 'running' : 'waiting'}`
    : `${steriliserOf(pack)} ${startedAt}`;
}

/** Repeatable: the same thing at the same moment is always done by the same person. */
function pick<T>(people: readonly T[], text: string, more: number): T {
  let sum = more;
  for (const letter of text) sum += letter.charCodeAt(0);
  return people[sum % people.length] as T;
}
const technicianOf = (text: string, more: number) =>
  pick(TECHNICIANS, text, Math.floor(more / 60_000) + more);
const leadOf = (at: number) => pick(LEADS, '', Math.floor(at / (8 * 3_600_000)));
