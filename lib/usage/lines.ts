import type { PieceAct, UseAct } from './act';
import { stateOfUse } from './state';

/** What a line of the record is made from: the entries, and names for what they point at. */
export interface LinesOf {
  entries: readonly {
    id: string;
    act: UseAct;
    doneAt: string;
    enteredAt: string;
    by: string;
    pack: { number: string; load: string | null } | null;
  }[];
  sets: readonly { id: string; code: string }[];
  packs: readonly { pickId: string; lot: string | null; useBy: string | null; reusable: boolean }[];
  items: readonly {
    itemId: string;
    code: string;
    name: string;
    gtin: string | null;
    lengthUm: number | null;
  }[];
}

/** One entry of the record as it leaves the program: everything said of the piece, and whether it was taken back. */
export interface RecordLine {
  entryId: string;
  itemCode: string;
  itemName: string;
  gtin: string | null;
  lengthUm: number | null;
  quantity: number;
  outcome: PieceAct['outcome'];
  /** An instrument: opened and not implanted, it is reprocessed. */
  reusable: boolean;
  lostAt: PieceAct['lostAt'];
  place: PieceAct['place'];
  /** As read, or as issued; `null`: not available. */
  lot: string | null;
  lotIs: PieceAct['lot']['kind'];
  useBy: string | null;
  /** Of a piece out of a set. */
  setCode: string | null;
  /** The sterile pack it was in, and the steriliser load of that. */
  packNumber: string | null;
  load: string | null;
  despite: PieceAct['despite'];
  note: string | null;
  /** Why it was entered after the record was closed. */
  because: string | null;
  doneAt: string;
  enteredAt: string;
  by: string;
  takenBack: { at: string; by: string; because: string | null } | null;
}

/** The lines of a record, in the order they were done; those taken back stay among them and say so. */
export function recordLines({ entries, sets, packs, items }: LinesOf): RecordLine[] {
  const { takenBack } = stateOfUse(entries);
  return entries.flatMap(({ id, act, doneAt, enteredAt, by, pack }): RecordLine[] => {
    if (act.kind !== 'piece') return [];
    const { source, lot } = act;
    const item = items.find(({ itemId }) => itemId === act.itemId);
    const issued = source.kind === 'pack' ? packs.find(({ pickId }) => pickId === source.pickId) : undefined;
    const back = entries.find((one) => one.id === takenBack.get(id));
    return [
      {
        entryId: id,
        itemCode: item?.code ?? act.itemId,
        itemName: item?.name ?? act.itemId,
        gtin: item?.gtin ?? null,
        lengthUm: item?.lengthUm ?? null,
        quantity: act.quantity,
        outcome: act.outcome,
        reusable: issued?.reusable ?? false,
        lostAt: act.lostAt,
        place: act.place,
        lot: lot.kind === 'read' ? lot.lot : (issued?.lot ?? null),
        lotIs: lot.kind,
        useBy: lot.kind === 'read' ? (lot.useBy ?? issued?.useBy ?? null) : (issued?.useBy ?? null),
        setCode:
          source.kind === 'slot' ? (sets.find(({ id: set }) => set === source.setId)?.code ?? null) : null,
        packNumber: pack?.number ?? null,
        load: pack?.load ?? null,
        despite: act.despite,
        note: act.note,
        because: act.because,
        doneAt,
        enteredAt,
        by,
        takenBack: back ? { at: back.doneAt, by: back.by, because: back.act.because } : null,
      },
    ];
  });
}
