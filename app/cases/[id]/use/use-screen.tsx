'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { RefusedEntries } from '@/app/_kit/refused-entries';
import { SavedLine } from '@/app/_kit/saved-line';
import { Button } from '@/app/_ui/button';
import { Section } from '@/app/_ui/section';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { UsePlace } from '@/lib/usage/act';
import { AccountView } from './account-view';
import { CloseRecord } from './close-record';
import { CorrectRecord } from './correct-record';
import { Delays } from './delays';
import { OpenedAllTheSame } from './opened-all-the-same';
import { OutcomeBar } from './outcome-bar';
import { ReasonKeys } from './reason-keys';
import { RecordedList } from './recorded-list';
import { TabPanel } from './tab-panel';
import styles from './use.module.css';
import { useEntering } from './use-entering';
import { type ListedEntry, useTable } from './use-table';
import { useTableScans } from './use-table-scans';
import { tabsOf } from './use-tabs';
import { WhichOne } from './which-one';

/** What the reader may do with the record. */
interface MayDo {
  mayRecord: boolean;
  mayCorrect: boolean;
  mayDelay: boolean;
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
  mayDelay,
  now,
}: {
  booked: { id: string; reference: string };
  record: RecordOfUse;
  now: string;
} & MayDo) {
  const table = useTable(booked.id, record);
  const tabs = tabsOf(record);
  const [tabId, setTabId] = useState(tabs[0]?.id ?? '');
  const tab = tabs.find(({ id }) => id === tabId) ?? tabs[0];
  const [because, setBecause] = useState<string | null>(null);
  const entering = useEntering(record, table, because);
  const { saying, setSaying, said, last, barred, several, touch } = entering;
  const mayEnter = record.closed ? mayCorrect && because !== null : mayRecord;
  const lastIsWaste = last !== null && table.isWaste(last.act);

  function choose(id: string) {
    setTabId(id);
    setSaying((before) => ({ ...before, place: null }));
  }

  useTableScans({
    caseId: booked.id,
    record,
    table,
    listens: mayEnter,
    onTouch: entering.touchScanned,
    onSet: choose,
    onSeveral: entering.setSeveral,
    onSaid: entering.setSaid,
  });
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
                <Button size="bench" onClick={() => entering.takeBack(last.id)}>
                  Take that back
                </Button>
              ) : null}
            </div>
            {last && lastIsWaste && table.wasteReasons.length > 0 ? (
              <ReasonKeys
                legend={`Why was ${table.nameOfItem(last.act.itemId)} wasted?`}
                reasons={table.wasteReasons}
                chosen={table.reasonOf(last.id)}
                onName={(reasonId) => entering.nameReason(last.id, reasonId)}
              />
            ) : null}
            {several ? <WhichOne several={several} record={record} onTouch={touch} /> : null}
            <TabPanel
              tabs={tabs}
              tab={tab}
              onTab={choose}
              record={record}
              table={table}
              saying={saying}
              onPlace={(place: UsePlace | null) => setSaying((before) => ({ ...before, place }))}
              onTouch={touch}
            />
          </>
        ) : null}
      </div>
      <div className={styles.told}>
        <Section title="What is recorded" note="the newest first">
          <RecordedList
            record={record}
            table={table}
            now={now}
            onTakeBack={mayEnter ? ({ id }: ListedEntry) => entering.takeBack(id) : null}
            onName={mayEnter ? entering.nameReason : null}
          />
        </Section>
        <Delays
          record={record}
          table={table}
          now={now}
          because={record.closed ? because : null}
          mayEnter={mayDelay && (record.closed === null || because !== null)}
        />
        <AccountView table={table} />
        {mayRecord && !record.closed && record.hidden.length === 0 ? (
          <CloseRecord booked={booked} table={table} />
        ) : mayEnter || mayDelay ? (
          <SavedLine outbox={table.outbox} />
        ) : null}
      </div>
      <OpenedAllTheSame
        barred={barred}
        onClose={() => entering.setBarred(null)}
        onOpened={(note) => {
          if (barred) entering.enter(barred.touched, barred.saying, { despite: barred.bars, note });
        }}
      />
    </div>
  );
}
