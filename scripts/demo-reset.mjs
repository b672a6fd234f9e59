// npm run demo:reset. See reset-demo.ts for what happens to a server that is running meanwhile.
import { stopCommandsOnSignal } from './bootstrap/command.mjs';
import { databasePath, ROOT } from './bootstrap/places.mjs';
import { asPlainProblem, tell } from './bootstrap/plain-problem.mjs';
import { prepareProgram, runOnDatabase } from './bootstrap/prepare.mjs';

const database = databasePath(process.env);
stopCommandsOnSignal();
try {
  await prepareProgram({ build: false, say: (line) => console.log(line) });
  const began = performance.now();
  const outcome = await runOnDatabase('reset-demo.ts', { database });
  console.log(`${outcome} (${((performance.now() - began) / 1000).toFixed(1)} s)`);
} catch (error) {
  tell(asPlainProblem(error, { folder: ROOT, database }));
  process.exitCode = 1;
}
