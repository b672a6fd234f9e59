import { relative } from 'node:path';
import { requireBuilt } from './build.mjs';
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
 * @param {{ dev: boolean, built?: boolean }} how `built`: serves what is there; nothing is installed or built, and nothing
 *   written in the program's own folder
 */
export async function serve({ dev, built = false }) {
  stopCommandsOnSignal();
  const say = (/** @type {string} */ line) => console.log(line);
  const database = databasePath(process.env);
  const host = process.env.HOST || HERE_ONLY;
  let port;
  try {
    port = await requireFreePort(readPort(process.env.PORT), host);
    if (built) requireBuilt();
    else await prepareProgram({ build: !dev, say });
    // only now are the packages there
    const { logLevel, logPlace, openLog } = await import('../server/log.mjs');
    const place = logPlace(process.env, database);
    const log = openLog({ place, level: logLevel(process.env), of: 'start' });
    const began = performance.now();
    const { holds, code } = await prepareDatabase(database);
    log.info({ holds, ms: Math.round(performance.now() - began) }, 'database prepared and migrated');
    const inside = relative(ROOT, database);
    say(`Database: ${inside.startsWith('..') ? database : inside} (${holds})`);
    const server = await startServer({ port, host, database, dev, show: true });
    process.removeAllListeners('SIGTERM').removeAllListeners('SIGINT').removeAllListeners('SIGHUP');
    const endNights = backUpByNight({
      at: process.env.KITWRIGHT_BACKUP_AT?.trim() || '02:30',
      database,
      isDemo: holds.startsWith('demo hospital'),
      say,
      log: (right, said) => log[right ? 'info' : 'error']({ said }, 'nightly backup'),
    });
    let asked = false;
    for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) {
      process.on(signal, () => {
        asked = true;
        log.info({ signal }, 'asked to stop');
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
    log[asked ? 'info' : 'error']({ code: ended }, asked ? 'ended' : 'ended by itself');
    if (asked) process.exit(0);
    console.error(`The server ended by itself (code ${ended}): what it said last is shown above.`);
    process.exit(1);
  } catch (error) {
    if (isStopping()) return;
    tell(asPlainProblem(error, { folder: ROOT, database, port, doing: 'serving' }));
    process.exit(1);
  }
}
