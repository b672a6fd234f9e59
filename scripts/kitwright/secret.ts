import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';

/**
 * A secret as a person types it, shown nowhere; or the first line of standard input where that is no terminal. Never a word
 * of the command, which other users of the machine could read.
 */
export function askSecret(question: string): Promise<string> {
  if (!process.stdin.isTTY) return Promise.resolve(readFileSync(0, 'utf8').split(/\r?\n/)[0] ?? '');
  const silent = new Writable({ write: (_chunk, _encoding, done) => done() });
  const lines = createInterface({ input: process.stdin, output: silent, terminal: true });
  process.stderr.write(question);
  return new Promise((resolve) => {
    lines.question('', (answer) => {
      lines.close();
      process.stderr.write('\n');
      resolve(answer);
    });
  });
}
