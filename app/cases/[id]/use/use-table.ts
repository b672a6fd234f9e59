'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useMemo, useState } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import { useOutbox } from '@/app/_outbox/use-outbox';
import { useActing } from '@/app/_ui/acting';
import type { RecordOfUse, ShownEntry } from '@/db/queries/usage/recordOfUse';
import { plainDate } from '@/lib/quantities/plainDate';
import { offered } from '@/lib/reasons/reason';
import type {
  LostStep,
  OpeningBar,
  PieceAct,
  SentUseEntry,
  UseAct,
  UseOutcome,
  UsePlace,
} from '@/lib/usage/act';
import { openingBars, saysOpened } from '@/lib/usage/bars';
import { reckonUse } from '@/lib/usage/reckon';
import { isWaste } from '@/lib/usage/settle';
import { sourceKey } from '@/lib/usage/state';
import { placeWords } from '@/lib/wording/usage';

/** What the next touch or scan says. */
export interface Saying {
  outcome: UseOutcome;
  /** Of what is not found. */
  lostAt: LostStep | null;
  place: UsePlace | null;
}

export const AT_FIRST: Saying = { outcome: 'implanted', lostAt: null, place: null };

/** What a touch or scan is about. */
export type Touched = Pick<PieceAct, 'source' | 'itemId' | 'lot'> & { scanId: string | null };

/** An entry as the list shows it: stored, or still on its way from here. */
export type ListedEntry = ShownEntry & { pending: boolean };

/** The record of one case: what the server has, and what this browser still keeps for it. */
export function useTable(caseId: string, record: RecordOfUse) {
  const router = useRouter();
  const acting = useActing();
  const [stored, setStored] = useState<readonly SentUseEntry[]>([]);
  const { outbox, add, doneAt, dismiss, flush } = useOutbox<SentUseEntry>({
    room: `use.${caseId}`,
    address: `/api/v1/cases/${caseId}/use/entries`,
    onStored: (entry) => {
      setStored((now) => [...now, entry]);
      // the head of the page says how far the record is, and another may have entered something
      router.refresh();
    },
  });

  const entries = useMemo((): ListedEntry[] => {
    const known = new Set(record.entries.map(({ id }) => id));
    const own = (entry: SentUseEntry, pending: boolean): ListedEntry => ({
      id: entry.id,
      act: entry.act,
      doneAt: entry.doneAt,
      enteredAt: entry.doneAt,
      by: acting?.person.name ?? '',
      pack: packOf(record, entry.act),
      pending,
    });
    return [
      ...record.entries.map((entry) => ({ ...entry, pending: false })),
      ...stored.filter(({ id }) => !known.has(id)).map((entry) => own(entry, false)),
      ...outbox.pending.map(({ entry }) => own(entry, true)),
    ];
  }, [record, stored, outbox.pending, acting]);

  const items = useMemo(() => new Map(record.items.map((item) => [item.itemId, item])), [record.items]);
  const reckoned = useMemo(
    () =>
      reckonUse(
        {
          sources: [...record.slots, ...record.packs],
          construct: record.plan?.construct ?? null,
          countQuestions: record.countQuestions,
          asksReason: record.asksReason,
          unopenedSets: new Set(record.sets.flatMap(({ id, unopened }) => (unopened ? [id] : []))),
        },
        entries,
        (id) => items.get(id) ?? null,
      ),
    [record, entries, items],
  );

  const send = useCallback(
    (act: UseAct, scanId: string | null = null): string | null => {
      const id = newClientId('entry') as SentUseEntry['id'];
      return add({ id, act, scanId: scanId as SentUseEntry['scanId'], doneAt: doneAt() }) ? id : null;
    },
    [add, doneAt],
  );

  /** Names a source by its key, a set by its id, a question of a count by its thing. */
  const nameOf = useCallback(
    (key: string): string => {
      const itemName = (id: string) => items.get(id)?.name ?? id;
      const slot = record.slots.find(({ setId, lineId }) => `${setId} ${lineId}` === key);
      const code = (setId: string) => record.sets.find(({ id }) => id === setId)?.code ?? setId;
      if (slot) return `${itemName(slot.itemId)}, ${code(slot.setId)}`;
      const pack = record.packs.find(({ pickId }) => pickId === key);
      if (pack) return `${itemName(pack.itemId)}${pack.lot === null ? '' : `, lot ${pack.lot}`}`;
      const question = record.countQuestions.find(({ id }) => id === key);
      const set = [...record.sets, ...record.aboutSets].find(({ id }) => id === key);
      return question?.thing ?? set?.code ?? key;
    },
    [record, items],
  );
  const nameOfItem = useCallback((itemId: string) => items.get(itemId)?.name ?? itemId, [items]);

  const wasteReasons = useMemo(() => offered(record.reasons, 'waste'), [record.reasons]);
  /** Which of the hospital's reasons an entry has; `null`: not stated. */
  const reasonOf = (entryId: string): string | null =>
    reckoned.state.pieces.find((piece) => piece.entryId === entryId)?.reasonId ?? null;
  /** Whether it stands for waste, of which a reason may be named. */
  const isWasteHere = ({ source, outcome }: PieceAct): boolean => {
    const from = [...record.slots, ...record.packs].find((one) => sourceKey(one) === sourceKey(source));
    return isWaste(outcome, from?.reusable ?? false);
  };

  return {
    entries,
    items,
    reckoned,
    outbox,
    dismiss,
    flush,
    send,
    nameOf,
    nameOfItem,
    wasteReasons,
    reasonOf,
    isWaste: isWasteHere,
  };
}

export type Table = ReturnType<typeof useTable>;

function packOf(record: RecordOfUse, act: UseAct) {
  const source = act.kind === 'piece' ? act.source : null;
  if (source?.kind !== 'slot') return null;
  return record.sets.find(({ id }) => id === source.setId)?.pack ?? null;
}

/** Why what was touched is not to be opened, as far as this screen knows: the server has the last word. */
export function barsOf(
  record: RecordOfUse,
  table: Table,
  touched: Touched,
  outcome: UseOutcome,
): OpeningBar[] {
  if (!saysOpened(outcome)) return [];
  const { source, lot } = touched;
  const at =
    source.kind === 'slot'
      ? record.sets.find(({ id }) => id === source.setId)
      : record.packs.find(({ pickId }) => pickId === source.pickId);
  return openingBars(
    {
      useBys: [at?.useBy ? plainDate.parse(at.useBy) : null, lot.kind === 'read' ? lot.useBy : null],
      held: at?.held ?? false,
      recalled: table.items.get(touched.itemId)?.status === 'recalled',
    },
    plainDate.parse(record.caseDate),
  );
}

/** The act that a touch says. A place is for what stays in the patient, and for a piece that was tried there. */
export function actOf(
  touched: Touched,
  { outcome, lostAt, place }: Saying,
  more: { despite?: OpeningBar[]; note?: string | null; because: string | null },
): PieceAct {
  return {
    kind: 'piece',
    source: touched.source,
    itemId: touched.itemId,
    quantity: 1,
    outcome,
    lostAt: outcome === 'notFound' ? (lostAt ?? 'during') : null,
    place: outcome === 'implanted' ? place : null,
    lot: touched.lot,
    despite: more.despite ?? [],
    note: more.note ?? null,
    because: more.because,
  };
}

export const samePlace = (a: UsePlace | null, b: UsePlace | null): boolean =>
  a === b || (a !== null && b !== null && placeWords(a) === placeWords(b));
