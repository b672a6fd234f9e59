import { identifier } from '@/lib/calculations/identifier/identifier';
import type { IdentifierOutput } from '@/lib/calculations/identifier/schema';
import { type ScanId, scanId } from '@/lib/identity/ids';
import { badgeCode } from '@/lib/people/badge';
import type { IncomingScan } from '@/lib/scanning/incoming';
import type { ScanAnswer, ScanContext, ScanHow } from '@/lib/scanning/meaning';
import { namesPerson } from '@/lib/scanning/personCode';
import { actingNow } from '../_ui/acting-store';
import { type Registered, topBadgeHandler, topHandler } from './handlers';
import { noteItem } from './known-items';
import { scannerHere } from './scanner-setting';
import { send } from './sender';
import { sound } from './sound';
import { noteAnswer, noteBadge, noteHeard, notePatient, noteRefusal, noteReplied } from './strip-store';
import type { HeardScan, MadeOfScan, ScanEvent } from './use-scans';

/** A scan that waits for its answer, and the screen it was made for. */
interface Awaited {
  heard: HeardScan;
  screen: Registered | null;
  context: ScanContext;
  /** Where the page stood: a scan that comes back later leads nowhere else. */
  path: string;
}

const awaited = new Map<string, Awaited>();

let goTo: (scan: ScanEvent) => void = () => {};

/** How the shell goes to what a scan names, where no screen takes it. */
export function setNavigation(navigate: (scan: ScanEvent) => void): void {
  goTo = navigate;
}

/** Reads a text here and now; the service reads it again. */
export function readHere(text: string, separators: 'mayBeLost' | 'sent'): IdentifierOutput {
  const answer = identifier({ text, separators, currentYear: new Date().getFullYear() });
  const output = answer.outcome === 'answered' ? answer.answer : answer.known;
  if (!output) throw new Error('a code is always read as something');
  return output as IdentifierOutput;
}

/**
 * Everything that is scanned comes through here, whichever way: badges go to sign in; anything else is kept, shown and
 * heard at once, and sent until it is stored.
 *
 * @param heardAt when its last key went down, by the page's own clock
 */
export function hearScan(text: string, how: ScanHow, heardAt: number): void {
  const separators = how === 'scanner' ? scannerHere().separators : how === 'camera' ? 'sent' : 'mayBeLost';
  const reading = readHere(text, separators);
  const person = namesPerson(text, reading);
  if (person === 'badge') {
    hearBadge(text);
    return;
  }
  if (person === 'patient') {
    sound('refused');
    notePatient();
    return;
  }
  sound('heard');
  const id = newScanId();
  const screen = topHandler();
  const heard: HeardScan = { id, at: new Date().toISOString(), text, how, reading };
  const context = screen?.context ?? { kind: 'none' };
  const acting = actingNow();
  const scan: IncomingScan = {
    id,
    text,
    how,
    doneAt: heard.at,
    context,
    separators,
    session: acting && { id: acting.sessionId, ticket: acting.ticket },
  };
  awaited.set(id, { heard, screen, context, path: location.pathname });
  send(scan);
  noteHeard(heard, heardAt);
  screen?.heard(heard);
}

function hearBadge(text: string): void {
  const code = badgeCode(text);
  const taker = topBadgeHandler();
  sound(code && taker ? 'heard' : 'refused');
  noteBadge(code === null ? 'broken' : taker ? 'taken' : 'nobody');
  if (code !== null) taker?.(code);
}

/** The service has stored a scan: it sounds and looks as what it came to, and goes to the screen it was made for. */
export function answered(scan: IncomingScan, answer: ScanAnswer): void {
  const waited = awaited.get(scan.id);
  awaited.delete(scan.id);
  noteItem(answer.meaning);
  const event: ScanEvent = {
    id: answer.id,
    at: answer.doneAt,
    text: scan.text,
    how: scan.how,
    reading: waited?.heard.reading ?? readHere(scan.text, scan.separators),
    meaning: answer.meaning,
    verdict: answer.verdict,
    sentence: answer.sentence,
    before: answer.before,
    another: false,
  };
  const delivered = deliver(event, scan, waited ?? null);
  if (typeof delivered === 'string') {
    sound(answer.verdict);
    noteAnswer(event, answer, delivered);
  } else {
    const { verdict, says: sentence } = delivered;
    sound(verdict);
    noteAnswer(event, { ...answer, verdict, sentence }, 'delivered');
  }
}

export function refusedForGood(scan: IncomingScan, says: string): void {
  awaited.delete(scan.id);
  sound('refused');
  noteRefusal(scan, says);
}

type Delivered = 'delivered' | 'left' | 'shown';

/** To the screen it was made for, if that is still there; `left`: it is not, so nothing but the record was made of it. */
function deliver(event: ScanEvent, scan: IncomingScan, waited: Awaited | null): Delivered | MadeOfScan {
  const screen = topHandler();
  const same =
    screen !== null &&
    (waited
      ? waited.screen === screen
      : scan.context.kind !== 'none' && JSON.stringify(screen.context) === JSON.stringify(scan.context));
  if (screen && same) {
    if (screen.takes === 'understood' && event.verdict !== 'understood') return 'shown';
    const made = screen.handle(event);
    if (made !== 'passed') return made === 'taken' ? 'delivered' : made;
  } else if (scan.context.kind !== 'none' || screen || waited?.screen) {
    return 'left';
  }
  if (event.verdict !== 'understood' && event.verdict !== 'already') return 'shown';
  if (waited && waited.path === location.pathname) goTo(event);
  return 'shown';
}

/** The person’s word on a scan that was asked about: only another one goes to the screen. */
export async function reply(event: ScanEvent, said: 'another' | 'same'): Promise<string | null> {
  const acting = actingNow();
  try {
    const answer = await fetch(`/api/v1/scans/${event.id}/reply`, {
      method: 'POST',
      headers: {
        'Content-Type': 'application/json',
        ...(acting ? { 'X-Session-Ticket': `${acting.sessionId}:${acting.ticket}` } : {}),
      },
      body: JSON.stringify({ reply: said }),
    });
    if (!answer.ok) return ((await answer.json()) as { detail?: string }).detail ?? 'It was not taken.';
  } catch {
    return 'The service can’t be reached: answer again in a moment.';
  }
  noteReplied(event.id, said);
  if (said === 'another') topHandler()?.handle({ ...event, another: true });
  return null;
}

/** `crypto.randomUUID` is only there on secure pages; random values always are. */
function newScanId(): ScanId {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return scanId.parse(`scan_${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`);
}
