import 'server-only';
import type { AsyncLocalStorage } from 'node:async_hooks';

/** What the process that serves the built application tells it, and takes from it (`scripts/server/main.mjs`). */
interface RunningServer {
  /** What is being answered: its number in the log, and who asked. */
  requests: AsyncLocalStorage<{ id: string; person: string | null }>;
  /** Which build is serving. */
  buildId: string;
  metrics(figures: {
    ledgerEntries: number;
    backupAgeSeconds: number | null;
  }): Promise<{ contentType: string; text: string }>;
}

const KEY = Symbol.for('kitwright.server');

/** The server this runs in; `null` while developing, where the framework's own serves. */
export const runningServer = (): RunningServer | null =>
  (globalThis as { [KEY]?: RunningServer })[KEY] ?? null;

/** Tells the log whose request this is: by id, never by name. */
export function noteWhoAsks(person: string): void {
  const about = runningServer()?.requests.getStore();
  if (about) about.person = person;
}
