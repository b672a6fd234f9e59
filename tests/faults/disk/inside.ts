/**
 * Runs in a mount namespace of its own, so that its small disk is nobody else's and goes with it: starts the server on that
 * disk and brings it into trouble. Prints what was seen as JSON, for `suite.ts`.
 *
 * unshare -m node --import tsx inside.ts TEMPLATE SCANS [SHIM]
 */
import { spawnSync } from 'node:child_process';
import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { SCREENS } from '@/lib/people/access';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { type FaultyHospital, openCopy, type SentScans, scansFound } from '../hospital';
import { newScan, SCANS, SIGN_IN, scanBody, signIn } from '../scanner';
import { type Said, type Trouble, troubleFaults } from './checker';

const [template = '', scans = '20', shim = ''] = process.argv.slice(2);
/** The demo, its log and a little more. */
const DISK = '96m';
const RESUMES_WITHIN_MS = 20_000;
/** Screens that need no thing named, and what is read elsewhere. */
const PAGES = Object.entries(SCREENS)
  .filter(([route, reach]) => !route.includes('[') && (reach === 'readHospital' || route === '/'))
  .map(([route]) => route);

const folder = mkdtempSync(join(tmpdir(), 'kitwright-small-disk-'));
const flag = join(tmpdir(), `kitwright-stubborn-${process.pid}`);
const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${DISK}`, 'small', folder], {
  encoding: 'utf8',
});
if (mounted.status !== 0) {
  console.log(JSON.stringify({ cannot: mounted.stderr.trim() }));
  process.exit(0);
}
const sent: SentScans = { acknowledged: new Set(), unknown: new Set() };
const troubles: Trouble[] = [];
const env: Record<string, string> = shim
  ? { LD_PRELOAD: shim, STUBBORN_FOLDER: folder, STUBBORN_FLAG: flag }
  : {};
const hospital = await openCopy({ template, name: 'disk', folder, env });
const cookie = await signIn(hospital.address, 'Wren Adeyemi', DEMO_PASSWORD);
const administrator = await signIn(hospital.address, 'Edda Winslow', DEMO_PASSWORD);
await scanSome(Number(scans));

const filler = join(folder, 'filler');
troubles.push(
  await trouble({
    name: 'full disk',
    status: 507,
    words: /disk (?:of the server )?is full/,
    begin: () => fillUp(filler),
    end: () => rmSync(filler),
  }),
);
if (shim)
  troubles.push(
    await trouble({
      name: 'read-only disk',
      status: 503,
      words: /may only be read/,
      begin: () => writeFileSync(flag, ''),
      end: () => rmSync(flag),
    }),
  );
await hospital.stop();
const { lost, stored, faults } = scansFound(hospital.database, sent);
rmSync(flag, { force: true });
const seen = troubles.map(
  ({ name, refused, reads, resumedAfterMs }) =>
    `${name}: ${refused.length} writes refused in words, ${reads.length} pages read meanwhile, first write ${resumedAfterMs === null ? 'never' : `${Math.round(resumedAfterMs)} ms`} after it ended, without a restart`,
);
console.log(
  JSON.stringify({
    tried: troubles.reduce((sum, { refused }) => sum + refused.length, 0),
    acknowledged: sent.acknowledged.size,
    lost,
    seen: [...seen, `${stored.length} scans stored`],
    faults: [...faults, ...troubles.flatMap(troubleFaults)],
  }),
);
spawnSync('umount', [folder]);
rmSync(folder, { recursive: true, force: true });
process.exit(0);

interface Doing {
  name: string;
  status: number;
  words: RegExp;
  begin(): void;
  end(): void;
}

async function trouble({ name, status, words, begin, end }: Doing): Promise<Trouble> {
  begin();
  // what the log has room for already may still be taken, and is then kept
  const refused: Said[] = [];
  for (let tries = 0; refused.length < Number(scans) && tries < 2000; tries += 1) {
    const said = await scanOnce();
    if (said) refused.push(said);
  }
  const body = JSON.stringify({ name: 'Jolene Stott', password: DEMO_PASSWORD });
  refused.push(await ask(hospital, 'POST', SIGN_IN, '', body));
  const reads: Said[] = [];
  for (const page of PAGES) reads.push(await ask(hospital, 'GET', page, cookie));
  // what health knows is five seconds old at most
  await sleep(5_100);
  const ready = await ask(hospital, 'GET', '/health/ready', '');
  const health = await ask(hospital, 'GET', '/health', administrator);
  end();
  const ended = performance.now();
  let resumedAfterMs: number | null = null;
  while (resumedAfterMs === null && performance.now() - ended < RESUMES_WITHIN_MS)
    if ((await scanOnce()) === null) resumedAfterMs = performance.now() - ended;
  await scanSome(Number(scans));
  return { name, status, words, refused, reads, ready, health, resumedAfterMs };
}

async function scanSome(count: number): Promise<void> {
  for (let at = 0; at < count; at += 1) await scanOnce();
}

/** Sends a scan; what was said where it was not acknowledged. One that was refused in words is known not to be there. */
async function scanOnce(): Promise<Said | null> {
  const scan = newScan('KW-UNKNOWN-1');
  const said = await ask(hospital, 'POST', SCANS, cookie, scanBody(scan));
  const isTaken = said.status === 200 && /"ok":true/.test(said.text);
  if (isTaken) sent.acknowledged.add(scan.id);
  else if (said.status === null || said.status === 500) sent.unknown.add(scan.id);
  return isTaken ? null : said;
}

async function ask(
  { address }: Pick<FaultyHospital, 'address'>,
  method: string,
  path: string,
  as: string,
  body?: string,
): Promise<Said> {
  const what = `${method} ${path}`;
  try {
    const answer = await fetch(address + path, {
      method,
      headers: { Cookie: as, ...(body !== undefined && { 'Content-Type': 'application/json' }) },
      body,
      redirect: 'manual',
      signal: AbortSignal.timeout(60_000),
    });
    return {
      what,
      status: answer.status,
      type: answer.headers.get('content-type') ?? '',
      text: await answer.text(),
    };
  } catch (error) {
    return { what, status: null, type: '', text: String(error) };
  }
}

/** Until not one more block fits. */
function fillUp(path: string): void {
  for (const size of [1 << 20, 4096]) {
    try {
      for (;;) appendFileSync(path, Buffer.alloc(size, 1));
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'ENOSPC')) throw error;
    }
  }
}
