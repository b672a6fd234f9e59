import type { z } from 'zod';
import { failed, ok, type Problem, type Result } from '@/lib/identity/result';
import type { Solver } from '@/lib/kits/solver';
import { inputSentence } from '@/lib/wording/input-problems';

/** What a calculation may ask of the outside: handed in, so that the core stays pure. */
export interface Ports {
  solver: Solver;
  /** Told how far it is by what takes long. */
  onProgress?: (progress: { done: number; of: number }) => void;
  /** Ends what takes long; its promise then rejects with the signal's reason. */
  signal?: AbortSignal;
  /** Lets others have their turn meanwhile; asked between pieces of what takes long. */
  pause?: () => Promise<void>;
}

/** One line of the working, in the order it is worked: `label: expression = value`. */
export interface WorkingStep {
  label: string;
  expression: string;
  value: string;
}

/** A value that is not stated, where it is missing, and what it is. */
export interface MissingValue {
  path: (string | number)[];
  what: string;
}

/**
 * What a calculation says. It never guesses: where a value is missing that could change the answer, the outcome is
 * `notEstablished`, with all that is missing and what can be said all the same (`known`, where there is such a thing).
 */
export type Answer<O> =
  | { outcome: 'answered'; answer: O; working: WorkingStep[] }
  | { outcome: 'notEstablished'; missing: MissingValue[]; known: O | null; working: WorkingStep[] };

/** Where a formula, a default or a range is from. `fromMemory`: quoted from memory, to be confirmed by a person. */
export interface CalculationSource {
  text: string;
  fromMemory?: boolean;
}

interface Description {
  /** The registry's name, kebab-case. */
  name: string;
  title: string;
  /** What it answers, as a question. */
  question: string;
  formula: string[];
  assumptions: string[];
  sources: CalculationSource[];
}

/** A calculation as it is written: typed input and output, and a pure function between them. */
export interface Calculation<I extends z.ZodType, O extends z.ZodType> extends Description {
  /** Strict objects of plain JSON with units in the field names; sizes capped, so that no input can run for long. */
  input: I;
  output: O;
  example: z.input<I>;
  /** Faults no schema can see (a name that is given twice); all of them at once. */
  check?: (input: z.output<I>) => Problem[];
  run: (input: z.output<I>, ports: Ports) => Answer<z.output<O>> | Promise<Answer<z.output<O>>>;
}

/** A calculation as the registry lists it: anything in, problems or an answer out. */
export interface RegisteredCalculation extends Description {
  input: z.ZodType;
  output: z.ZodType;
  example: unknown;
  evaluate: (raw: unknown, ports: Ports) => Promise<Result<Answer<unknown>>>;
}

/** Makes a calculation fit for the registry: its input is parsed, and all that is wrong with it comes back at once. */
export function defineCalculation<I extends z.ZodType, O extends z.ZodType>(
  calculation: Calculation<I, O>,
): RegisteredCalculation {
  const { check, run, ...rest } = calculation;
  return {
    ...rest,
    async evaluate(raw, ports) {
      const parsed = calculation.input.safeParse(raw);
      if (!parsed.success) return failed(...problemsOf(parsed.error.issues));
      const problems = check?.(parsed.data) ?? [];
      if (problems.length > 0) return failed(...problems);
      return ok(await run(parsed.data, ports));
    },
  };
}

/** As `problemsFromZod`, in our words and with one problem for each key that has no place. */
function problemsOf(issues: readonly z.core.$ZodIssue[]): Problem[] {
  return issues.flatMap((issue): Problem[] => {
    const path = issue.path.map((key) => (typeof key === 'number' ? key : String(key)));
    const code = issue.code.replaceAll('_', '-');
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({ path: [...path, key], code, message: inputSentence(issue, key) }));
    }
    return [{ path, code, message: inputSentence(issue) }];
  });
}
