import { PlainProblem } from '../bootstrap/plain-problem.mjs';

/**
 * `--only types,lint` or `--only=types` chooses stages; everything else goes to the test runners.
 * @param {string[]} args
 * @param {string[]} stages all names, in the order they run
 * @returns {{ only: string[] | null, rest: string[] }} `only` in running order, null for all
 */
export function readArguments(args, stages) {
  /** @type {string[]} */
  const rest = [];
  /** @type {string[] | null} */
  let wanted = null;
  for (let index = 0; index < args.length; index += 1) {
    const arg = /** @type {string} */ (args[index]);
    if (arg === '--only' || arg.startsWith('--only=')) {
      const value = arg === '--only' ? args[++index] : arg.slice('--only='.length);
      wanted = [...(wanted ?? []), ...(value ?? '').split(',').filter(Boolean)];
    } else {
      rest.push(arg);
    }
  }
  if (wanted === null) return { only: null, rest };
  const unknown = wanted.filter((name) => !stages.includes(name));
  if (unknown.length > 0 || wanted.length === 0) {
    throw new PlainProblem(
      `--only takes one or more of ${stages.join(', ')}, separated by commas${unknown.length > 0 ? `; "${unknown.join(', ')}" is none of them` : ''}.`,
    );
  }
  return { only: stages.filter((name) => wanted.includes(name)), rest };
}
