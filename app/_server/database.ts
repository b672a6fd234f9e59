import 'server-only';
import { type Database, openDatabase } from '@/db/client';

const kept = globalThis as typeof globalThis & { kitwrightDatabase?: Database };

/** The one open database of this process. Opened on first use; the file is made and migrated before the server starts. */
export function database(): Database {
  kept.kitwrightDatabase ??= openDatabase(process.env.KITWRIGHT_DB ?? 'var/kitwright.sqlite');
  return kept.kitwrightDatabase;
}
