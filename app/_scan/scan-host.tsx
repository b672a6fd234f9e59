'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { useActing } from '../_ui/acting';
import { answered, hearScan, refusedForGood, setNavigation } from './desk';
import { destination } from './destination';
import { presentTrial } from './handlers';
import { listenToKeys } from './listener';
import { sendNow, startSending } from './sender';
import { sound } from './sound';
import { ScanStrip } from './strip';
import { noteCut, noteHears } from './strip-store';

/** Listens to the scanner on every screen, sends what was scanned, and shows it. Stands in the shell, once. */
export function ScanHost() {
  const router = useRouter();
  const acting = useActing();
  const [listening, setListening] = useState(false);

  useEffect(
    () =>
      listenToKeys({
        scan: (text, at) => {
          if (presentTrial() === null) hearScan(text, 'scanner', at);
        },
        cut: () => {
          if (presentTrial() !== null) return;
          sound('refused');
          noteCut();
        },
        key: (key) => presentTrial()?.key(key),
      }),
    [],
  );

  useEffect(() => startSending({ answered, refused: refusedForGood }), []);

  // what waited for somebody to sign in goes as soon as somebody has
  const sessionId = acting?.sessionId ?? null;
  useEffect(() => {
    if (sessionId !== null) sendNow();
  }, [sessionId]);

  useEffect(() => {
    setNavigation(({ meaning }) => {
      const there = destination(meaning);
      if (there !== null && there !== location.pathname + location.search) router.push(there);
    });
  }, [router]);

  useEffect(() => {
    const look = () => noteHears(document.hasFocus());
    look();
    const [lost, found] = [() => noteHears(document.hasFocus()), () => noteHears(true)];
    window.addEventListener('blur', lost);
    window.addEventListener('focus', found);
    // not when the finger goes down: the banner would be gone under it, and the tap go to what is beneath
    window.addEventListener('click', found);
    document.addEventListener('visibilitychange', look);
    return () => {
      window.removeEventListener('blur', lost);
      window.removeEventListener('focus', found);
      window.removeEventListener('click', found);
      document.removeEventListener('visibilitychange', look);
    };
  }, []);

  // after all of the above: from here on no scan is missed
  useEffect(() => setListening(true), []);

  return <ScanStrip signedIn={acting !== null} listening={listening} />;
}
