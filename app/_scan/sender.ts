import { noteBuild } from '@/app/_ui/newest-build';
import type { IncomingScan } from '@/lib/scanning/incoming';
import { type ScanAnswer, scanAnswer } from '@/lib/scanning/meaning';
import { EMPTY_OUTBOX, nextBatch, type Outbox, type OutboxEvent, outboxAfter } from '@/lib/scanning/outbox';
import { dropScan, keepScan, keptScans } from './kept-scans';
import { notePending } from './strip-store';

let box: Outbox = EMPTY_OUTBOX;
/** Scans the browser would not keep: closing this window loses them, and it says so. */
const unkept = new Set<string>();
let timer: ReturnType<typeof setTimeout> | undefined;
let settle: {
  answered: (scan: IncomingScan, answer: ScanAnswer) => void;
  refused: (scan: IncomingScan, says: string) => void;
} | null = null;

/** A request that takes longer is given up and sent again: an answer that got lost costs no more than this. */
const PATIENCE_MS = 8000;

/** Begins to send what was kept from before, and tells what becomes of each scan. Answers how to stop. */
export function startSending(told: NonNullable<typeof settle>): () => void {
  settle = told;
  after({ kind: 'found', scans: keptScans() });
  const tryNow = () => after({ kind: 'tryNow' });
  window.addEventListener('online', tryNow);
  return () => {
    settle = null;
    clearTimeout(timer);
    window.removeEventListener('online', tryNow);
  };
}

/** Kept first, then sent. */
export function send(scan: IncomingScan): void {
  if (!keepScan(scan)) unkept.add(scan.id);
  after({ kind: 'heard', scan });
}

/** Somebody signed in: what waited for that goes now. */
export function sendNow(): void {
  after({ kind: 'tryNow' });
}

function after(event: OutboxEvent): void {
  box = outboxAfter(box, event);
  notePending({
    waiting: box.waiting.length,
    failing: box.failures > 1,
    signedOut: box.signedOut,
    unkept: unkept.size,
  });
  clearTimeout(timer);
  const batch = nextBatch(box, Date.now());
  if (batch.length > 0 && settle) void request(batch);
  else if (box.retryAt !== null && box.sending.length === 0)
    timer = setTimeout(() => after({ kind: 'tryNow' }), Math.max(0, box.retryAt - Date.now()));
}

type Settled =
  | { id: string; ok: true; answer: ScanAnswer }
  | { id: string; ok: false; because: string; says: string };

async function request(batch: readonly IncomingScan[]): Promise<void> {
  box = outboxAfter(box, { kind: 'sending', ids: batch.map(({ id }) => id) });
  let answers: Settled[];
  try {
    const response = await fetch('/api/v1/scans', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ scans: batch }),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    noteBuild(response);
    if (response.status === 401) {
      after({ kind: 'signedOut' });
      return;
    }
    if (!response.ok) throw new Error(String(response.status));
    answers = settledOf(await response.json());
  } catch {
    after({ kind: 'failed', at: Date.now(), chance: Math.random() });
    return;
  }
  const byId = new Map(answers.map((one) => [one.id, one]));
  const settled = batch.filter(({ id }) => byId.has(id));
  // an answer that names none of them says nothing of them
  if (settled.length === 0) {
    after({ kind: 'failed', at: Date.now(), chance: Math.random() });
    return;
  }
  for (const { id } of settled) {
    dropScan(id);
    unkept.delete(id);
  }
  for (const scan of settled) {
    const one = byId.get(scan.id);
    if (one?.ok) settle?.answered(scan, one.answer);
    else if (one) settle?.refused(scan, one.says);
  }
  after({ kind: 'settled', ids: settled.map(({ id }) => id) });
}

function settledOf(body: unknown): Settled[] {
  const { answers } = body as { answers: Settled[] };
  return answers.map((one) => (one.ok ? { ...one, answer: scanAnswer.parse(one.answer) } : one));
}
