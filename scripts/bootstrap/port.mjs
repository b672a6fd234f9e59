import { createServer } from 'node:net';
import { PlainProblem, plainSentence } from './plain-problem.mjs';

/**
 * The port asked for; 0 means any free one.
 * @param {string | undefined} text as in PORT
 */
export function readPort(text) {
  if (text === undefined || text.trim() === '') return 3000;
  const port = Number(text);
  if (!/^\s*\d+\s*$/.test(text) || port > 65535) {
    throw new PlainProblem(
      `PORT is "${text}", which is no port: use a whole number from 1 to 65535, or 0 for any free one.`,
    );
  }
  return port;
}

/**
 * The port if it can be listened on now (a free one for 0); a PlainProblem otherwise.
 * @param {number} port
 * @param {string} host
 * @returns {Promise<number>}
 */
export function requireFreePort(port, host) {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', (error) => {
      const { code = '' } = /** @type {NodeJS.ErrnoException} */ (error);
      const sentence =
        code === 'ENOTFOUND' || code === 'EADDRNOTAVAIL'
          ? `HOST is "${host}", which is no address of this machine: leave it out, or use 0.0.0.0 to be reached from other machines.`
          : plainSentence(`${code} ${error.message}`, { port });
      reject(sentence ? new PlainProblem(sentence, { cause: error }) : error);
    });
    probe.listen(port, host, () => {
      const address = probe.address();
      const found = typeof address === 'object' && address ? address.port : port;
      probe.close(() => resolve(found));
    });
  });
}
