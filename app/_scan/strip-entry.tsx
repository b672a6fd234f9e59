'use client';

import Link from 'next/link';
import { useEffect, useState } from 'react';
import { SCAN_VERDICT_WORDS, thingWords } from '@/lib/wording/scans';
import { Button } from '../_ui/button';
import { ThumbDrawing } from '../_ui/drawing/ThumbDrawing';
import { Status } from '../_ui/status';
import { reply } from './desk';
import { destination } from './destination';
import { knownItem } from './known-items';
import styles from './strip.module.css';
import type { Shown } from './strip-store';
import { useThumb } from './use-thumb';
import { scanTone } from './verdict-tone';

/** One scan in the strip: hollow until it is stored, then with its picture and what it means. */
export function StripEntry({ shown }: { shown: Shown }) {
  useFeedbackTime(shown);
  switch (shown.kind) {
    case 'heard':
      return <Heard shown={shown} />;
    case 'answered':
      return <Answered shown={shown} />;
    case 'refused':
      return (
        <div className={styles.entry}>
          <Status tone="stop">Not stored</Status>
          <p className={styles.sentence}>{shown.says}</p>
        </div>
      );
    case 'badge':
      return (
        <div className={styles.entry}>
          <Status tone={shown.how === 'taken' ? 'neutral' : 'stop'}>Badge</Status>
          <p className={styles.sentence}>{BADGE[shown.how]}</p>
        </div>
      );
    case 'patient':
      return (
        <div className={styles.entry}>
          <Status tone="stop">Not kept</Status>
          <p className={styles.sentence}>
            This looks like a person’s own number, as on a wristband. It was not kept, shown or sent: scan
            only what is on sets, packs and items.
          </p>
        </div>
      );
    case 'cut':
      return (
        <div className={styles.entry}>
          <Status tone="stop">Only a piece</Status>
          <p className={styles.sentence}>
            The end of the scan did not arrive. Nothing was made of it: scan again.
          </p>
        </div>
      );
  }
}

const BADGE = {
  taken: 'A badge was read.',
  nobody: 'A badge was read, but nothing here asks for one.',
  broken: 'A badge was read only in part. Scan it again.',
} as const;

function Heard({ shown: { heard } }: { shown: Shown & { kind: 'heard' } }) {
  const { reading, text } = heard;
  const faulty = reading.state === 'faulty' || reading.state === 'ambiguous';
  const item = knownItem(reading);
  const thumb = useThumb(item?.itemId ?? null);
  return (
    <div className={`${styles.entry} ${styles.hollow}`} data-scan-state="heard">
      <div className={styles.head}>
        <Status tone="neutral" look="plain">
          {heard.how === 'typed' ? 'Typed' : 'Scanned'}, not stored yet
        </Status>
      </div>
      <div className={styles.told}>
        {item ? <div className={styles.picture}>{thumb ? <ThumbDrawing thumb={thumb} /> : null}</div> : null}
        <div>
          {item ? <p className={styles.thing}>{item.code}</p> : null}
          <p className={item ? styles.sentence : styles.thing}>
            {reading.state === 'unknown' ? text : reading.says}
          </p>
          {faulty && reading.problems[0] ? (
            <p className={styles.sentence}>{reading.problems[0].sentence}</p>
          ) : null}
        </div>
      </div>
    </div>
  );
}

function Answered({ shown }: { shown: Shown & { kind: 'answered' } }) {
  const { event, answer, delivered, replied } = shown;
  const { meaning, verdict } = answer;
  const itemId = 'itemId' in meaning ? meaning.itemId : null;
  const thumb = useThumb(itemId);
  const href = destination(meaning);
  const asks = verdict === 'ask' && replied === null && delivered !== 'left';
  return (
    <div className={styles.entry} data-scan-state={verdict}>
      <div className={styles.head}>
        <Status tone={scanTone(verdict, meaning)}>{SCAN_VERDICT_WORDS[verdict]}</Status>
        {answer.late ? <span className={styles.note}>entered late</span> : null}
      </div>
      <div className={styles.told}>
        {itemId !== null ? (
          <div className={styles.picture}>{thumb ? <ThumbDrawing thumb={thumb} /> : null}</div>
        ) : null}
        <div>
          <p className={styles.thing}>
            {href ? <Link href={href}>{thingWords(meaning)}</Link> : thingWords(meaning)}
          </p>
          <p className={styles.sentence}>{answer.sentence}</p>
          {meaning.kind === 'refused' && meaning.faults.length > 0 ? (
            <ul className={styles.faults}>
              {meaning.faults.map((fault) => (
                <li key={fault}>{fault}</li>
              ))}
            </ul>
          ) : null}
          {meaning.kind === 'refused' && meaning.because === 'ambiguous' ? (
            <p className={styles.sentence}>
              <Link href="/scan">Choose what is printed beside it</Link>
            </p>
          ) : null}
          {delivered === 'left' ? (
            <p className={styles.sentence}>
              The screen it was scanned for was left before it was stored: it is on record, and nothing else
              was made of it.
            </p>
          ) : null}
          {replied ? (
            <p className={styles.sentence}>
              {replied === 'another' ? 'Another one.' : 'The same again: not counted.'}
            </p>
          ) : null}
        </div>
      </div>
      {asks ? <Asked event={event} /> : null}
    </div>
  );
}

function Asked({ event }: { event: (Shown & { kind: 'answered' })['event'] }) {
  const [wrong, setWrong] = useState<string | null>(null);
  const [pending, setPending] = useState(false);
  async function say(said: 'another' | 'same') {
    setPending(true);
    setWrong(await reply(event, said));
    setPending(false);
  }
  return (
    <div className={styles.asked}>
      <Button size="bench" kind="primary" disabled={pending} onClick={() => say('another')}>
        Another one
      </Button>
      <Button size="bench" disabled={pending} onClick={() => say('same')}>
        The same again
      </Button>
      {wrong ? <p role="alert">{wrong}</p> : null}
    </div>
  );
}

/** How long it took from the last key of a scan until the screen showed it, as User Timing that a test can read. */
function useFeedbackTime(shown: Shown): void {
  const heardAt = shown.kind === 'heard' || shown.kind === 'answered' ? shown.heardAt : null;
  useEffect(() => {
    if (heardAt === null) return;
    const name = shown.kind === 'heard' ? 'scan-shown' : 'scan-answered';
    // after the next paint, and also where the answer is there before it
    requestAnimationFrame(() => {
      const after = new MessageChannel();
      after.port1.onmessage = () => {
        performance.measure(name, { start: heardAt, end: performance.now() });
        after.port1.close();
      };
      after.port2.postMessage(null);
    });
  }, [shown.kind, heardAt]);
}
