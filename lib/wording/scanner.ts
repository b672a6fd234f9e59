import type { LayoutName } from '../scanning/layouts';
import type { ScannerSetting } from '../scanning/scanner';
import type { Trial } from '../scanning/setUp';

export const LAYOUT_WORDS: Record<LayoutName, string> = {
  us: 'a US keyboard',
  uk: 'a UK keyboard',
  german: 'a German keyboard',
  french: 'a French keyboard',
  swedish: 'a Swedish keyboard',
};

const ENDS: Record<ScannerSetting['ends'], string> = {
  unknown: 'Enter, Tab, or silence where nobody types',
  enter: 'Enter',
  tab: 'Tab',
  silence:
    'nothing: set the scanner to end with Enter, so that a piece of a scan is never taken for a whole one',
};

interface Fact {
  term: string;
  value: string;
}

/** What is kept of a scanner. */
export const settingFacts = (setting: ScannerSetting): Fact[] => [
  { term: 'Pretends to be', value: LAYOUT_WORDS[setting.layout] },
  {
    term: 'Caps Lock',
    value: setting.minds === 'capsLock' ? 'it turns letters round while it is on' : 'makes no difference',
  },
  { term: 'Ends a scan with', value: ENDS[setting.ends] },
  { term: 'Longest gap between keys', value: `${setting.gapMs} ms` },
  {
    term: 'Separators',
    value: setting.separators === 'sent' ? 'are sent' : 'may be lost: codes that need them are refused',
  },
];

/** What one trial told. */
export const trialFacts = (trial: Trial & { outcome: 'understood' }): Fact[] => [
  { term: 'Pretends to be', value: LAYOUT_WORDS[trial.setting.layout] },
  {
    term: 'Caps Lock',
    value:
      trial.setting.minds === 'capsLock'
        ? 'it turns letters round while it is on; that is undone'
        : trial.capsLock
          ? 'was on, and made no difference'
          : 'was off: turn it on and scan again to see whether the scanner minds it',
  },
  {
    term: 'Separator',
    value: {
      character: 'sent as the character itself',
      written: 'written out; understood',
      lost: 'not sent: set the scanner to send GS (ASCII 29) for FNC1',
    }[trial.separators],
  },
  {
    term: 'Symbology identifier',
    value:
      trial.mark === null ? 'not sent: set the scanner to send it (AIM identifier)' : `sent: ${trial.mark}`,
  },
  { term: 'Ends a scan with', value: ENDS[trial.setting.ends] },
  { term: 'Between keys', value: `${trial.everyMs} ms, ${trial.longestMs} ms at the longest` },
  {
    term: 'Symbol',
    value:
      trial.symbol === 'matrix'
        ? 'square: every printable character came whole'
        : 'line: the telling characters came whole',
  },
];
