import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { VAR } from '../../scripts/bootstrap/places.mjs';
import { requireFreePort } from '../../scripts/bootstrap/port.mjs';
import { startServer } from '../../scripts/bootstrap/server.mjs';
import { judged } from './killServer';
import { newScan, type Scan, signIn } from './scanner';

const HOST = '127.0.0.1';
const SCANNERS = 8;
const IDLE_CLIENTS = 12;

export interface StopOutcome {
  /** From the signal to the end of the process. */
  ms: number;
  code: number | null;
  acknowledged: number;
  /** Refused in words while it stopped. */
  refused: number;
  /** Sent, and neither acknowledged nor refused: the connection was closed or none was made. */
  unanswered: number;
  /** Answers that were neither an acknowledgement nor a refusal with its reason. */
  strange: string[];
  faults: string[];
}

/**
 * Asks the built server to stop while scanners send over connections they keep, others keep theirs open and idle, and one has
 * sent half a request; tells how long the end took, and whether all it acknowledged is there.
 */
export async function stopServer(template: string, signal: NodeJS.Signals): Promise<StopOutcome> {
  const folder = join(VAR, 'test', 'faults');
  mkdirSync(folder, { recursive: true });
  const port = await requireFreePort(0, HOST);
  const database = join(folder, `stop-${port}.sqlite`);
  copyFileSync(template, database);
  const server = await startServer({
    port,
    host: HOST,
    database,
    env: { KITWRIGHT_RATE: '100', KITWRIGHT_LOG: `${database}.log` },
  });
  const acknowledged = new Set<string>();
  const unknown = new Set<string>();
  const strange: string[] = [];
  let refused = 0;
  const agents: Agent[] = [];
  try {
    const cookie = await signIn(server.address, 'Wren Adeyemi', DEMO_PASSWORD);
    const idle = Array.from({ length: IDLE_CLIENTS }, () => new Agent({ keepAlive: true, maxSockets: 1 }));
    agents.push(...idle);
    await Promise.all(idle.map((agent) => send(port, agent, { path: '/health/live', method: 'GET' })));
    let over = false;
    const scanners = Array.from({ length: SCANNERS }, async () => {
      const agent = new Agent({ keepAlive: true, maxSockets: 1 });
      agents.push(agent);
      while (!over) {
        const scan = newScan('KW-UNKNOWN-1');
        unknown.add(scan.id);
        const said = await send(port, agent, {
          path: '/api/v1/scans',
          method: 'POST',
          cookie,
          body: bodyOf(scan),
        }).catch(() => null);
        if (said === null) return;
        if (said.status === 200 && said.body.includes(scan.id)) {
          acknowledged.add(scan.id);
          unknown.delete(scan.id);
        } else if (
          said.status === 503 &&
          /nothing was changed/.test(said.body) &&
          said.retryAfter !== undefined
        ) {
          refused += 1;
          unknown.delete(scan.id);
        } else strange.push(`${said.status} ${said.body.slice(0, 200)}`);
      }
    });
    // half a request: its client never sends the rest
    const half = new Agent({ keepAlive: true });
    agents.push(half);
    const begun = request({
      port,
      host: HOST,
      path: '/api/v1/scans',
      method: 'POST',
      agent: half,
      headers: { 'Content-Length': '500', 'Content-Type': 'application/json', Cookie: cookie },
    });
    begun.on('error', () => {});
    begun.write('{"scans":');
    await sleep(1500);
    const began = performance.now();
    process.kill(server.pid as number, signal);
    const code = await server.ended;
    const ms = performance.now() - began;
    over = true;
    await Promise.all(scanners);
    const { faults, stored } = judged(database, { acknowledged, unknown }, []);
    if (stored < acknowledged.size) faults.push(`${acknowledged.size} acknowledged, ${stored} stored`);
    return { ms, code, acknowledged: acknowledged.size, refused, unanswered: unknown.size, strange, faults };
  } finally {
    for (const agent of agents) agent.destroy();
    await server.stop(0);
    for (const end of ['', '-wal', '-shm', '-heads.jsonl', '.log']) rmSync(database + end, { force: true });
  }
}

const bodyOf = (scan: Scan) =>
  JSON.stringify({
    scans: [{ ...scan, how: 'scanner', separators: 'sent', context: { kind: 'none' }, session: null }],
  });

interface Sent {
  path: string;
  method: string;
  cookie?: string;
  body?: string;
}

function send(port: number, agent: Agent, { path, method, cookie, body }: Sent) {
  const headers: Record<string, string> = {
    ...(cookie ? { Cookie: cookie } : {}),
    ...(body
      ? { 'Content-Type': 'application/json', 'Content-Length': String(Buffer.byteLength(body)) }
      : {}),
  };
  return new Promise<{ status: number; body: string; retryAfter: string | undefined }>((resolve, reject) => {
    const asking = request({ port, host: HOST, path, method, headers, agent }, async (answer) => {
      try {
        let text = '';
        for await (const part of answer) text += part;
        resolve({ status: answer.statusCode ?? 0, body: text, retryAfter: answer.headers['retry-after'] });
      } catch (error) {
        reject(error);
      }
    });
    asking.on('error', reject);
    asking.end(body);
  });
}
