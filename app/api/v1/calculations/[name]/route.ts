import { jsonAnswer } from '@/app/_server/json-answer';
import { problemAnswer, readJsonBody } from '@/app/_server/problem-response';
import { highsSolver } from '@/app/_server/solver/highs';
import { describeCalculation } from '@/lib/calculations/description';
import { findCalculation, noSuchCalculation, runCalculation } from '@/lib/calculations/registry';

/** What the calculation gives: its own description has the schema. */
export interface CalculationJson {
  calculation: string;
  assumptions: readonly string[];
}

type Context = { params: Promise<{ name: string }> };

/** One calculation, described. */
export async function GET(_request: Request, { params }: Context) {
  const { name } = await params;
  const calculation = findCalculation(name);
  return calculation ? jsonAnswer(describeCalculation(calculation)) : problemAnswer(noSuchCalculation(name));
}

/** Runs one calculation on the JSON sent; what is wrong comes back as an RFC 9457 problem, every fault with its path. */
export async function POST(request: Request, { params }: Context) {
  const { name } = await params;
  if (!findCalculation(name)) return problemAnswer(noSuchCalculation(name));
  const body = await readJsonBody(request);
  if (!body.ok) return body.answer;
  const outcome = await runCalculation(name, body.value, { solver: highsSolver });
  if (!outcome.ok) return problemAnswer(outcome.problem);
  return jsonAnswer<CalculationJson>(outcome.output);
}
