import type { Queries } from '@/db/client';
import { groupBy } from '@/lib/lists/groupBy';
import { packNumberOf } from '@/lib/packs/packNumber';
import { localDate } from '../hospitalClock';
import { STERILISERS, USUAL_PROGRAMME } from '../turns/sterilisers';
import type { History } from './history';
import { insertRows } from './insertRows';
import type { PastTurn } from './pastTurns';

const MINUTE = 60_000;
const DAY = 86_400_000;
const USE_BY_DAYS = 180;
const TECHNICIANS = ['person_wren-adeyemi', 'person_tomas-birkett', 'person_jolene-stott'] as const;
const LEADS = ['person_maurice-oduya', 'person_hettie-crane'] as const;
const SCRUBS = ['person_ruth-okonjo', 'person_piotr-lennard'] as const;
const iso = (ms: number) => new Date(ms).toISOString();

/** How many loads there are of these turns: numbers of later ones begin after them. */
export const loadsOf = (turns: readonly PastTurn[]) => new Set(turns.map(loadKey)).size;

const loadKey = ({ run, steriliser }: PastTurn) => `${run} ${steriliser}`;

/**
 * Turns before those the demo tells by itself, with their packs and loads, and the case each ended in: the set was sent
 * there and came back. Needs the past cases and the sterilisers; comes before all later turns, whose steps follow.
 */
export async function insertPastTurns(
  write: Queries,
  { turns, cases, chance, work }: History,
): Promise<void> {
  await insertRows(
    write,
    'turns',
    ['id', 'set_id', 'number', 'began_at'],
    turns.map(({ id, set, number, steps }) => [id, set.setId, number, iso(steps[0]?.at ?? 0)]),
  );
  await insertSteps(write, turns);
  await insertLoads(write, turns, contentsOf(work));
  const packOf = new Map(turns.map(({ used, packId }) => [used.id, packId]));
  const picked = cases.map((used) => ({
    used,
    pickId: `pick_past-${used.id.slice('case_'.length)}`,
    packId: packOf.get(used.id) ?? `pack_demo-${used.set.code.toLowerCase()}-${used.toldTurn}`,
    by: chance.of(TECHNICIANS),
  }));
  await insertRows(
    write,
    'case_picks',
    [
      'id',
      'case_id',
      'set_id',
      'pack_id',
      'quantity',
      'how',
      'picked_by',
      'done_at',
      'entered_at',
      'issued_by',
      'issued_at',
    ],
    picked
      .filter(({ packId }) => packId.startsWith('pack_past'))
      .map(({ used, pickId, packId, by }) => {
        const at = iso(used.startsAt - 25 * MINUTE);
        return [
          pickId,
          used.id,
          used.set.setId,
          packId,
          1,
          'sent',
          by,
          at,
          at,
          by,
          iso(used.startsAt - 20 * MINUTE),
        ];
      }),
  );
  await insertRows(
    write,
    'case_returns',
    ['id', 'pick_id', 'outcome', 'quantity', 'person_id', 'done_at', 'entered_at'],
    picked
      .filter(({ packId }) => packId.startsWith('pack_past'))
      .map(({ used, pickId }) => {
        const at = iso(used.endsAt + 10 * MINUTE);
        return [`return_${pickId.slice('pick_'.length)}`, pickId, 'cameBack', 1, chance.of(SCRUBS), at, at];
      }),
  );
}

async function insertSteps(write: Queries, turns: readonly PastTurn[]): Promise<void> {
  const last = new Map<string, string>();
  const rows = turns.flatMap(({ id, set, steps }) =>
    steps.map(({ step, at }) => {
      const from = last.get(set.setId) ?? null;
      last.set(set.setId, step);
      const by = step === 'inSterileStore' ? LEADS : TECHNICIANS;
      const person = by[Math.floor(at / (8 * 60 * MINUTE)) % by.length] as string;
      return [set.setId, id, from, step, person, iso(at), iso(at)] as const;
    }),
  );
  const columns = ['set_id', 'turn_id', 'from_step', 'step', 'person_id', 'done_at', 'entered_at'];
  await insertRows(write, 'turn_steps', columns, rows);
}

