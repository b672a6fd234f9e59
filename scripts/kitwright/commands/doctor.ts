import { existsSync, readFileSync } from 'node:fs';
import { backupsIn } from '@/db/backup/read';
import { bytesOf, freeSpace, isSameDisk, type QuickLook, quickLook } from '@/db/health';
import { migrationsOf } from '@/db/migrate';
import { newestProven } from '@/lib/backups/manifest';
import { readHeads } from '@/lib/ledger/heads';
import { backupSettings, configurationProblems } from '@/lib/running/configuration';
import {
  backupLight,
  clockLight,
  environmentLight,
  foundLight,
  headsLight,
  type Light,
  logLight,
  schemaLight,
  spaceLight,
  worst,
} from '@/lib/running/lights';
import { ledgerFaultSentence } from '@/lib/wording/ledger-verify';
import { runningWords as words } from '@/lib/wording/running';
import { nodeProblem } from '../../bootstrap/node-version.mjs';
import { readPort } from '../../bootstrap/port.mjs';
import { CannotDo, type Command } from '../command';
import { placesOf, shown } from '../places';

/** Looks at everything a running program rests on and explains each light that is not well. Changes nothing. */
export const doctor: Command = {
  usage: '',
  does: 'looks at everything the program rests on, and says in plain words what is not well and what to do',
  words: [0, 0],
  async run({ env, now }) {
    const lights = await look(env, now().toISOString());
    const state = worst(lights);
    return {
      exit: state === 'wrong' ? 1 : 0,
      lines: lights.flatMap(linesOf),
      json: { state, lights },
    };
  },
};

async function look(env: NodeJS.ProcessEnv, now: string): Promise<Light[]> {
  const problem = nodeProblem(process.versions.node);
  const first: Light[] = [
    problem === null
      ? { name: 'node', state: 'well', says: words.nodeRight(process.versions.node), remedy: null }
      : { name: 'node', state: 'wrong', says: problem, remedy: words.installNode },
    environmentLight(configurationProblems(env)),
  ];
  const server = await serverLight(env);
  try {
    const places = placesOf(env);
    return [
      ...first,
      spaceLight('space', freeSpace(places.database)),
      ...databaseLights(places, env, now),
      server,
    ];
  } catch (error) {
    // the environment's own light says why
    if (error instanceof CannotDo) return [...first, server];
    throw error;
  }
}

function databaseLights(
  { database, heads, backups }: ReturnType<typeof placesOf>,
  env: NodeJS.ProcessEnv,
  now: string,
): Light[] {
  const name = 'database';
  const path = shown(database);
  if (!existsSync(database))
    return [{ name, state: 'look', says: words.databaseNone(path), remedy: words.startMakesOne }];
  let schema: Light;
  let found: QuickLook;
  try {
    schema = schemaLight(migrationsOf(database));
    found = quickLook(database);
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return [
      { name, state: 'wrong', says: words.databaseUnreadable(path, said), remedy: words.putBackBackup },
    ];
  }
  const settings = backupSettings(env);
  const holds = found.isDemo ? words.holdsDemo : words.holdsHospital;
  return [
    { name, state: 'well', says: words.databaseThere(path, bytesOf(database), holds), remedy: null },
    schema,
    foundLight('pages', found.pages, words.pagesRight),
    foundLight('references', dangling(found.danglingRows), words.referencesRight),
    foundLight('ledger', found.wrongEntries > 0 ? [words.ledgerWrong] : [], words.ledgerRight(found.entries)),
    found.newest !== null && !existsSync(heads)
      ? { name: 'heads', state: 'look', says: words.headsMissing(shown(heads)), remedy: words.headsWritten }
      : headsLight(headProblem(heads, found), isSameDisk(database, heads)),
    logLight(bytesOf(`${database}-wal`)),
    backupLight(newestProven(backupsIn(backups)), { now, isDemo: found.isDemo, isOn: settings.at !== 'no' }),
    spaceLight('backupSpace', freeSpace(backups), bytesOf(database) * 2),
    clockLight(found.newest?.enteredAt ?? null, now),
  ];
}

const dangling = (count: number) => (count === 0 ? [] : [words.dangling(count)]);

/** Whether the newest head outside goes with the newest entry inside; the audit of all of them is for `verify`. */
function headProblem(place: string, { newest }: QuickLook): string | null {
  if (!existsSync(place) || newest === null) return null;
  const last = readHeads(readFileSync(place, 'utf8')).heads.at(-1);
  if (!last) return words.headsMissing(shown(place));
  const head = { ...last, ledger: last.ledger, at: last.at };
  if (last.seq > newest.seq) return ledgerFaultSentence({ kind: 'headBeyond', head, last: newest.seq });
  if (last.seq === newest.seq && last.hash !== newest.hash)
    return ledgerFaultSentence({ kind: 'headDiffers', head });
  return null;
}

async function serverLight(env: NodeJS.ProcessEnv): Promise<Light> {
  const name = 'server';
  const address = `http://localhost:${env.PORT?.trim() ? readPort(env.PORT) : 3000}`;
  try {
    const answer = await fetch(`${address}/health/ready`, { signal: AbortSignal.timeout(5000) });
    const said = (await answer.text()).slice(0, 300);
    return answer.ok
      ? { name, state: 'well', says: words.serverUp(address), remedy: null }
      : { name, state: 'wrong', says: words.serverUnwell(address, said), remedy: words.seeLog };
  } catch {
    return { name, state: 'well', says: `${words.serverDown(address)} ${words.startServer}`, remedy: null };
  }
}

const MARK = { well: '✓', look: '!', wrong: '✗', unknown: '?' } as const;

function linesOf({ name, state, says, remedy }: Light): string[] {
  const head = `${MARK[state]} ${words.name[name] ?? name} (${words.state[state]}): ${says}`;
  return remedy === null ? [head] : [head, `    ${remedy}`];
}
