import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { casePicks, caseReturns, loadPacks, loads, packs, turnSteps, turns as turnTable } from '@/db/schema';
import { groupBy } from '@/lib/lists/groupBy';
import { packNumberOf } from '@/lib/packs/packNumber';
import { localDate } from '../hospitalClock';
import { STERILISERS, USUAL_PROGRAMME } from '../turns/sterilisers';
import { Chance } from './chance';
import type { History } from './history';
import type { PastTurn } from './pastTurns';

const MINUTE = 60_000;
const DAY = 86_400_000;
const USE_BY_DAYS = 180;
/** What was opened beside has a chance of its own: all else goes as it would without it. */
const SEED_BESIDE = 952_032;
const TECHNICIANS = ['person_wren-adeyemi', 'person_tomas-birkett', 'person_jolene-stott'] as const;
const LEADS = ['person_maurice-oduya', 'person_hettie-crane'] as const;
const SCRUBS = ['person_ruth-okonjo', 'person_piotr-lennard'] as const;
const iso = (ms: number) => new Date(ms).toISOString();
const technician = (index: number): string => TECHNICIANS[index % TECHNICIANS.length] ?? '';

/**
 * Turns before those the demo tells by itself, with their packs and loads, and the case each ended in: the set was sent
 * there and came back. Needs the past cases and the sterilisers; comes before all later turns, whose steps follow.
 */
export async function insertPastTurns(write: Queries, history: History): Promise<void> {
  const { turns } = history;
  await insertMany(
    write,
    turnTable,
    turns.map(({ id, set, number, steps }) => ({
      id,
      setId: set.setId,
      number,
      beganAt: iso(steps[0]?.at ?? 0),
    })),
  );
  await insertMany(write, turnSteps, stepsOf(turns));
  const loadOf = await insertLoads(write, turns);
  await insertPacks(write, history, loadOf);
  await insertJourneys(write, history);
}

function stepsOf(turns: readonly PastTurn[]) {
  const last = new Map<string, string>();
  return turns.flatMap(({ id, set, steps }) =>
    steps.map(({ step, at }) => {
      const fromStep = last.get(set.setId) ?? null;
      last.set(set.setId, step);
      const by = step === 'inSterileStore' ? LEADS : TECHNICIANS;
      const personId = by[Math.floor(at / (8 * 60 * MINUTE)) % by.length] ?? null;
      return { setId: set.setId, turnId: id, fromStep, step, personId, doneAt: iso(at), enteredAt: iso(at) };
    }),
  );
}

/** Turns whose packs went in together share a load; answers the load of each turn. */
async function insertLoads(write: Queries, turns: readonly PastTurn[]): Promise<Map<string, string>> {
  const grouped = [...groupBy(turns, ({ run, steriliser }) => `${run} ${steriliser}`).values()].sort(
    ([a], [b]) => (a?.run ?? 0) - (b?.run ?? 0),
  );
  const idOf = (index: number) => `load_past-${index + 1}`;
  await insertMany(
    write,
    loads,
    grouped.flatMap(([first], index) => {
      if (!first) return [];
      const { run, steriliser } = first;
      return {
        id: idOf(index),
        number: `L${steriliser}-${String(index + 1).padStart(5, '0')}`,
        steriliserId: STERILISERS[steriliser - 1]?.id ?? '',
        programme: USUAL_PROGRAMME,
        cycleNumber: String(3_000 + index),
        state: 'accepted',
        madeUpBy: technician(index),
        madeUpAt: iso(run - 15 * MINUTE),
        startedBy: technician(index),
        startedAt: iso(run),
        endedBy: technician(index + 1),
        endedAt: iso(run + 58 * MINUTE),
        decidedBy: LEADS[index % LEADS.length] ?? null,
        decidedAt: iso(run + 83 * MINUTE),
        revision: 1,
      };
    }),
  );
  return new Map(grouped.flatMap((members, index) => members.map(({ id }) => [id, idOf(index)] as const)));
}

async function insertPacks(
  write: Queries,
  { turns, work }: History,
  loadOf: ReadonlyMap<string, string>,
): Promise<void> {
  const contents = contentsOf(work);
  await insertMany(
    write,
    packs,
    turns.map((turn, index) => ({
      id: turn.packId,
      number: packNumberOf(index + 1),
      kind: 'set',
      setId: turn.set.setId,
      turnId: turn.id,
      versionId: turn.set.versionId,
      barrier: index % 4 === 0 ? 'container' : 'wrap',
      packedBy: technician(index),
      packedAt: iso(timeOf(turn, 'packed')),
      contents: contents.get(turn.set.versionId) ?? [],
      loadId: loadOf.get(turn.id) ?? null,
      useBy: localDate(new Date(timeOf(turn, 'inSterileStore') + USE_BY_DAYS * DAY)),
      state: 'opened',
      revision: 1,
    })),
  );
  await insertMany(
    write,
    loadPacks,
    turns.map((turn, index) => {
      const run = timeOf(turn, 'inSteriliser');
      return {
        loadId: loadOf.get(turn.id) ?? '',
        packId: turn.packId,
        putInBy: technician(index),
        putInAt: iso(run - 5 * MINUTE),
        unloadedAs: 'sound',
        unloadedBy: technician(index + 1),
        unloadedAt: iso(run + 68 * MINUTE),
      };
    }),
  );
}

/** Each set sent to its case, and back. */
async function insertJourneys(write: Queries, { turns, chance }: History): Promise<void> {
  const besides = new Chance(SEED_BESIDE);
  const sent = turns.map(({ used, set, packId, isBeside }) => {
    const draw = isBeside ? besides : chance;
    return {
      used,
      set,
      packId,
      id: `pick_past-${used.id.slice('case_'.length)}${isBeside ? '-beside' : ''}`,
      by: draw.of(TECHNICIANS),
      back: () => draw.of(SCRUBS),
    };
  });
  await insertMany(
    write,
    casePicks,
    sent.map(({ used, set, id, packId, by }) => ({
      id,
      caseId: used.id,
      setId: set.setId,
      packId,
      quantity: 1,
      how: 'sent',
      pickedBy: by,
      doneAt: iso(used.startsAt - 25 * MINUTE),
      enteredAt: iso(used.startsAt - 25 * MINUTE),
      issuedBy: by,
      issuedAt: iso(used.startsAt - 20 * MINUTE),
    })),
  );
  await insertMany(
    write,
    caseReturns,
    sent.map(({ used, id, back }) => ({
      id: `return_${id.slice('pick_'.length)}`,
      pickId: id,
      outcome: 'cameBack',
      quantity: 1,
      personId: back(),
      doneAt: iso(used.endsAt + 10 * MINUTE),
      enteredAt: iso(used.endsAt + 10 * MINUTE),
    })),
  );
}

/** What lay in a whole set of each version, as a pack keeps it. */
const contentsOf = (work: History['work']) =>
  new Map(
    [...work].map(([versionId, { lines }]) => [
      versionId,
      lines.map(({ id, itemId, mustHaveClass, expected }) => {
        return { lineId: id, itemId, mustHaveClass, expected, found: expected };
      }),
    ]),
  );

const timeOf = ({ steps }: PastTurn, step: PastTurn['steps'][number]['step']) =>
  steps.find((one) => one.step === step)?.at ?? 0;
