import type { Reason } from '../reasons/reason';
import type { DelayAct, PieceAct, UseAct } from './act';
import { isWaste } from './settle';
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
  slots: readonly { setId: string; lineId: string; reusable: boolean }[];
  packs: readonly { pickId: string; lot: string | null; useBy: string | null; reusable: boolean }[];
  items: readonly {
    itemId: string;
    code: string;
    name: string;
    gtin: string | null;
    lengthUm: number | null;
  }[];
  /** The hospital's own reasons, retired ones too. */
  reasons: readonly Reason[];
}

/** A reason as it leaves the program. */
export interface NamedReason {
  code: string;
  words: string;
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
  /** Whether it is waste, so that a reason may be named. */
  waste: boolean;
  /** The hospital's own reason for it; `null`: not stated. */
  reason: NamedReason | null;
  note: string | null;
  /** Why it was entered after the record was closed. */
  because: string | null;
  doneAt: string;
  enteredAt: string;
  by: string;
  takenBack: { at: string; by: string; because: string | null } | null;
}

/** The lines of a record, in the order they were done; those taken back stay among them and say so. */
export function recordLines({ entries, sets, slots, packs, items, reasons }: LinesOf): RecordLine[] {
  const { takenBack, pieces } = stateOfUse(entries);
  const reasonOf = new Map(pieces.map((piece) => [piece.entryId, piece.reasonId]));
  const named = namesOf(reasons);
  return entries.flatMap(({ id, act, doneAt, enteredAt, by, pack }): RecordLine[] => {
    if (act.kind !== 'piece') return [];
    const { source, lot } = act;
    const item = items.find(({ itemId }) => itemId === act.itemId);
    const issued = source.kind === 'pack' ? packs.find(({ pickId }) => pickId === source.pickId) : undefined;
    const slot =
      source.kind === 'slot'
        ? slots.find(({ setId, lineId }) => setId === source.setId && lineId === source.lineId)
        : undefined;
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
        waste: isWaste(act.outcome, (slot ?? issued)?.reusable ?? false),
        reason: named(reasonOf.get(id) ?? null),
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

const namesOf =
  (reasons: readonly Reason[]) =>
  (id: string | null): NamedReason | null => {
    const reason = reasons.find((one) => one.id === id);
    return reason ? { code: reason.code, words: reason.words } : null;
  };

/** A delay of the record as it leaves the program. */
export interface DelayLine {
  entryId: string;
  /** `null`: not stated. */
  minutes: number | null;
  reason: NamedReason | null;
  step: DelayAct['step'];
  /** The set or the item it was about; `null`: none is named. */
  about: string | null;
  note: string | null;
  because: string | null;
  doneAt: string;
  by: string;
}

/** The delays that stand, in the order they were; whose case it was stays in its record, and no total names a person. */
export function delayLines(
  { entries, reasons }: Pick<LinesOf, 'entries' | 'reasons'>,
  nameOf: (id: string) => string,
): DelayLine[] {
  const named = namesOf(reasons);
  return stateOfUse(entries).delays.map((delay) => ({
    entryId: delay.entryId,
    minutes: delay.minutes,
    reason: named(delay.reasonId),
    step: delay.step,
    about:
      delay.about === null
        ? null
        : nameOf(delay.about.kind === 'set' ? delay.about.setId : delay.about.itemId),
    note: delay.note,
    because: delay.because,
    doneAt: delay.doneAt,
    by: entries.find(({ id }) => id === delay.entryId)?.by ?? '',
  }));
}