async function insertLoads(
  write: Queries,
  turns: readonly PastTurn[],
  contents: ReadonlyMap<string, string>,
): Promise<void> {
  const grouped = [...groupBy(turns, loadKey)].sort(([, a], [, b]) => (a[0]?.run ?? 0) - (b[0]?.run ?? 0));
  const columns = [
    ...[
      'id',
      'number',
      'steriliser_id',
      'programme',
      'cycle_number',
      'state',
      'made_up_by',
      'made_up_at',
      'started_by',
    ],
    ...['started_at', 'ended_by', 'ended_at', 'decided_by', 'decided_at', 'revision'],
  ];
  await insertRows(
    write,
    'loads',
    columns,
    grouped.map(([, members], index) => {
      const [{ run, steriliser }] = members as [PastTurn, ...PastTurn[]];
      const by = TECHNICIANS[index % TECHNICIANS.length] as string;
      const started = iso(run);
      const ended = iso(run + 58 * MINUTE);
      const number = `L${steriliser}-${String(index + 1).padStart(5, '0')}`;
      const kept = STERILISERS[steriliser - 1]?.id ?? '';
      const decided = [LEADS[index % LEADS.length] as string, iso(run + 83 * MINUTE)] as const;
      const made = [by, iso(run - 15 * MINUTE)] as const;
      return [
        ...[
          `load_past-${index + 1}`,
          number,
          kept,
          USUAL_PROGRAMME,
          String(3_000 + index),
          'accepted',
          ...made,
          by,
        ],
        ...[started, by, ended, ...decided, 1],
      ];
    }),
  );
  const loadOf = new Map(
    grouped.flatMap(([, members], index) => members.map(({ id }) => [id, `load_past-${index + 1}`])),
  );
  await insertRows(
    write,
    'packs',
    [
      'id',
      'number',
      'kind',
      'set_id',
      'turn_id',
      'version_id',
      'barrier',
      'packed_by',
      'packed_at',
      'contents',
      'load_id',
      'use_by',
      'state',
      'revision',
    ],
    turns.map((turn, index) => {
      const packed = timeOf(turn, 'packed');
      const by = TECHNICIANS[index % TECHNICIANS.length] as string;
      const useBy = localDate(new Date(timeOf(turn, 'inSterileStore') + USE_BY_DAYS * DAY));
      const what = [
        turn.set.setId,
        turn.id,
        turn.set.versionId,
        index % 4 === 0 ? 'container' : 'wrap',
      ] as const;
      return [
        ...[turn.packId, packNumberOf(index + 1), 'set', ...what, by, iso(packed)],
        ...[contents.get(turn.set.versionId) ?? '[]', loadOf.get(turn.id) ?? null, useBy, 'opened', 1],
      ];
    }),
  );
  await insertRows(
    write,
    'load_packs',
    ['load_id', 'pack_id', 'put_in_by', 'put_in_at', 'unloaded_as', 'unloaded_by', 'unloaded_at'],
    turns.map((turn, index) => {
      const by = TECHNICIANS[index % TECHNICIANS.length] as string;
      const run = timeOf(turn, 'inSteriliser');
      return [
        loadOf.get(turn.id) ?? null,
        turn.packId,
        by,
        iso(run - 5 * MINUTE),
        'sound',
        by,
        iso(run + 68 * MINUTE),
      ];
    }),
  );
}

/** What lay in a whole set of each version, as a pack keeps it. */
const contentsOf = (work: History['work']) =>
  new Map(
    [...work].map(([versionId, { lines }]) => [
      versionId,
      JSON.stringify(
        lines.map(({ id, itemId, mustHaveClass, expected }) => ({
          lineId: id,
          itemId,
          mustHaveClass,
          expected,
          found: expected,
        })),
      ),
    ]),
  );

const timeOf = ({ steps }: PastTurn, step: PastTurn['steps'][number]['step']) =>
  steps.find((one) => one.step === step)?.at ?? 0;
