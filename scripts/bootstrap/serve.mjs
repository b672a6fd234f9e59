import { relative } from 'node:path';
import { isStopping, stopCommandsOnSignal } from './command.mjs';
import { backUpByNight } from './nightly.mjs';
import { databasePath, ROOT } from './places.mjs';
import { asPlainProblem, tell } from './plain-problem.mjs';
import { readPort, requireFreePort } from './port.mjs';
import { prepareDatabase, prepareProgram } from './prepare.mjs';
import { startServer } from './server.mjs';

/** Without a wish, only this machine is served: nobody else on the network can open it by accident. */
const HERE_ONLY = '127.0.0.1';

/** The orderly end after SIGTERM must be over well within five seconds. */
const STOP_WITHIN_MS = 4000;

/**
 * Prepares what changed, serves until a signal comes, and sets the exit code.
 * @param {{ dev: boolean }} how
 */
export async function serve({ dev }) {
  stopCommandsOnSignal();
  const say = (/** @type {string} */ line) => console.log(line);
  const database = databasePath(process.env);
  const host = process.env.HOST || HERE_ONLY;
  let port;
  try {
    port = await requireFreePort(readPort(process.env.PORT), host);
    await prepareProgram({ build: !dev, say });
    const { holds, code } = await prepareDatabase(database);
    const inside = relative(ROOT, database);
    say(`Database: ${inside.startsWith('..') ? database : inside} (${holds})`);
    const server = await startServer({ port, host, database, dev, show: true });
    process.removeAllListeners('SIGTERM').removeAllListeners('SIGINT').removeAllListeners('SIGHUP');
    const endNights = backUpByNight({
      at: process.env.KITWRIGHT_BACKUP_AT?.trim() || '02:30',
      database,
      isDemo: holds.startsWith('demo hospital'),
      say,
    });
    let asked = false;
    for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) {
      process.on(signal, () => {
        asked = true;
        endNights();
        server.stop(STOP_WITHIN_MS);
      });
    }
    const others = host === HERE_ONLY ? '; HOST=0.0.0.0 npm start lets other machines in' : '';
    say(`Kitwright is at http://localhost:${port} (Ctrl+C stops it${others})`);
    if (code) {
      say(`Nobody is its administrator yet. To become the first, within the hour:`);
      say(`  http://localhost:${port}/first-run   code ${code}`);
    }
    const ended = await server.ended;
    if (asked) process.exit(0);
    console.error(`The server ended by itself (code ${ended}): what it said last is shown above.`);
    process.exit(1);
  } catch (error) {
    if (isStopping()) return;
    tell(asPlainProblem(error, { folder: ROOT, database, port, doing: 'serving' }));
    process.exit(1);
  }
}
