/**
 * npm run ledger:verify [-- --db FILE] [--heads FILE] [--head "12,345 · 3f9a 0c1e 77b2 d004 …"]
 *
 * Checks the ledger of a database without writing to it; the server may run. `--head` is a head as it is printed at the
 * foot of a sheet, and may be given several times. Exit code 0: nothing wrong; 1: something is; 2: it could not be checked.
 */
import { verifyCommand } from './verifyCommand';

process.exitCode = verifyCommand(process.argv.slice(2), process.env, {
  say: (line) => console.log(line),
  refuse: (line) => console.error(line),
});
