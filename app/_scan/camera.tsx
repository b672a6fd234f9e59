'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import { Button } from '../_ui/button';
import { ButtonRow } from '../_ui/button-row';
import { Status } from '../_ui/status';
import styles from './camera.module.css';
import { codesIn, prepareReader } from './camera-reader';
import { hearScan } from './desk';

type State = 'off' | 'starting' | 'on' | 'insecure' | 'denied' | 'none' | 'busy' | 'noReader';

/** What to do where there is no picture. */
const WAYS_OUT: Record<Exclude<State, 'off' | 'starting' | 'on'>, string> = {
  insecure:
    'The browser gives the camera only to pages opened by https, or on this computer itself. Open Kitwright by its https address.',
  denied:
    'The camera was not allowed. Allow it for this address in the browser’s settings, then start it again.',
  none: 'This device has no camera. Use a scanner, or type the code.',
  busy: 'The camera is used by another program. Close that, then start it again.',
  noReader: 'The reader could not be fetched from the service. Try again in a moment.',
};

/** Between two looks, so that the screen stays quick. */
const REST_MS = 90;
/** A symbol that stays in view is read once; one that was away so long is read again. */
const AWAY_MS = 1500;
const MOST_PIXELS = 1280;

/** The camera as a scanner: every symbol it sees is a scan. */
export function Camera() {
  const [state, setState] = useState<State>('off');
  const [torch, setTorch] = useState<'none' | 'off' | 'on'>('none');
  const video = useRef<HTMLVideoElement>(null);
  const stream = useRef<MediaStream | null>(null);

  const stop = useCallback(() => {
    for (const track of stream.current?.getTracks() ?? []) track.stop();
    stream.current = null;
    setTorch('none');
    setState('off');
  }, []);
  useEffect(() => stop, [stop]);

  async function start() {
    if (!navigator.mediaDevices?.getUserMedia) {
      setState('insecure');
      return;
    }
    setState('starting');
    try {
      const [given] = await Promise.all([
        navigator.mediaDevices.getUserMedia({
          video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } },
        }),
        prepareReader(),
      ]);
      stream.current = given;
      const [track] = given.getVideoTracks();
      const can = track?.getCapabilities?.() as { torch?: boolean } | undefined;
      setTorch(can?.torch ? 'off' : 'none');
      if (video.current) {
        video.current.srcObject = given;
        await video.current.play();
      }
      setState('on');
    } catch (error) {
      setState(stateOf(error));
    }
  }

  useEffect(() => {
    if (state !== 'on') return;
    return watch(() => video.current);
  }, [state]);

  async function switchTorch() {
    const [track] = stream.current?.getVideoTracks() ?? [];
    const on = torch !== 'on';
    try {
      await track?.applyConstraints({ advanced: [{ torch: on } as MediaTrackConstraintSet] });
      setTorch(on ? 'on' : 'off');
    } catch {
      setTorch('none');
    }
  }

  const wayOut = state === 'off' || state === 'starting' || state === 'on' ? null : WAYS_OUT[state];
  return (
    <div className={styles.camera}>
      <div className={state === 'on' ? styles.view : styles.away}>
        <video ref={video} className={styles.video} playsInline muted aria-label="What the camera sees" />
        <div className={styles.aim} aria-hidden="true" />
      </div>
      {wayOut ? (
        <div role="alert">
          <Status tone="attention">No picture</Status>
          <p>{wayOut}</p>
        </div>
      ) : null}
      <ButtonRow>
        {state === 'on' ? (
          <Button size="bench" onClick={stop}>
            Stop the camera
          </Button>
        ) : (
          <Button size="bench" kind="primary" pending={state === 'starting'} onClick={start}>
            Start the camera
          </Button>
        )}
        {torch === 'none' ? null : (
          <Button size="bench" aria-pressed={torch === 'on'} onClick={switchTorch}>
            {torch === 'on' ? 'Light is on' : 'Light is off'}
          </Button>
        )}
      </ButtonRow>
    </div>
  );
}

function stateOf(error: unknown): State {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'denied';
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return 'none';
  if (name === 'NotReadableError' || name === 'AbortError') return 'busy';
  return 'noReader';
}

/** Looks at the picture again and again. Answers how to stop. */
function watch(view: () => HTMLVideoElement | null): () => void {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  const seen = new Map<string, number>();
  let stopped = false;
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function look(): Promise<void> {
    const video = view();
    if (video && context && video.videoWidth > 0) {
      const scale = Math.min(1, MOST_PIXELS / Math.max(video.videoWidth, video.videoHeight));
      canvas.width = Math.round(video.videoWidth * scale);
      canvas.height = Math.round(video.videoHeight * scale);
      context.drawImage(video, 0, 0, canvas.width, canvas.height);
      const at = performance.now();
      const codes = await codesIn(context.getImageData(0, 0, canvas.width, canvas.height)).catch(() => []);
      if (stopped) return;
      for (const code of codes) {
        const last = seen.get(code);
        seen.set(code, performance.now());
        if (last === undefined || at - last > AWAY_MS) hearScan(code, 'camera', at);
      }
    }
    timer = setTimeout(look, REST_MS);
  }

  void look();
  return () => {
    stopped = true;
    clearTimeout(timer);
  };
}
