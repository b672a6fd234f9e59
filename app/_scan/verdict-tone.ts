import type { ScanMeaning, ScanVerdict } from '@/lib/scanning/meaning';
import type { Tone } from '../_ui/tone';

const TONES: Record<ScanVerdict, Tone> = {
  understood: 'good',
  already: 'neutral',
  ask: 'attention',
  refused: 'stop',
  unknown: 'unknown',
};

/** A recalled item is understood, and yet nothing good. */
export function scanTone(verdict: ScanVerdict, meaning: ScanMeaning): Tone {
  if (meaning.kind === 'item' && meaning.status === 'recalled') return 'stop';
  if (meaning.kind === 'pack' && meaning.short && verdict === 'understood') return 'attention';
  return TONES[verdict];
}
