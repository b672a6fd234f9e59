/** Whoever started this process gives it four seconds; what was begun has this long to end. */
const END_WITHIN_MS = 3000;
const LOOK_MS = 20;

/**
 * The orderly end after a signal: what was begun is ended and answered, what comes from then on is refused in words, idle
 * connections are closed, and the process is gone within three seconds and a little.
 * @param {import('node:http').Server} server
 * @param {{ log: import('pino').Logger, close(): Promise<void>, exit?: (code: number) => void }} how
 */
export function stopInOrder(server, { log, close, exit = (code) => process.exit(code) }) {
  let stopping = false;
  let open = 0;
  server.on('request', (_request, response) => {
    open += 1;
    response.on('close', () => {
      open -= 1;
    });
  });
  const stop = async (/** @type {string} */ signal) => {
    if (stopping) return;
    stopping = true;
    const began = performance.now();
    log.info({ signal, open }, 'stopping');
    server.closeIdleConnections();
    while (open > 0 && performance.now() - began < END_WITHIN_MS) {
      await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
      server.closeIdleConnections();
    }
    const left = open;
    server.close();
    server.closeAllConnections();
    // what the framework still has to do must not keep the process
    await Promise.race([close().catch(() => {}), new Promise((resolve) => setTimeout(resolve, 300))]);
    log.info({ cutOff: left, ms: Math.round(performance.now() - began) }, 'stopped');
    exit(0);
  };
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) process.on(signal, () => void stop(signal));
  return { isStopping: () => stopping };
}
