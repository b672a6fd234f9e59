// npm test, npm run check. Uses nothing but Node.js itself until the packages are there.
import { nodeProblem } from './bootstrap/node-version.mjs';

const problem = nodeProblem(process.versions.node);
if (problem) {
  console.error(`${problem}\n\n0 passed, 1 failed`);
  process.exitCode = 1;
} else {
  import('./testing/run-stages.mjs').then(({ runStages }) => runStages(process.argv.slice(2)));
}
