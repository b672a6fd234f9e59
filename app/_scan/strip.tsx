'use client';

import Link from 'next/link';
import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { Button } from '../_ui/button';
import { Status } from '../_ui/status';
import { VisuallyHidden } from '../_ui/visually-hidden';
import { keepSound, soundIsOff } from './scanner-setting';
import styles from './strip.module.css';
import { StripEntry } from './strip-entry';
import { closeStrip, onStrip, type Pending, type Shown, stripAtFirst, stripNow } from './strip-store';
import { useStripRoom } from './use-strip-room';

/** Long enough to read; what asks or refuses stays until it is closed. */
const SHOWN_FOR_MS = 12_000;

/**
 * What was scanned, at the foot of every screen: at once as heard, then as stored with its picture; how many wait to be
 * stored; whether this window hears the scanner at all; and the ways to type a code, use the camera, or be silent.
 */
export function ScanStrip({ signedIn, listening }: { signedIn: boolean; listening: boolean }) {
  const { shown, open, pending, hears } = useSyncExternalStore(onStrip, stripNow, stripAtFirst);
  const last = shown.at(-1);
  const dock = useRef<HTMLElement>(null);
  useStripRoom(dock);
  const tells = (open && shown.length > 0) || !hears || pending.waiting > 0;

  useEffect(() => {
    if (!open || !last || stays(last)) return;
    const timer = setTimeout(closeStrip, SHOWN_FOR_MS);
    return () => clearTimeout(timer);
  }, [open, last]);

  return (
    <aside
      ref={dock}
      className={styles.dock}
      aria-label="Scanner"
      data-print="no"
      data-listening={listening || undefined}
      data-tells={tells || undefined}
    >
      {open && shown.length > 0 ? (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
        <section className={styles.panel} tabIndex={0} aria-label="Scanned just now">
          <div className={styles.close}>
            <Button size="small" kind="quiet" onClick={closeStrip}>
              Close
            </Button>
          </div>
          {[...shown].reverse().map((one) => (
            <StripEntry key={one.key} shown={one} />
          ))}
        </section>
      ) : null}
      <div role="status">
        <VisuallyHidden>{last && open ? spoken(last) : ''}</VisuallyHidden>
      </div>
      {hears ? null : (
        <button type="button" className={styles.deaf} onClick={() => window.focus()}>
          This window does not hear the scanner: tap it
        </button>
      )}
      {signedIn ? (
        <div className={styles.bar}>
          <Link href="/scan" className={styles.way}>
            <Beam />
            Scan
          </Link>
          <SoundSwitch />
          <Waiting pending={pending} />
        </div>
      ) : null}
    </aside>
  );
}

/** What a person must see before it goes. */
function stays(shown: Shown): boolean {
  if (shown.kind === 'heard') return true;
  if (shown.kind === 'answered')
    return shown.answer.verdict === 'ask' ? shown.replied === null : shown.answer.verdict === 'refused';
  return shown.kind === 'refused' || shown.kind === 'cut' || shown.kind === 'patient';
}

function spoken(shown: Shown): string {
  if (shown.kind === 'answered') return shown.answer.sentence;
  if (shown.kind === 'refused') return shown.says;
  return '';
}

function Waiting({ pending: { waiting, failing, signedOut, unkept } }: { pending: Pending }) {
  if (waiting === 0) return null;
  const scans = waiting === 1 ? '1 scan' : `${waiting} scans`;
  const why = signedOut
    ? ': sign in to send them'
    : failing
      ? ': the service can’t be reached, trying again'
      : '';
  return (
    <span className={styles.way} role="status">
      <Status tone={failing || signedOut ? 'attention' : 'neutral'} look="plain">
        {scans} not stored yet{why}
        {unkept > 0 ? '. Only this window has them: leave it open' : ''}
      </Status>
    </span>
  );
}

function SoundSwitch() {
  const [off, setOff] = useState(false);
  useEffect(() => setOff(soundIsOff()), []);
  return (
    <Button
      kind="quiet"
      size="bench"
      aria-pressed={off}
      onClick={() => {
        keepSound(!off);
        setOff(!off);
      }}
    >
      {off ? 'Sound is off' : 'Sound is on'}
    </Button>
  );
}

/** A mark with the line of light across it. */
function Beam() {
  return (
    <svg viewBox="0 0 22 16" width="22" height="16" aria-hidden="true" focusable="false">
      <path d="M3 2v12M6 2v12M10 2v12M13 2v12M15 2v12M19 2v12" stroke="currentColor" strokeWidth="1.5" />
      <path d="M0 8h22" stroke="currentColor" strokeWidth="2" />
    </svg>
  );
}
