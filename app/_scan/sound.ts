import type { ScanVerdict } from '@/lib/scanning/meaning';
import { soundIsOff } from './scanner-setting';

/** A tone: pitch in hertz, when it begins and how long it lasts in seconds. */
type Tone = readonly [hertz: number, from: number, lasts: number];

/**
 * Told apart by number and direction, not by pitch alone: one short tick for heard, two rising for understood, three for a
 * question, two falling and rough for refused, one long for unknown, two alike for what was there already.
 */
const TONES: Record<ScanVerdict | 'heard', readonly Tone[]> = {
  heard: [[1760, 0, 0.03]],
  understood: [
    [880, 0, 0.07],
    [1318, 0.08, 0.12],
  ],
  already: [
    [660, 0, 0.07],
    [660, 0.1, 0.07],
  ],
  ask: [
    [740, 0, 0.08],
    [740, 0.11, 0.08],
    [1109, 0.22, 0.16],
  ],
  refused: [
    [330, 0, 0.18],
    [196, 0.2, 0.32],
  ],
  unknown: [[294, 0, 0.45]],
};
const ROUGH: ReadonlySet<ScanVerdict | 'heard'> = new Set(['refused', 'unknown']);

let context: AudioContext | null = null;

/** Plays what a scan came to. Browsers let a page sound only after a key or a touch, which a scan is. */
export function sound(of: ScanVerdict | 'heard'): void {
  if (soundIsOff() || typeof AudioContext === 'undefined') return;
  try {
    context ??= new AudioContext({ latencyHint: 'interactive' });
    if (context.state === 'suspended') void context.resume();
    const start = context.currentTime;
    for (const [hertz, from, lasts] of TONES[of]) {
      const oscillator = context.createOscillator();
      const volume = context.createGain();
      oscillator.type = ROUGH.has(of) ? 'sawtooth' : 'sine';
      oscillator.frequency.value = hertz;
      // without a slope at both ends it would click
      volume.gain.setValueAtTime(0, start + from);
      volume.gain.linearRampToValueAtTime(0.2, start + from + 0.008);
      volume.gain.setValueAtTime(0.2, start + from + lasts - 0.008);
      volume.gain.linearRampToValueAtTime(0, start + from + lasts);
      oscillator.connect(volume).connect(context.destination);
      oscillator.start(start + from);
      oscillator.stop(start + from + lasts);
    }
  } catch {
    // a screen without sound still shows everything
  }
}
