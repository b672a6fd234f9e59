import { type ScannerSetting, scannerSetting, UNTRIED_SCANNER } from '@/lib/scanning/scanner';

const SCANNER = 'kitwright.scanner';
const MUTED = 'kitwright.scan-sound';

let present: ScannerSetting | null = null;

/** What is known of the scanner at this browser. */
export function scannerHere(): ScannerSetting {
  present ??= readSetting();
  return present;
}

export function keepScanner(setting: ScannerSetting): void {
  present = setting;
  try {
    localStorage.setItem(SCANNER, JSON.stringify(setting));
  } catch {
    // it then holds until the page is loaded again
  }
}

function readSetting(): ScannerSetting {
  try {
    const parsed = scannerSetting.safeParse(JSON.parse(localStorage.getItem(SCANNER) ?? '{}'));
    return parsed.success ? parsed.data : UNTRIED_SCANNER;
  } catch {
    return UNTRIED_SCANNER;
  }
}

export function soundIsOff(): boolean {
  try {
    return localStorage.getItem(MUTED) === 'off';
  } catch {
    return false;
  }
}

export function keepSound(off: boolean): void {
  try {
    if (off) localStorage.setItem(MUTED, 'off');
    else localStorage.removeItem(MUTED);
  } catch {
    // it then holds until the page is loaded again
  }
}
