'use client';

import { useRef, useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { RefusedEntries } from '@/app/_kit/refused-entries';
import { Button } from '@/app/_ui/button';
import { Section } from '@/app/_ui/section';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import { actFaults, type OpeningBar, type PieceAct, type UsePlace } from '@/lib/usage/act';
import { mayStay } from '@/lib/usage/implant';
import { sourceKey } from '@/lib/usage/state';
import { ACT_FAULT_WORDS, outcomeWords, placeWords, usageWords } from '@/lib/wording/usage';
import { AccountView } from './account-view';
import { CloseRecord } from './close-record';
import { CorrectRecord } from './correct-record';
import { OpenedAllTheSame } from './opened-all-the-same';
import { OutcomeBar } from './outcome-bar';
import { PackRows } from './pack-rows';
import { FreePanel, PlatePanel } from './place-panel';
import { RecordedList } from './recorded-list';
import { SetRows } from './set-rows';
import { touchOf } from './touch';
import styles from './use.module.css';
import { AT_FIRST, actOf, barsOf, type ListedEntry, type Saying, type Touched, useTable } from './use-table';
import { type Several, useTableScans } from './use-table-scans';

/** A glove touches twice: the same thing again so soon is the same touch. */
const SAME_TOUCH_MS = 700;

interface Barred {
  touched: Touched;
  saying: Saying;
  bars: OpeningBar[];
  name: string;
}

/**
 * What is used, as it is used: a hole and then what went in, a pack, or a scan. What the next touch says stands in the bar;
 * it says "implanted" again after each. Nothing is filled in, and nothing is blocked but opening what is not to be opened.
 */
export function UseScreen({
  booked,
  record,
  mayRecord,
  mayCorrect,
  now,
}: {
  booked: { id: string; reference: string };
  record: RecordOfUse;
  mayRecord: boolean;
  mayCorrect: boolean;
  now: string;
}) {
  const table = useTable(booked.id, record);
  const tabs = tabsOf(record);
  const [tabId, setTabId] = useState(tabs[0]?.id ?? '');
  const tab = tabs.find(({ id }) => id === tabId) ?? tabs[0];
  const [saying, setSaying] = useState<Saying>(AT_FIRST);
  const [said, setSaid] = useState('');
  const [last, setLast] = useState<{ id: string; act: PieceAct } | null>(null);
  const [barred, setBarred] = useState<Barred | null>(null);
  const [several, setSeveral] = useState<Several | null>(null);
  const [because, setBecause] = useState<string | null>(null);
  const touchedLast = useRef({ key: '', at: -SAME_TOUCH_MS });
  const mayEnter = record.closed ? mayCorrect && because !== null : mayRecord;

  function enter(touched: Touched, as: Saying, more: { despite?: OpeningBar[]; note?: string } = {}) {
    const act = actOf(touched, as, { ...more, because: record.closed ? because : null });
    const [fault] = actFaults(act);
    if (fault) return setSaid(ACT_FAULT_WORDS[fault]);
    const id = table.send(act, touched.scanId);
    if (id === null) return setSaid('Nobody is signed in: sign in, and enter it again.');
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
    const sent = table.send({
      kind: 'takenBack',
      entryId: entryId as never,
      because: record.closed ? because : null,
    });
    if (sent === null) return setSaid('Nobody is signed in: sign in, and enter it again.');
    setSaid('Taken back.');
    setLast(null);
  }

  function choose(id: string) {
    setTabId(id);
    setSaying((before) => ({ ...before, place: null }));
  }

  useTableScans({
    caseId: booked.id,
    record,
    table,
    listens: mayEnter,
    onTouch: (touched) => touch(touched, placedBy(touched)),
    onSet: choose,
    onSeveral: setSeveral,
    onSaid: setSaid,
  });
  const panel = {
    record,
    table,
    saying,
    onPlace: (place: UsePlace | null) => setSaying((before) => ({ ...before, place })),
    onTouch: touch,
  };
  return (
    <div className={styles.screen}>
      <div className={styles.work}>
        <RefusedEntries
          refused={table.outbox.refused.map(({ item, sentence }) => ({ id: item.id, sentence }))}
          word="Not recorded"
          onRead={table.dismiss}
        />
        {record.closed && mayCorrect ? <CorrectRecord because={because} onBecause={setBecause} /> : null}
        {mayEnter ? (
          <>
            <OutcomeBar saying={saying} onSay={setSaying} />
            <div className={styles.saidRow}>
              <p role="status" className={kitStyles.said}>
                {said}
              </p>
              {last && !table.reckoned.state.takenBack.has(last.id) ? (
                <Button size="bench" onClick={() => takeBack(last.id)}>
                  Take that back
                </Button>
              ) : null}
            </div>
            {several ? (
              <section className={styles.chosen} aria-label="Where it came from">
                <h3 className={styles.placeTitle}>Which one is it from?</h3>
                <div className={kitStyles.acts}>
                  {several.slots.map((slot) => (
                    <Button
                      key={sourceKey(slot)}
                      size="bench"
                      onClick={() => touch(touchOf(slot, { lot: several.lot, scanId: several.scanId }))}
                    >
                      {`${record.sets.find(({ id }) => id === slot.setId)?.code ?? ''}, layer ${slot.layer}, row ${slot.row}, slot ${slot.slot}`}
                    </Button>
                  ))}
                </div>
              </section>
            ) : null}
            <fieldset className={styles.tabs}>
              <legend className={styles.legend}>Where</legend>
              {tabs.map(({ id, label }) => (
                <button
                  key={id}
                  type="button"
                  className={styles.tab}
                  aria-current={id === tab?.id || undefined}
                  onClick={() => choose(id)}
                >
                  {label}
                </button>
              ))}
            </fieldset>
            {tab?.kind === 'plate' && tab.planned ? (
              <Section title={tab.label}>
                <PlatePanel {...panel} planned={tab.planned} />
              </Section>
            ) : null}
            {tab?.kind === 'free' ? (
              <Section title={tab.label}>
                <FreePanel {...panel} />
              </Section>
            ) : null}
            {tab?.kind === 'packs' ? (
              <Section title={tab.label}>
                <PackRows {...panel} mayEnter={mayEnter} />
              </Section>
            ) : null}
            {tab?.kind === 'set' ? (
              <Section title={tab.label}>
                <SetRows {...panel} key={tab.id} setId={tab.id} mayEnter={mayEnter} />
              </Section>
            ) : null}
          </>
        ) : null}
      </div>
      <div className={styles.told}>
        <Section title="What is recorded" note="the newest first">
          <RecordedList
            record={record}
            table={table}
            now={now}
            onTakeBack={mayEnter ? ({ id }: ListedEntry) => takeBack(id) : null}
          />
        </Section>
        <AccountView table={table} />
        {mayRecord && !record.closed ? <CloseRecord booked={booked} table={table} /> : null}
      </div>
      <OpenedAllTheSame
        barred={barred}
        onClose={() => setBarred(null)}
        onOpened={(note) => {
          if (barred) enter(barred.touched, barred.saying, { despite: barred.bars, note });
        }}
      />
    </div>
  );
}

interface Tab {
  id: string;
  label: string;
  kind: 'plate' | 'free' | 'packs' | 'set';
  planned?: NonNullable<RecordOfUse['plan']>['construct']['plates'][number];
}

function tabsOf(record: RecordOfUse): Tab[] {
  const construct = record.plan?.construct;
  return [
    ...(construct?.plates ?? []).map(
      (planned): Tab => ({ id: planned.key, label: `Plate ${planned.key}`, kind: 'plate', planned }),
    ),
    ...(construct && construct.freeScrews.length > 0
      ? [{ id: 'free', label: 'Free screws', kind: 'free' } as const]
      : []),
    ...(record.packs.length > 0 ? [{ id: 'packs', label: 'Single packs', kind: 'packs' } as const] : []),
    ...record.sets.map(({ id, code }): Tab => ({ id, label: code, kind: 'set' })),
  ];
}
