'use client';

import { useRef, useState } from 'react';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import { actFaults, type OpeningBar, type PieceAct, type UseAct } from '@/lib/usage/act';
import { mayStay } from '@/lib/usage/implant';
import { sourceKey } from '@/lib/usage/state';
import { ACT_FAULT_WORDS, outcomeWords, placeWords, usageWords } from '@/lib/wording/usage';
import { AT_FIRST, actOf, barsOf, type Saying, type Table, type Touched } from './use-table';
import type { Several } from './use-table-scans';

/** A glove touches twice: the same thing again so soon is the same touch. */
const SAME_TOUCH_MS = 700;
const SIGNED_OUT = 'Nobody is signed in: sign in, and enter it again.';

/** Something that is not to be opened, and was touched. */
export interface Barred {
  touched: Touched;
  saying: Saying;
  bars: OpeningBar[];
  name: string;
}

/** What the next touch says, and what touches and scans enter. */
export function useEntering(record: RecordOfUse, table: Table, because: string | null) {
  const [saying, setSaying] = useState<Saying>(AT_FIRST);
  const [said, setSaid] = useState('');
  const [last, setLast] = useState<{ id: string; act: PieceAct } | null>(null);
  const [barred, setBarred] = useState<Barred | null>(null);
  const [several, setSeveral] = useState<Several | null>(null);
  const touchedLast = useRef({ key: '', at: -SAME_TOUCH_MS });
  const why = record.closed ? because : null;

  function send(act: UseAct, sentence: string): boolean {
    const sent = table.send(act) !== null;
    setSaid(sent ? sentence : SIGNED_OUT);
    return sent;
  }

  function enter(touched: Touched, as: Saying, more: { despite?: OpeningBar[]; note?: string } = {}) {
    const act = actOf(touched, as, { ...more, because: why });
    const [fault] = actFaults(act);
    if (fault) return setSaid(ACT_FAULT_WORDS[fault]);
    const id = table.send(act, touched.scanId);
    if (id === null) return setSaid(SIGNED_OUT);
    setSaid(`${sayOf(act)}: recorded.`);
    setLast({ id, act });
    // a hole that was tried keeps waiting for what goes in
    setSaying(as.outcome === 'implanted' ? AT_FIRST : { ...AT_FIRST, place: as.place });
  }

  const nameOf = (itemId: string) => table.items.get(itemId)?.name ?? itemId;
  const isReusable = ({ source }: PieceAct) =>
    source.kind === 'pack' &&
    (record.packs.find(({ pickId }) => pickId === source.pickId)?.reusable ?? false);
  const sayOf = (act: PieceAct) =>
    `${nameOf(act.itemId)}${act.place === null ? '' : `, ${placeWords(act.place)}`}, ${outcomeWords(act.outcome, act.lostAt, isReusable(act)).toLowerCase()}`;

  function touch(touched: Touched, asked: Saying = saying) {
    const kind = table.items.get(touched.itemId)?.kind ?? '';
    const as: Saying =
      asked.outcome === 'implanted' && !mayStay(kind) && touched.source.kind === 'pack'
        ? { outcome: 'openedNotImplanted', lostAt: null, place: null }
        : asked;
    if (as.outcome === 'implanted' && !mayStay(kind))
      return setSaid(usageWords.noImplant(nameOf(touched.itemId)));
    const key = `${sourceKey(touched.source)} ${as.outcome}`;
    const at = performance.now();
    if (touchedLast.current.key === key && at - touchedLast.current.at < SAME_TOUCH_MS && !touched.scanId)
      return;
    touchedLast.current = { key, at };
    setSeveral(null);
    const bars = barsOf(record, table, touched, as.outcome);
    if (bars.length > 0) return setBarred({ touched, saying: as, bars, name: nameOf(touched.itemId) });
    enter(touched, as);
  }

  /** A place in hand takes what fits the kind of it: a scanned plate goes into no hole. */
  function placedBy({ itemId }: Touched): Saying {
    const isPlate = table.items.get(itemId)?.kind === 'plate';
    const { place } = saying;
    return place !== null && (place.kind === 'plate') === isPlate ? saying : { ...saying, place: null };
  }

  function takeBack(entryId: string) {
    if (send({ kind: 'takenBack', entryId, because: why } as UseAct, 'Taken back.')) setLast(null);
  }

  function nameReason(entryId: string, reasonId: string | null) {
    const sentence = reasonId === null ? 'The reason is not stated.' : 'The reason is named.';
    send({ kind: 'reason', entryId, reasonId, because: why } as UseAct, sentence);
  }

  return {
    saying,
    setSaying,
    said,
    setSaid,
    last,
    barred,
    setBarred,
    several,
    setSeveral,
    enter,
    touch,
    touchScanned: (touched: Touched) => touch(touched, placedBy(touched)),
    takeBack,
    nameReason,
  };
}
