import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { runOnDatabase } from '../../scripts/bootstrap/prepare.mjs';
import { startServer } from '../../scripts/bootstrap/server.mjs';
import { type SentScans, scansFound } from './hospital';
import { random } from './random';
import { newScan, Refused, type Scan, sendScan, signIn } from './scanner';
import type { Suite } from './suite';

const HOST = '127.0.0.1';
const SCANNERS = 6;
/** Six scanners with one session, each as fast as it is answered, are no person. */
const AT_FULL_SPEED = { KITWRIGHT_RATE: '100' };
/**
 * The server is killed at a moment drawn from this span: after the first acknowledgement of its life, so that every life
 * has something to lose, and in one of five straight after it began to answer.
 */
const KILL_WITHIN_MS = 400;
const EARLY = 0.2;
/** A server that acknowledges nothing in this time is killed all the same. */
const NO_ANSWER_MS = 15_000;

export interface KillOutcome {
  kills: number;
  acknowledged: number;
  /** Sent and never answered. */
  unknown: number;
  stored: number;
  /** Acknowledged, and not there. */
  lost: number;
  /** Of the unanswered ones, those that were stored all the same: the kill came between commit and reply. */
  storedUnanswered: number;
  faults: string[];
}

/**
 * Kills the built server `kills` times with SIGKILL while scanners send scans to it over HTTP, and holds what it has at the
 * end against what the scanners were told. A scanner sends what was not acknowledged again, as the program's own does, every
 * second time; the others are left unanswered for good.
 */
export async function killServer({
  kills,
  seed,
  template,
  say,
}: {
  kills: number;
  seed: number;
  /** A demo that is copied; without it one is made. */
  template?: string;
  say?: (line: string) => void;
}): Promise<KillOutcome> {
  const draw = random(seed);
  const folder = join(VAR, 'test', 'faults');
  mkdirSync(folder, { recursive: true });
  const port = await requireFreePort(0, HOST);
  const database = join(folder, `kill-${port}.sqlite`);
  if (template) copyFileSync(template, database);
  else await runOnDatabase('prepare-database.ts', { database });
  const start = () => startServer({ port, host: HOST, database, env: AT_FULL_SPEED });
  const acknowledged = new Set<string>();
  const unknown = new Set<string>();
  const unanswered: (Scan | null)[] = Array.from({ length: SCANNERS }, () => null);
  const refusals: string[] = [];
  try {
    let server = await start();
    const cookie = await signIn(server.address, 'Wren Adeyemi', DEMO_PASSWORD);
    for (let round = 1; round <= kills; round += 1) {
      let over = false;
      let heard = () => {};
      const first = new Promise<void>((resolve) => {
        heard = resolve;
      });
      const scanners = unanswered.map(async (before, at) => {
        let next = before !== null && draw() < 0.5 ? before : null;
        unanswered[at] = null;
        while (!over) {
          const scan = next ?? newScan(TEXTS[Math.floor(draw() * TEXTS.length)] ?? 'X');
          next = null;
          unknown.add(scan.id);
          try {
            await sendScan(server.address, cookie, scan);
            unknown.delete(scan.id);
            acknowledged.add(scan.id);
            heard();
          } catch (error) {
            if (error instanceof Refused) refusals.push(error.message);
            unanswered[at] = scan;
            return;
          }
        }
      });
      if (draw() >= EARLY) await Promise.race([first, sleep(NO_ANSWER_MS)]);
      await sleep(draw() * KILL_WITHIN_MS);
      process.kill(server.pid as number, 'SIGKILL');
      await server.ended;
      over = true;
      await Promise.all(scanners);
      if (say && round % 10 === 0) say(`${round} kills, ${acknowledged.size} scans acknowledged`);
      server = await start();
    }
    await server.stop();
    return { ...judged(database, { acknowledged, unknown }, refusals), kills };
  } finally {
    for (const end of ['', '-wal', '-shm', '-heads.jsonl']) rmSync(database + end, { force: true });
  }
}

/** Codes of several kinds: unknown, a GTIN with lot, a long one. */
const TEXTS = ['KW-UNKNOWN-1', '(01)09521234567891(10)LOT-7', `X${'9'.repeat(200)}`];

/** What is wrong with what a server left, held against what its scanners were told. */
export function judged(
  database: string,
  { acknowledged, unknown }: SentScans,
  refusals: string[],
): Omit<KillOutcome, 'kills'> {
  const { stored, lost, faults } = scansFound(database, { acknowledged, unknown });
  const there = new Set(stored);
  return {
    acknowledged: acknowledged.size,
    unknown: unknown.size,
    stored: stored.length,
    lost,
    storedUnanswered: [...unknown].filter((id) => there.has(id)).length,
    faults: [
      ...faults,
      ...(refusals.length === 0 ? [] : [`${refusals.length} scans were refused: ${refusals[0]}`]),
    ],
  };
}

export const kills: Suite = {
  unit: 'kills',
  size: 1000,
  async run({ size, seed, template, say }) {
    const { unknown, stored, storedUnanswered, ...found } = await killServer({
      kills: size,
      seed,
      template,
      say,
    });
    return {
      tried: found.kills,
      acknowledged: found.acknowledged,
      lost: found.lost,
      seen: [
        `${found.acknowledged} scans acknowledged, ${unknown} never answered (${storedUnanswered} of them stored), ${stored} stored`,
      ],
      faults: found.faults,
      notTried: [],
    };
  },
};
