// npm run --silent calculate -- NAME < input.json
// The answer is JSON on standard output. What is wrong is a problem in the form of RFC 9457 on standard error, exit code 1.
import { readFileSync } from 'node:fs';
import { ROOT } from './bootstrap/places.mjs';
import { tell } from './bootstrap/plain-problem.mjs';

process.chdir(ROOT);
const tsx = await import('tsx/esm/api').catch(() => null);
if (tsx) {
  tsx.register();
  process.exitCode = await calculate(process.argv[2]);
} else {
  tell({ message: 'The packages are not installed yet: run npm ci, or npm start, once.', detail: '' });
  process.exitCode = 1;
}

/**
 * @param {string | undefined} name
 * @returns {Promise<number>} exit code
 */
async function calculate(name) {
  const { calculationNames, findCalculation, noSuchCalculation, runCalculation } = await import(
    '../lib/calculations/registry.ts'
  );
  const { locateJsonProblem } = await import('../lib/json/locateJsonProblem.ts');
  const { highsSolver } = await import('../app/_server/solver/highs.ts');
  if (!name) {
    return refuse('No calculation named', `Name one of the calculations: ${calculationNames().join(', ')}.`);
  }
  if (!findCalculation(name)) return print(process.stderr, noSuchCalculation(name), 1);
  if (process.stdin.isTTY) {
    return refuse('No input', `Give the input as JSON: npm run --silent calculate -- ${name} < input.json`);
  }
  const text = readFileSync(0, 'utf8').replace(/^\uFEFF/, '');
  const wrong = locateJsonProblem(text);
  if (wrong) {
    return refuse('The input is not JSON', `Line ${wrong.line}, column ${wrong.column}: ${wrong.reason}.`);
  }
  const outcome = await runCalculation(name, JSON.parse(text), { solver: highsSolver });
  return outcome.ok ? print(process.stdout, outcome.output, 0) : print(process.stderr, outcome.problem, 1);
}

/**
 * @param {string} title
 * @param {string} detail
 */
function refuse(title, detail) {
  return print(process.stderr, { type: 'about:blank', title, status: 400, detail }, 1);
}

/**
 * @param {NodeJS.WriteStream} stream
 * @param {unknown} value
 * @param {number} code
 */
function print(stream, value, code) {
  stream.write(`${JSON.stringify(value, null, 2)}\n`);
  return code;
}
