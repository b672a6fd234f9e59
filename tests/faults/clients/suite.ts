import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { type FaultyHospital, openCopy, type SentScans, scansFound } from '../hospital';
import { newScan, sendScan, signIn } from '../scanner';
import { CannotTry, type Found, type Suite } from '../suite';
import { type BesideSlow, clientFaults, median, mega } from './checker';
import { BURDENS, type Burden, slowClient } from './slowClients';

/** Ordinary requests that are timed, each time. */
const REQUESTS = 60;
/** A median may be so many times the undisturbed one: the slow clients cost their connections, and nothing of the loop. */
const MOST_TIMES = 3;
const ROUNDS = 3;
/**
 * Limits the server sets (`scripts/server/main.mjs`): a head within 20 s, a whole request within 120 s, both looked at every
 * 30 s (nodejs.org, http: server.headersTimeout, server.requestTimeout, connectionsCheckingInterval); 120 s in which
 * nothing moves (server.timeout), which Node notices the second time it looks. Some seconds more for a machine that has much to do.
 */
const LIMITS: readonly { burden: Burden; what: string; within: number }[] = [
  { burden: 'halfHead', what: 'a head without an end', within: 20 + 30 + 10 },
  { burden: 'silent', what: 'a connection that says nothing', within: 20 + 30 + 10 },
  { burden: 'slowBody', what: 'a body a byte a second', within: 120 + 30 + 10 },
  { burden: 'noReader', what: 'answers that nobody reads', within: 120 * 2 + 10 },
];

/**
 * Slow and dead clients: some send a body a byte a second, some never end a head, some connect and say nothing, some ask for
 * large pages and read nothing. Others are served meanwhile nearly as fast as undisturbed, connections and memory come back
 * when they go, and the server's own limits end those that do not go.
 */
export const clients: Suite = {
  unit: 'slow clients',
  size: 200,
  run: ({ size, template, say }) => burdenServer({ clients: size, limits: LIMITS, template, say }),
};

interface Burdened {
  clients: number;
  /** Limits that are waited for: minutes. */
  limits: typeof LIMITS;
  template: string;
  say(line: string): void;
}

export async function burdenServer({ clients: count, limits, template, say }: Burdened): Promise<Found> {
  const hospital = await openCopy({ template, name: 'clients' });
  const scans: SentScans = { acknowledged: new Set(), unknown: new Set() };
  try {
    if (connectionsOf(hospital.pid) === null)
      throw new CannotTry('the system does not list a process’s open files');
    const cookie = await signIn(hospital.address, 'Wren Adeyemi', DEMO_PASSWORD);
    const failed: string[] = [];
    await timed(hospital, cookie, scans, failed);
    const undisturbedMs = await timed(hospital, cookie, scans, failed);
    const before = connectionsOf(hospital.pid) ?? 0;
    const memory: number[] = [];
    const besideMs: number[] = [];
    let during = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      const slow = Array.from({ length: count }, (_, at) =>
        slowClient(hospital.address, BURDENS[at % BURDENS.length] as Burden, cookie),
      );
      // what those who do not read asked for is drawn first
      await quiet(hospital);
      besideMs.push(...(await timed(hospital, cookie, scans, failed)));
      during = Math.max(during, connectionsOf(hospital.pid) ?? 0);
      for (const one of slow) one.end();
      await sleep(2000);
      memory.push(memoryOf(hospital.pid));
      say(`round ${round + 1}: ${mega(memory.at(-1) ?? 0)}`);
    }
    const after = connectionsOf(hospital.pid) ?? 0;
    const ended = await Promise.all(limits.map((limit) => secondsUntilClosed(hospital, cookie, limit)));
    await hospital.stop();
    const seen: BesideSlow = {
      undisturbedMs,
      besideMs,
      failed,
      mostTimes: MOST_TIMES,
      connections: { before, during, after },
      clients: count,
      memory,
      limits: ended,
    };
    const found = scansFound(hospital.database, scans);
    return {
      tried: count * ROUNDS,
      acknowledged: scans.acknowledged.size,
      lost: found.lost,
      seen: [
        `others waited ${median(besideMs).toFixed(0)} ms in the middle beside ${during - before} of them, undisturbed ${median(undisturbedMs).toFixed(0)} ms (${(median(besideMs) / median(undisturbedMs)).toFixed(1)} times)`,
        `memory after each round ${memory.map(mega).join(', ')}; connections ${before} before, ${during} beside, ${after} after`,
        ...ended.map(
          ({ what, seconds }) =>
            `${what}: ${seconds === null ? 'not closed' : `closed after ${seconds.toFixed(0)} s`}`,
        ),
      ],
      faults: [...clientFaults(seen), ...found.faults],
      notTried: [],
    };
  } finally {
    await hospital.close();
  }
}

/** Scans and reads as people make them, one after the other; milliseconds of each that was answered well. */
async function timed(
  { address }: FaultyHospital,
  cookie: string,
  scans: SentScans,
  failed: string[],
): Promise<number[]> {
  const took: number[] = [];
  for (let number = 0; number < REQUESTS; number += 1) {
    const began = performance.now();
    const scan = newScan('KW-UNKNOWN-1');
    scans.unknown.add(scan.id);
    try {
      await sendScan(address, cookie, scan, AbortSignal.timeout(30_000));
      scans.unknown.delete(scan.id);
      scans.acknowledged.add(scan.id);
      const answer = await fetch(`${address}/health/live`, { signal: AbortSignal.timeout(30_000) });
      await answer.arrayBuffer();
      took.push(performance.now() - began);
    } catch (error) {
      failed.push(String(error));
    }
  }
  return took;
}

/** Until the server answers at once again, or a minute has passed. */
async function quiet({ address }: FaultyHospital): Promise<void> {
  for (let waited = 0; waited < 60; waited += 1) {
    const began = performance.now();
    await (await fetch(`${address}/health/live`)).arrayBuffer();
    if (performance.now() - began < 50) return;
    await sleep(1000);
  }
}

async function secondsUntilClosed(
  { address, pid }: FaultyHospital,
  cookie: string,
  { burden: how, what, within }: (typeof LIMITS)[number],
) {
  const began = performance.now();
  const one = slowClient(address, how, cookie);
  const closed = how === 'noReader' ? endOfUnread(pid, one.port) : one.closed;
  const first = await Promise.race([closed, sleep((within + 5) * 1000).then(() => null)]);
  one.end();
  return { what, within, seconds: first === null ? null : (first - began) / 1000 };
}

/** Whoever reads nothing is not told that the other side is gone: the system's table of connections is asked. */
async function endOfUnread(pid: number, port: () => number): Promise<number> {
  await sleep(5000);
  while (isConnected(pid, port())) await sleep(1000);
  return performance.now();
}

/** Whether a process has the other end of a local port open. */
function isConnected(pid: number, port: number): boolean {
  const remote = `:${port.toString(16).toUpperCase().padStart(4, '0')}`;
  return ['tcp', 'tcp6'].some((table) =>
    readFileSync(`/proc/${pid}/net/${table}`, 'utf8')
      .split('\n')
      .some((line) => {
        const [, , to, state] = line.trim().split(/\s+/);
        return to?.endsWith(remote) === true && state === '01';
      }),
  );
}

/** Open files of a process, its connections among them; `null` where the system does not say. */
function connectionsOf(pid: number): number | null {
  try {
    return readdirSync(`/proc/${pid}/fd`).length;
  } catch {
    return null;
  }
}

function memoryOf(pid: number): number {
  const kilobytes = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Number(kilobytes ?? 0) * 1024;
}
