import { z } from 'zod';
import type { RegisteredCalculation } from './calculation';

/** A calculation as the API lists it: what it is, and its input and output as JSON Schema (2020-12). */
export interface CalculationDescription {
  name: string;
  title: string;
  question: string;
  href: string;
  formula: string[];
  assumptions: string[];
  sources: { text: string; fromMemory: boolean }[];
  example: unknown;
  input: object;
  output: object;
}

const stringList = z.array(z.string());

/** What is answered, around the calculation's own output. */
function outputSchema(calculation: RegisteredCalculation): object {
  const head = { calculation: z.literal(calculation.name), assumptions: stringList };
  const working = z.array(z.strictObject({ label: z.string(), expression: z.string(), value: z.string() }));
  const missing = z.array(
    z.strictObject({ path: z.array(z.union([z.string(), z.number()])), what: z.string() }),
  );
  return z.toJSONSchema(
    z.discriminatedUnion('outcome', [
      z.strictObject({ ...head, outcome: z.literal('answered'), answer: calculation.output, working }),
      z.strictObject({
        ...head,
        outcome: z.literal('notEstablished'),
        missing,
        known: calculation.output.nullable(),
        working,
      }),
    ]),
  );
}

/** Input as JSON Schema: what may be sent, so fields with a default are not required. */
export function inputSchema(calculation: RegisteredCalculation): object {
  // plain data only: the schema as made also carries methods, which cannot be sent to a browser
  return JSON.parse(JSON.stringify(z.toJSONSchema(calculation.input, { io: 'input' })));
}

export function describeCalculation(calculation: RegisteredCalculation): CalculationDescription {
  const { name, title, question, formula, assumptions, sources, example } = calculation;
  return {
    name,
    title,
    question,
    href: `/api/v1/calculations/${name}`,
    formula,
    assumptions,
    sources: sources.map(({ text, fromMemory = false }) => ({ text, fromMemory })),
    example,
    input: inputSchema(calculation),
    output: outputSchema(calculation),
  };
}
