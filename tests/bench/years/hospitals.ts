import { constants, copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { migrate } from '@/db/migrate';
import { writeToday } from '../pages/today';
import { makeHospital } from './makeHospital';
import { TEN_YEARS } from './size';

const FOLDER = join('var', 'bench');
const nameOf = (years: number, today: string) => `${years}-years-${today.slice(0, 10)}.sqlite`;

/** Made once and kept: `var/bench` may be deleted at any time. The present is that of the day it was made. */
export async function hospitalOf(years: number): Promise<string> {
  const today = new Date().toISOString();
  const path = join(FOLDER, nameOf(years, today));
  if (existsSync(path)) {
    // made by an older program of the same day
    migrate(path);
    return path;
  }
  mkdirSync(FOLDER, { recursive: true });
  const record = join(FOLDER, `${years}-years.sqlite`);
  if (!existsSync(record)) makeHospital(record, { ...TEN_YEARS, years }, (line) => console.error(line));
  const making = `${path}.making`;
  for (const end of ['', '-wal', '-shm']) rmSync(making + end, { force: true });
  copyFileSync(record, making, constants.COPYFILE_FICLONE);
  migrate(making);
  await writeToday(making, today);
  renameSync(making, path);
  return path;
}

/** The years of the hospitals of today that are there already, the fewest first; `YEARS=1,10` names some. */
export function yearsThere(): number[] {
  if (process.env.YEARS) return process.env.YEARS.split(',').map(Number);
  if (!existsSync(FOLDER)) return [];
  const today = new Date().toISOString();
  return readdirSync(FOLDER)
    .flatMap((file) => {
      const years = Number.parseInt(file, 10);
      return file === nameOf(years, today) ? [years] : [];
    })
    .sort((a, b) => a - b);
}
