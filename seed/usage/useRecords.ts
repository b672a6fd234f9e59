import type { DelayAct, PieceAct, UsePlace } from '@/lib/usage/act';
import type { Chance } from '../history/chance';
import type { PastCase } from '../history/pastCases';
import type { Row } from '../history/pastRows';
import { DELAY_REASONS, reasonOfPast } from './reasons';

const MINUTE = 60_000;
const iso = (ms: number) => new Date(ms).toISOString();

/** So many of the newest cases that are over have a record of use that was closed. */
const RECORDS = 16;
/** Later pieces of a longer case were entered at one moment, and nobody knows which went where. */
const MOST_PIECES = 14;

/** A closed record of use of the past, before it is written. */
export interface UseRecord {
  used: PastCase;
  scrub: string;
  entries: { id: string; act: object; doneAt: string }[];
  closedAt: string;
  packId: string | null;
}

/**
 * Records of use for the newest cases that pieces moved in. What the journal says of each piece is said by an entry, and the move
 * names it as what it came of.
 */
export function recordsOfPast(rows: Row[], cases: readonly PastCase[], chance: Chance): UseRecord[] {
  const records: UseRecord[] = [];
  for (const used of [...cases].sort((a, b) => b.startsAt - a.startsAt)) {
    if (records.length === RECORDS) break;
    const own = rows
      .filter(({ caseId, act }) => caseId === used.id && (act === 'implanted' || act === 'wasted'))
      .sort((a, b) => a.at - b.at);
    if (own.length === 0 || own.length > MOST_PIECES) continue;
    records.push(recordOf(used, own, records.length, chance));
  }
  return records;
}

function recordOf(used: PastCase, own: Row[], at: number, chance: Chance): UseRecord {
  const stem = used.id.slice('case_'.length);
  const places = placesOf(used);
  const implanted = own.filter(({ act }) => act === 'implanted');
  const entries: UseRecord['entries'] = [];
  const enter = (act: object, ms: number): string => {
    const id = `entry_past-${stem}-${entries.length + 1}`;
    entries.push({ id, act, doneAt: iso(ms) });
    return id;
  };
  for (const row of own) {
    const place = implanted.length === places.length ? (places[implanted.indexOf(row)] ?? null) : null;
    row.source = enter(pieceOf(row, place), row.at);
    // some are named at the table, some never
    if (row.act === 'wasted' && chance.is(0.75))
      enter(
        { kind: 'reason', entryId: row.source, reasonId: reasonOfPast(row.reason ?? null), because: null },
        row.at + 5_000,
      );
  }
  if (at % 2 === 0) enter(delayOf(used, at, chance), used.startsAt + chance.whole(5, 20) * MINUTE);
  return {
    used,
    scrub: own[0]?.personId ?? 'person_ruth-okonjo',
    entries,
    closedAt: iso(used.endsAt + 10 * MINUTE),
    packId: own.find(({ fromSetId }) => fromSetId != null)?.packId ?? null,
  };
}

function pieceOf(row: Row, place: UsePlace | null): object {
  const { itemId, quantity, fromSetId, fromLineId, pickId, reason } = row;
  const wasted = reason === 'dropped' ? 'droppedOrDamaged' : 'openedNotImplanted';
  const outcome: PieceAct['outcome'] = row.act === 'implanted' ? 'implanted' : wasted;
  return {
    kind: 'piece',
    source: fromSetId
      ? { kind: 'slot', setId: fromSetId, lineId: fromLineId }
      : { kind: 'pack', pickId, returnId: `return_${pickId?.slice('pick_'.length)}` },
    itemId,
    quantity,
    outcome,
    lostAt: null,
    place,
    lot: { kind: fromSetId ? 'setAndLoad' : 'asIssued' },
    despite: [],
    note: null,
    because: null,
  };
}

/** Where pieces of a plan go, in the order they were used: the plates, their holes, free screws. */
const placesOf = ({ construct }: PastCase): UsePlace[] => [
  ...construct.plates.map(({ key }): UsePlace => ({ kind: 'plate', plate: key })),
  ...construct.plates.flatMap(({ key, fills }) =>
    Object.entries(fills).flatMap(([hole, fill]): UsePlace[] =>
      'screwFamily' in fill ? [{ kind: 'hole', plate: key, hole }] : [],
    ),
  ),
  ...construct.freeScrews.map(({ key }): UsePlace => ({ kind: 'free', screw: key })),
];

const STEPS: readonly DelayAct['step'][] = ['beforeStart', 'layingUp', 'during', 'atCount', null];

function delayOf(used: PastCase, at: number, chance: Chance): object {
  const which = (at / 2) % DELAY_REASONS.length;
  return {
    kind: 'delay',
    minutes: at === 4 ? null : chance.whole(2, 9) * 5,
    // one of them nobody gave a reason for
    reasonId: at === 8 ? null : (DELAY_REASONS[which] ?? null),
    step: STEPS[which] ?? null,
    about: which === 0 ? { kind: 'set', setId: used.set.setId } : null,
    note: at === 8 ? 'The list was put back by the case before.' : null,
    because: null,
  };
}
