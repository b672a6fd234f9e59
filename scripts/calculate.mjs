// npm run --silent calculate -- NAME < input.json
import { readFileSync } from 'node:fs';
import { register } from 'tsx/esm/api';
import { locateJsonProblem } from './json-position.mjs';

process.exitCode = await main(process.argv[2]);

/** @param {string | undefined} name @returns {Promise<number>} exit code */
async function main(name) {
  register();
  const { calculations, runCalculation } = await import('../lib/calculations/registry.ts');
  const names = Object.keys(calculations).sort();
  const known = `The calculations are: ${names.join(', ')}.`;
  if (!name) return refuse('No calculation named', 400, `Give the name of a calculation. ${known}`);
  if (!names.includes(name))
    return refuse('No such calculation', 404, `There is no calculation "${name}". ${known}`);
  if (process.stdin.isTTY) {
    return refuse(
      'No input',
      400,
      `Give the input as JSON, for example: npm run --silent calculate -- ${name} < input.json`,
    );
  }
  const text = readFileSync(0, 'utf8').replace(/^\uFEFF/, '');
  const wrong = locateJsonProblem(text);
  if (wrong) {
    return refuse(
      'The input is not JSON',
      400,
      `Line ${wrong.line}, column ${wrong.column}: ${wrong.reason}.`,
    );
  }
  const outcome = await runCalculation(name, JSON.parse(text));
  if (!outcome.ok) return print(process.stderr, outcome.problem, 1);
  return print(process.stdout, outcome.output, 0);
}

/** A problem in the form of RFC 9457. @param {string} title @param {number} status @param {string} detail */
function refuse(title, status, detail) {
  return print(process.stderr, { type: 'about:blank', title, status, detail }, 1);
}

/** @param {NodeJS.WriteStream} stream @param {unknown} value @param {number} code */
function print(stream, value, code) {
  stream.write(`${JSON.stringify(value, null, 2)}\n`);
  return code;
}
