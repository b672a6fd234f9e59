import type { LastScan } from '@/db/queries/scans/lastScans';
import { SCAN_HOW_WORDS, SCAN_VERDICT_WORDS, thingWords } from '@/lib/wording/scans';
import { momentWords } from '@/lib/wording/sets';
import { destination } from '../_scan/destination';
import { scanTone } from '../_scan/verdict-tone';
import type { Tone } from '../_ui/tone';

/** One scan as the table shows it. */
export interface ScanLine {
  id: string;
  at: string;
  /** The instant, to sort by. */
  doneAt: string;
  thing: string;
  href: string | null;
  word: string;
  tone: Tone;
  sentence: string;
  by: string;
  how: string;
}

export function scanLine(scan: LastScan, now: string): ScanLine {
  const { id, doneAt, meaning, verdict, late, reply } = scan;
  const replied =
    reply === null ? '' : reply === 'another' ? ' Said: another one.' : ' Said: the same again.';
  return {
    id,
    doneAt,
    at: `${momentWords(doneAt, now)}${late ? `, entered ${momentWords(scan.enteredAt, now)}` : ''}`,
    thing: meaning.kind === 'refused' ? shown(scan.text) : thingWords(meaning),
    href: destination(meaning),
    word: SCAN_VERDICT_WORDS[verdict],
    tone: scanTone(verdict, meaning),
    sentence: `${scan.sentence}${replied}`,
    by: scan.by,
    how: SCAN_HOW_WORDS[scan.how],
  };
}

/** Control characters, which no screen shows, as a mark of their own. */
const shown = (text: string): string => text.replaceAll('\u001d', '␝');
