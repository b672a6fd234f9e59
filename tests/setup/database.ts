import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { inject, onTestFinished } from 'vitest';
import { type Database, openDatabase } from '@/db/client';
import { loadDemo } from '@/seed/load';

/** The moment the demo is loaded in tests: a Wednesday morning, in winter time. */
export const DEMO_NOW = new Date('2026-01-14T06:30:00Z');

let copies = 0;

/** A file of this test's own with the present schema and no rows. Deleted when the test ends. */
export function emptyDatabaseFile(): string {
  return copyOf(inject('emptyTemplate'));
}

/** An open database of this test's own, with the present schema and no rows; closed when the test ends. */
export function emptyDatabase(): Database {
  return opened(emptyDatabaseFile());
}

/** A file of this test's own that holds the demo hospital as of DEMO_NOW. Deleted when the test ends. */
export async function demoDatabaseFile(): Promise<string> {
  return copyOf(await demoTemplate('demoTemplate'));
}

/** As `demoDatabase`, with two years of cases, turns and usage behind it: larger, and slower to copy. */
export async function historyDatabase(): Promise<Database> {
  return opened(await historyDatabaseFile());
}

/** The same as a file. Deleted when the test ends. */
export async function historyDatabaseFile(): Promise<string> {
  return copyOf(await demoTemplate('historyTemplate'));
}

/** An open database of this test's own that holds the demo hospital as of DEMO_NOW; closed when the test ends. */
export async function demoDatabase(): Promise<Database> {
  return opened(await demoDatabaseFile());
}

function copyOf(template: string): string {
  copies += 1;
  const path = join(inject('databaseFolder'), `${process.pid}-${copies}.sqlite`);
  copyFileSync(template, path);
  onTestFinished(() => {
    for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
  });
  return path;
}

/** Hooks run last first, so the database is closed before its file is deleted. */
function opened(path: string): Database {
  const db = openDatabase(path);
  onTestFinished(() => db.close());
  return db;
}

/** Made by the first test that asks, in whichever worker; the others wait for it. */
async function demoTemplate(which: 'demoTemplate' | 'historyTemplate'): Promise<string> {
  const template = inject(which);
  if (existsSync(template)) return template;
  const making = `${template}.making`;
  try {
    mkdirSync(making);
  } catch {
    for (let waited = 0; waited < 60_000 && !existsSync(template); waited += 50) await sleep(50);
    if (!existsSync(template)) throw new Error('The worker that loads the demo did not finish.');
    return template;
  }
  const unfinished = join(making, 'unfinished.sqlite');
  copyFileSync(inject('emptyTemplate'), unfinished);
  const db = openDatabase(unfinished);
  await loadDemo({ db, now: DEMO_NOW, history: which === 'historyTemplate' });
  db.close();
  renameSync(unfinished, template);
  return template;
}
