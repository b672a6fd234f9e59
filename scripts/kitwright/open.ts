import { existsSync } from 'node:fs';
import { type Database, openDatabase } from '@/db/client';
import { migrationsOf } from '@/db/migrate';
import { schemaLight } from '@/lib/running/lights';
import { CannotDo } from './command';
import { shown } from './places';

/**
 * The database a command reads or writes by the program's own queries and operations, which know one schema alone. Throws
 * `CannotDo` where there is none, or one of an older or newer program.
 */
export function openAtHand(database: string): Database {
  if (!existsSync(database)) throw new CannotDo(`There is no database at ${shown(database)}.`);
  const { state, says, remedy } = schemaLight(migrationsOf(database));
  if (state !== 'well') throw new CannotDo(remedy === null ? says : `${says}\n${remedy}`);
  return openDatabase(database);
}
