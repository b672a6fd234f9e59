// npm start. Uses nothing but Node.js itself until the packages are there.
import { nodeProblem } from './bootstrap/node-version.mjs';

const problem = nodeProblem(process.versions.node);
if (problem) {
  console.error(problem);
  process.exitCode = 1;
} else {
  import('./bootstrap/serve.mjs').then(({ serve }) =>
    serve({ dev: process.argv.includes('--dev'), built: process.argv.includes('--built') }),
  );
}
