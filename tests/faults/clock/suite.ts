import { randomUUID } from 'node:crypto';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import Sqlite from 'better-sqlite3';
import { DEMO_PASSWORD } from '@/lib/people/demo';
import { run } from '../../../scripts/bootstrap/command.mjs';
import { ROOT } from '../../../scripts/bootstrap/places.mjs';
import { type FaultyHospital, openCopy, type SentScans, scansFound } from '../hospital';
import { newScan, SCANS, scanBody, signIn } from '../scanner';
import type { Suite } from '../suite';
import { type ClockStep, clockFaults, orderFaults } from './checker';

const DELIVERIES = '/api/v1/deliveries';
const PAGES = ['/', '/work', '/sets', '/stock', '/theatre-list', '/loads', '/recalls'];
const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** The use-by of what is received, in days from now. */
const USE_BY_DAYS = 30;

/**
 * A clock that is set while the server runs: back, ahead, back again, and over both changes of the hour. Scans are taken and
 * dated by the clock of their moment, in the order of writing; use-by follows the clock; whoever signs in is in; and a clock
 * that is behind what was entered is said by monitor and doctor, also after it was only ahead for a while.
 */
export const clock: Suite = {
  unit: 'settings of the clock',
  size: 12,
  async run({ size, template, say }) {
    const file = join(ROOT, 'var', 'test', 'faults', `shift-${process.pid}`);
    const preload = pathToFileURL(join(ROOT, 'tests/faults/clock/shiftedClock.mjs')).href;
    const env = { SHIFTED_BY: file, NODE_OPTIONS: `--import ${preload}` };
    const set = (shift: number) => writeFileSync(file, String(shift));
    const hospital = await openCopy({ template, name: 'clock', env });
    const scans: SentScans = { acknowledged: new Set(), unknown: new Set() };
    const sent: { id: string; from: string; until: string }[] = [];
    const steps: ClockStep[] = [];
    try {
      let newest = 0;
      for (const { name, shift } of settings(Date.now()).slice(0, size)) {
        set(shift);
        // the clock is read anew every 20 ms, and what health knows is five seconds old at most
        await sleep(5_200);
        const now = Date.now() + shift;
        const isBehind = newest - now > 5 * MINUTE;
        steps.push(await lookAt(hospital, { name, shift, isBehind, env, scans, sent }));
        newest = Math.max(newest, Date.now() + shift);
        say(name);
      }
      await hospital.stop();
      const found = scansFound(hospital.database, scans);
      return {
        tried: steps.length,
        acknowledged: scans.acknowledged.size,
        lost: found.lost,
        seen: [
          `${steps.filter(({ isBehind }) => isBehind).length} with a clock behind what was entered, ${steps.filter(({ isPastUseBy }) => isPastUseBy).length} with one past the use-by of what came`,
        ],
        faults: [...clockFaults(steps), ...found.faults, ...orderFaults(entriesOf(hospital.database), sent)],
        notTried: [],
      };
    } finally {
      rmSync(file, { force: true });
      await hospital.close();
    }
  },
};

/** In this order, for what was entered while the clock was ahead stays entered. */
function settings(now: number): { name: string; shift: number }[] {
  const [first, second] = hourChanges(now);
  const to = (at: number) => at - now;
  return [
    { name: 'as it is', shift: 0 },
    { name: 'two minutes back', shift: -2 * MINUTE },
    { name: 'two hours back', shift: -2 * HOUR },
    { name: 'three days back', shift: -3 * DAY },
    { name: 'right again', shift: 0 },
    { name: 'a day ahead', shift: DAY },
    { name: 'right after it was ahead', shift: 0 },
    { name: 'sixty days ahead, past a use-by', shift: 60 * DAY },
    { name: 'a minute before an hour change', shift: to(first - MINUTE) },
    { name: 'a minute after it', shift: to(first + MINUTE) },
    { name: 'a minute before the other hour change', shift: to(second - MINUTE) },
    { name: 'a minute after the other', shift: to(second + MINUTE) },
  ];
}

/**
 * The next changes of the hour in Great Britain: at 01:00 UTC on the last Sundays of March and October (The Summer Time Order
 * 2002, SI 2002/262, from memory), sixty-five days away at least.
 */
