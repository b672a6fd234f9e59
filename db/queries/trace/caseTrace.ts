import { type SQL, sql } from 'drizzle-orm';
import { slotBounds } from '@/lib/trace/slotBounds';
import type { Bounds } from '@/lib/trace/slotFlow';
import type { Outcome } from '@/lib/trace/slotHistory';
import { slotHistory } from '@/lib/trace/slotMoves';
import { mayRead, type Reading } from '../../reader';
import { hiddenFrom } from '../bench/blind';
import { type NamedCase, type NamedSet, namesOfCases, namesOfSets } from './lot';
import { slotWindow } from './slotWindow';

/** What a case had of one item from one source, and of which lots it can have been. */
export interface CasePiece {
  itemId: string;
  code: string;
  name: string;
  outcome: Outcome;
  quantity: number;
  /** `null`: single packs. */
  setId: string | null;
  /** Each lot it can have been, with the least and the most; one whose most is nothing is left out. */
  lots: (Bounds & { lot: string })[];
  /** Pieces that may be of a lot nobody knows. */
  unknown: number;
  /** The records of its slot contradict themselves. */
  contradicted: boolean;
}

export interface CaseTrace {
  case: NamedCase;
  pieces: CasePiece[];
  sets: (NamedSet & { packNumber: string | null; loadId: string | null; loadNumber: string | null })[];
  names: Map<string, NamedSet>;
  /** Sets that pieces came out of and the reader counts blind: nothing of these is among the pieces. */
  hidden: NamedSet[];
}

type Row = {
  doneAt: string;
  act: 'implanted' | 'wasted' | 'notFound';
  itemId: string;
  code: string;
  name: string;
  lot: string | null;
  quantity: number;
  setId: string | null;
};

/** What a case had, as it is entered. */
export const movesOfCase = (caseId: string): SQL => sql`
  SELECT move.done_at AS doneAt, move.act, move.item_id AS itemId, item.code, item.name, move.lot, move.quantity, move.from_set_id AS setId
    FROM piece_moves move INDEXED BY piece_moves_by_case JOIN items item ON item.id = move.item_id
    WHERE move.case_id = ${caseId} AND move.act IN ('implanted', 'wasted', 'notFound')
      AND move.seq NOT IN (SELECT move_seq FROM moves_taken_back) ORDER BY move.seq`;

/** The sets that went to a case, with the packs they were in and the loads those came of. */
export const setsOfCase = (caseId: string): SQL => sql`
  SELECT pick.set_id AS setId, pack.number AS packNumber, load.id AS loadId, load.number AS loadNumber
    FROM case_picks pick INDEXED BY case_picks_by_case
    LEFT JOIN packs pack ON pack.id = pick.pack_id LEFT JOIN loads load ON load.id = pack.load_id
    WHERE pick.case_id = ${caseId} AND pick.set_id IS NOT NULL AND pick.issued_at IS NOT NULL`;

/**
 * A case backward: each piece it had, of which lots that can have been where they lay mixed, from which set, pack and load.
 * `null` where there is no such case.
 */
export async function traceCase(db: Reading, caseId: string): Promise<CaseTrace | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const booked = namesOfCases(read, [caseId]).get(caseId);
  if (!booked) return null;
  const blind = await hiddenFrom(db);
  const all = read.all(movesOfCase(caseId)) as Row[];
  const rows = all.filter(({ setId }) => setId === null || !blind.has(setId));
  const went = read.all(setsOfCase(caseId)) as {
    setId: string;
    packNumber: string | null;
    loadId: string | null;
    loadNumber: string | null;
  }[];
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = `${row.itemId} ${row.setId} ${row.act}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const names = namesOfSets(read, [
    ...went.map(({ setId }) => setId),
    ...rows.flatMap(({ setId }) => setId ?? []),
  ]);
  return {
    case: booked,
    pieces: [...groups.values()].map((its) => pieceOf(read, caseId, its)),
    sets: went.flatMap(({ setId, ...rest }) => {
      const set = names.get(setId);
      return set ? [{ ...set, ...rest }] : [];
    }),
    names,
    hidden: [
      ...namesOfSets(
        read,
        went.flatMap(({ setId }) => (blind.has(setId) ? setId : [])),
      ).values(),
    ],
  };
}

function pieceOf(read: Reading['read'], caseId: string, rows: readonly Row[]): CasePiece {
  const [first] = rows;
  if (!first) throw new Error('a group has a row');
  const { itemId, code, name, act, setId } = first;
  const piece = {
    itemId,
    code,
    name,
    outcome: act,
    setId,
    quantity: rows.reduce((sum, { quantity }) => sum + quantity, 0),
  };
  const isRead = rows.every(({ lot }) => lot !== null);
  if (setId === null || isRead) {
    const byLot = new Map<string, number>();
    for (const { lot, quantity } of rows) if (lot !== null) byLot.set(lot, (byLot.get(lot) ?? 0) + quantity);
    return {
      ...piece,
      lots: [...byLot].map(([lot, quantity]) => ({ lot, lo: quantity, hi: quantity })),
      unknown: rows.reduce((sum, { lot, quantity }) => sum + (lot === null ? quantity : 0), 0),
      contradicted: false,
    };
  }
  const [firstAt = first.doneAt] = rows.map(({ doneAt }) => doneAt).sort();
  const history = slotHistory(slotWindow(read, setId, itemId, firstAt));
  const lots = [
    ...new Set(history.events.flatMap(({ kind, lot }) => (kind === 'in' && lot !== null ? [lot] : []))),
  ];
  let contradicted = false;
  const boundsOf = (lot: string, firstHereAtMs: number | null) => {
    const found = slotBounds(history, { lot, firstHereAtMs });
    contradicted ||= found.contradiction !== null;
    return found.destinations.find((one) => one.case === caseId && one.outcome === act) ?? { lo: 0, hi: 0 };
  };
  const bounded = lots.map((lot) => {
    // what came without a lot is told apart, below
    const { lo, hi } = boundsOf(lot, Number.MAX_SAFE_INTEGER);
    return { lot, lo, hi };
  });
  const known = new Set(lots);
  const other = [...known].join('/').concat('?');
  return {
    ...piece,
    lots: bounded.filter(({ hi }) => hi > 0),
    unknown: boundsOf(other, null).hi,
    contradicted,
  };
}
