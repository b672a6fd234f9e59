'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type ScanEvent, useScans } from '@/app/_scan/use-scans';
import { Button } from '@/app/_ui/button';
import { EmptyState } from '@/app/_ui/empty-state';
import { Section } from '@/app/_ui/section';
import { showToast } from '@/app/_ui/toast';
import type { WaitingPack } from '@/db/queries/loads/findLoad';
import type { LoadedPack } from '@/db/queries/loads/packsOfLoad';
import { loadId as parseLoadId } from '@/lib/identity/ids';
import type { LoadState, UnloadedAs } from '@/lib/loads/load';
import { UNLOADED_WORDS } from '@/lib/wording/loads';
import { countWord } from '@/lib/wording/numbers';
import styles from '../loads.module.css';
import { sendLoad } from '../send-load';
import { PackRow } from './pack-row';

interface Pending {
  packId: string;
  copy: number | null;
  name: string;
  /** Why it is not in; `null` while it is on its way. */
  wrong: string | null;
}

/**
 * What lies in the load. While it is made up, every label scanned goes in; after it ran, a label scanned asks how that
 * pack came out. What is not durable yet looks hollow.
 */
export function Contents({
  load,
  packs,
  waiting,
  mayWork,
}: {
  load: { id: string; number: string; state: LoadState; revision: number };
  packs: readonly LoadedPack[];
  waiting: readonly WaitingPack[];
  mayWork: boolean;
}) {
  const router = useRouter();
  const [pending, setPending] = useState<readonly Pending[]>([]);
  const [chosen, setChosen] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const address = `/api/v1/loads/${load.id}`;
  const makingUp = load.state === 'makingUp' && mayWork;
  const unloading = load.state === 'awaitingAcceptance' && mayWork;

  async function putIn(packId: string, copy: number | null, name: string) {
    setPending((all) => [...all.filter((one) => one.packId !== packId), { packId, copy, name, wrong: null }]);
    const sent = await sendLoad(`${address}/packs`, { baseRevision: null, packId, take: 'in', copy });
    setPending((all) =>
      sent.ok
        ? all.filter((one) => one.packId !== packId)
        : all.map((one) => (one.packId === packId ? { ...one, wrong: sent.sentences.join(' ') } : one)),
    );
    if (sent.ok) showToast({ tone: 'good', word: 'In', text: `${name} is in load ${load.number}.` });
    router.refresh();
  }

  async function act(path: string, body: object) {
    setWrong(null);
    const sent = await sendLoad(`${address}/${path}`, { baseRevision: null, ...body });
    if (!sent.ok) setWrong(sent.sentences.join(' '));
    router.refresh();
    return sent.ok;
  }

  async function found(pack: LoadedPack, as: UnloadedAs) {
    if (await act('unload', { packId: pack.id, as }))
      showToast({
        tone: as === 'sound' ? 'good' : 'attention',
        word: UNLOADED_WORDS[as],
        text:
          as === 'sound'
            ? `${pack.name} is sound.`
            : `${pack.name} is held: its pack came out ${UNLOADED_WORDS[as]}.`,
      });
    setChosen(null);
  }

  function onScan({ meaning }: ScanEvent): 'taken' | 'passed' {
    if (meaning.kind === 'set' && (makingUp || unloading)) {
      showToast({
        tone: 'attention',
        word: 'Not the label',
        text: `That is ${meaning.code} itself. Scan the label on its pack.`,
      });
      return 'taken';
    }
    if (meaning.kind !== 'pack') return 'passed';
    if (makingUp) {
      void putIn(meaning.packId, meaning.copy, meaning.code);
      return 'taken';
    }
    const here = packs.find(({ id }) => id === meaning.packId);
    if (!here) return 'passed';
    setChosen(here.id);
    document.getElementById(`pack-${here.id}`)?.scrollIntoView({ block: 'center' });
    return 'taken';
  }
  // a pack taken out and scanned again was there before: the load itself knows what lies in it
  useScans(onScan, { context: { kind: 'load', loadId: parseLoadId.parse(load.id) }, takes: 'everything' });

  const open = waiting.filter(({ id }) => !pending.some((one) => one.packId === id && one.wrong === null));
  return (
    <>
      <Section
        title="In the load"
        note={
          packs.length === 0
            ? 'nothing yet'
            : `${countWord(packs.length)} ${packs.length === 1 ? 'pack' : 'packs'}`
        }
      >
        {makingUp ? <p className={styles.soft}>Scan the label of each pack as it goes in.</p> : null}
        {unloading ? (
          <p className={styles.soft}>Look at each pack as it comes out. Scan its label to find it here.</p>
        ) : null}
        {wrong ? (
          <p role="alert" className={styles.wrong}>
            {wrong}
          </p>
        ) : null}
        {packs.length === 0 && pending.length === 0 ? (
          <EmptyState title="The load is empty">
            {makingUp ? 'Scan a label, or put in a pack from the list below.' : 'Nothing was put into it.'}
          </EmptyState>
        ) : (
          <ul className={styles.packs}>
            {packs.map((pack) => (
              <PackRow
                key={pack.id}
                pack={pack}
                chosen={chosen === pack.id}
                onTakeOut={
                  makingUp ? () => void act('packs', { packId: pack.id, take: 'out', copy: null }) : null
                }
                onFound={unloading ? (as) => void found(pack, as) : null}
              />
            ))}
            {pending.map((one) => (
              <li key={one.packId} className={styles.pack} data-pending="true">
                <div className={styles.packName}>
                  <strong>{one.name}</strong>
                  <span role={one.wrong === null ? undefined : 'alert'}>
                    {one.wrong ?? 'on its way into the load'}
                  </span>
                </div>
                {one.wrong === null ? null : (
                  <div className={styles.packEnd}>
                    <Button onClick={() => void putIn(one.packId, one.copy, one.name)}>Try again</Button>
                    <Button
                      kind="quiet"
                      onClick={() => setPending((all) => all.filter((other) => other !== one))}
                    >
                      Leave it out
                    </Button>
                  </div>
                )}
              </li>
            ))}
          </ul>
        )}
      </Section>
      {makingUp ? (
        <Section title="Closed and waiting" note="in no load yet, the longest waiting first">
          {open.length === 0 ? (
            <p className={styles.soft}>No other closed pack is waiting.</p>
          ) : (
            <ul className={styles.packs}>
              {open.map((pack) => (
                <li key={pack.id} className={styles.pack}>
                  <div className={styles.packName}>
                    <strong>{pack.name}</strong>
                    <span>{`${pack.number}, ${pack.kind === 'set' ? 'set' : 'pouch'}`}</span>
                  </div>
                  <Button
                    onClick={() => void putIn(pack.id, null, pack.name)}
                  >{`Put in ${pack.name}`}</Button>
                </li>
              ))}
            </ul>
          )}
        </Section>
      ) : null}
    </>
  );
}
