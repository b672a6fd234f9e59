/** npm run faults [-- KILLS [SEED]]: kills the built server 200 times while scans come in, and says what was lost. */
import { prepareProgram } from '../../scripts/bootstrap/prepare.mjs';
import { killServer } from './killServer';

const kills = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? 20260114);
// a build of one's own is taken as it is
if (!process.env.KITWRIGHT_DIST) await prepareProgram({ build: true, say: console.log });
const began = performance.now();
const outcome = await killServer({ kills, seed, say: console.log });
console.log(
  `${outcome.kills} kills in ${((performance.now() - began) / 1000).toFixed(0)} s: ${outcome.acknowledged} scans acknowledged, ${outcome.unknown} never answered (${outcome.storedUnanswered} of them stored), ${outcome.stored} stored.`,
);
for (const fault of outcome.faults) console.log(`FAULT: ${fault}`);
console.log(
  outcome.faults.length === 0 ? 'Nothing acknowledged was lost, nothing is there twice.' : 'NOT sound.',
);
process.exit(outcome.faults.length === 0 ? 0 : 1);
