import { readFileSync } from 'node:fs';
import { highsSolver } from '@/app/_server/solver/highs';
import { calculationNames, findCalculation, runCalculation } from '@/lib/calculations/registry';
import { locateJsonProblem } from '@/lib/json/locateJsonProblem';
import { CannotDo, type Command } from '../command';

/** Runs one of the calculations on JSON from standard input. */
export const calculate: Command = {
  usage: 'NAME < input.json',
  does: 'runs one of the calculations on JSON from standard input',
  words: [1, 1],
  async run({ words: [name = ''] }) {
    if (!findCalculation(name))
      throw new CannotDo(
        `There is no calculation “${name}”. Calculations: ${calculationNames().join(', ')}.`,
      );
    const text = process.stdin.isTTY ? '' : readFileSync(0, 'utf8').replace(/^\uFEFF/, '');
    const wrong = locateJsonProblem(text);
    if (wrong)
      throw new CannotDo(
        `The input is not JSON: line ${wrong.line}, column ${wrong.column}: ${wrong.reason}.`,
      );
    const outcome = await runCalculation(name, JSON.parse(text), { solver: highsSolver });
    const said = outcome.ok ? outcome.output : outcome.problem;
    return { exit: outcome.ok ? 0 : 1, lines: [JSON.stringify(said, null, 2)], json: said };
  },
};
