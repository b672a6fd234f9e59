import { buildableCalculation } from './buildable/calculation';
import type { Answer, Ports, RegisteredCalculation } from './calculation';
import { caseCostCalculation } from './caseCost/calculation';
import { completenessCalculation } from './completeness/calculation';
import { expiryLossCalculation } from './expiryLoss/calculation';
import { fewestTraysCalculation } from './fewestTrays/calculation';
import { identifierCalculation } from './identifier/calculation';
import { lengthCoverCalculation } from './lengthCover/calculation';
import { lengthFeasibilityCalculation } from './lengthFeasibility/calculation';
import { loanNoticeCalculation } from './loanNotice/calculation';
import { plateRemarksCalculation } from './plateRemarks/calculation';
import { type ProblemDetails, problemDetails } from './problemDetails';
import { reorderCalculation } from './reorder/calculation';
import { serviceLifeCalculation } from './serviceLife/calculation';
import { setReviewCalculation } from './setReview/calculation';
import { setTurnaroundCalculation } from './setTurnaround/calculation';
import { thermalDoseCalculation } from './thermalDose/calculation';
import { traceCalculation } from './trace/calculation';

/** Every calculation there is: a screen, the API, the command line and the what-if page all read this list. */
const registered: readonly RegisteredCalculation[] = [
  buildableCalculation,
  caseCostCalculation,
  completenessCalculation,
  expiryLossCalculation,
  fewestTraysCalculation,
  identifierCalculation,
  lengthCoverCalculation,
  lengthFeasibilityCalculation,
  loanNoticeCalculation,
  plateRemarksCalculation,
  serviceLifeCalculation,
  setReviewCalculation,
  reorderCalculation,
  setTurnaroundCalculation,
  thermalDoseCalculation,
  traceCalculation,
];

/** By name, in alphabetical order. */
export const calculations: Readonly<Record<string, RegisteredCalculation>> = Object.fromEntries(
  [...registered].sort((a, b) => a.name.localeCompare(b.name, 'en')).map((one) => [one.name, one]),
);

export const calculationNames = (): string[] => Object.keys(calculations);

/** The calculation of that name, or none; never something an object inherits (`toString`). */
export function findCalculation(name: string): RegisteredCalculation | undefined {
  return Object.hasOwn(calculations, name) ? calculations[name] : undefined;
}

/** What goes out: the answer with the assumptions it rests on, so that no figure travels without them. */
export type CalculationOutput = { calculation: string } & Answer<unknown> & { assumptions: string[] };

/**
 * Runs a calculation by name on unchecked input. Every fault of the input comes back at once, as RFC 9457 writes it.
 */
export async function runCalculation(
  name: string,
  rawInput: unknown,
  ports: Ports,
): Promise<{ ok: true; output: CalculationOutput } | { ok: false; problem: ProblemDetails }> {
  const calculation = findCalculation(name);
  if (!calculation) return { ok: false, problem: noSuchCalculation(name) };
  const result = await calculation.evaluate(rawInput, ports);
  if (result.ok) {
    return {
      ok: true,
      output: { calculation: name, ...result.value, assumptions: calculation.assumptions },
    };
  }
  const count = result.problems.length;
  return {
    ok: false,
    problem: problemDetails(
      {
        title: 'The input cannot be used',
        status: 422,
        detail: `${count === 1 ? 'One value' : `${count} values`} of the input of “${name}” must be put right; each is listed with its place.`,
      },
      result.problems,
    ),
  };
}

/** 404, naming what there is. */
export function noSuchCalculation(name: string): ProblemDetails {
  const shown = name.length > 60 ? `${name.slice(0, 60)}…` : name;
  return problemDetails({
    title: 'No such calculation',
    status: 404,
    detail: `There is no calculation “${shown}”. The calculations are: ${calculationNames().join(', ')}.`,
  });
}
