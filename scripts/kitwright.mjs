// npm run --silent kitwright -- COMMAND [...]; works whether the server is up or down. `help` lists the commands.
// Exit code 0: done, or nothing is wrong; 1: something is wrong; 2: it could not be done, or was not understood.
import { nodeProblem } from './bootstrap/node-version.mjs';
import { ROOT } from './bootstrap/places.mjs';

const problem = nodeProblem(process.versions.node);
if (problem) {
  console.error(problem);
  process.exitCode = 2;
} else {
  process.chdir(ROOT);
  const tsx = await import('tsx/esm/api').catch(() => null);
  if (tsx) {
    tsx.register();
    const { kitwright } = await import('./kitwright/kitwright.ts');
    const { askSecret } = await import('./kitwright/secret.ts');
    process.exitCode = await kitwright(process.argv.slice(2), process.env, {
      say: (line) => process.stdout.write(`${line}\n`),
      refuse: (line) => process.stderr.write(`${line}\n`),
      secret: askSecret,
      now: () => new Date(),
    });
  } else {
    console.error('The packages are not installed yet: run npm ci, or npm start, once.');
    process.exitCode = 2;
  }
}