function hourChanges(now: number): [number, number] {
  const all: number[] = [];
  for (let year = new Date(now).getUTCFullYear(); all.length < 2; year += 1)
    for (const month of [2, 9]) {
      const last = new Date(Date.UTC(year, month + 1, 0, 1));
      const at = last.getTime() - last.getUTCDay() * DAY;
      if (at - now > 65 * DAY && all.length < 2) all.push(at);
    }
  return all as [number, number];
}

interface Looking {
  name: string;
  shift: number;
  isBehind: boolean;
  env: Record<string, string>;
  scans: SentScans;
  sent: { id: string; from: string; until: string }[];
}

async function lookAt(hospital: FaultyHospital, looking: Looking): Promise<ClockStep> {
  const { name, shift, isBehind, env, scans, sent } = looking;
  const { address, database } = hospital;
  const doctor = await run(process.execPath, ['scripts/kitwright.mjs', 'doctor', '--db', database], {
    cwd: ROOT,
    env: { ...env, PORT: new URL(address).port },
  });
  const ready = (await (await fetch(`${address}/health/ready`)).json()) as { lights: Record<string, string> };
  const moment = () => new Date(Date.now() + shift).toISOString();
  const cookies = await Promise.all(
    ['Wren Adeyemi', 'Dilys Harrow'].map((person) => signIn(address, person, DEMO_PASSWORD).catch(() => '')),
  );
  const [technician = '', keeper = ''] = cookies;
  const post = (path: string, cookie: string, body: string) =>
    fetch(address + path, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Cookie: cookie },
      body,
    });
  const scan = { ...newScan('KW-UNKNOWN-1'), doneAt: moment() };
  const from = new Date(Date.parse(moment()) - 50).toISOString();
  const taken = await post(SCANS, technician, scanBody(scan));
  const isTaken = taken.ok && /"ok":true/.test(await taken.text());
  if (isTaken) {
    scans.acknowledged.add(scan.id);
    sent.push({ id: scan.id, from, until: new Date(Date.parse(moment()) + 50).toISOString() });
  } else scans.unknown.add(scan.id);
  const useBy = new Date(Date.now() + USE_BY_DAYS * DAY).toISOString().slice(0, 10);
  const receipt = await post(DELIVERIES, keeper, receiptBody(database, moment().slice(0, 10), useBy));
  const pages = [];
  for (const path of PAGES) {
    const answer = await fetch(address + path, { headers: { Cookie: technician }, redirect: 'manual' });
    await answer.arrayBuffer();
    pages.push({ path, status: answer.status });
  }
  return {
    name,
    isBehind,
    isPastUseBy: moment().slice(0, 10) > useBy,
    signIn: cookies.every((cookie) => cookie !== '') ? 200 : 401,
    scan: isTaken ? 200 : taken.status,
    receipt: { status: receipt.status, text: await receipt.text() },
    pages,
    ready: ready.lights.clock ?? 'none',
    doctor: { exit: doctor.code ?? 2, text: doctor.output },
  };
}

/** Three packs of a screw, in a lot of their own. */
function receiptBody(database: string, arrivedOn: string, useBy: string): string {
  const connection = new Sqlite(database, { readonly: true });
  const one = (sql: string) => connection.prepare(sql).pluck().get() as string;
  const itemId = one("SELECT id FROM items WHERE status = 'current' AND kind = 'screw' LIMIT 1");
  const placeId = one('SELECT place_id FROM stock LIMIT 1');
  connection.close();
  const id = randomUUID();
  const line = {
    id: `deliveryLine_${id}`,
    itemId,
    form: 'sterilePacked',
    lot: id,
    useBy,
    count: 3,
    unit: 'pieces',
  };
  const more = { placeId, owner: 'ours', held: null, useByReadAgain: false, scanId: null };
  const head = { id: `delivery_${id}`, supplier: 'Fernhollow', reference: id.slice(0, 8), arrivedOn };
  return JSON.stringify({ ...head, lines: [{ ...line, ...more }] });
}

function entriesOf(database: string): { id: string; enteredAt: string }[] {
  const connection = new Sqlite(database, { readonly: true });
  const rows = connection
    .prepare(
      "SELECT subject_id AS id, entered_at AS enteredAt FROM ledger WHERE action = 'record-scan' ORDER BY seq",
    )
    .all() as { id: string; enteredAt: string }[];
  connection.close();
  return rows;
}
