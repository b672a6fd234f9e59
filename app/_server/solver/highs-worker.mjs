// Solves integer programmes with HiGHS, apart from the server's own thread, which it would block for seconds.
// Plain JavaScript, so that a worker thread can load it as it lies.
import { parentPort } from 'node:worker_threads';
import loadHighs from 'highs';

const highs = await loadHighs();
parentPort.on('message', ({ id, programme, options }) => {
  try {
    parentPort.postMessage({ id, answer: solve(programme, options) });
  } catch (error) {
    parentPort.postMessage({ id, fault: String(error?.message ?? error) });
  }
});
parentPort.postMessage({ ready: true });

/** @param {import('@/lib/kits/solver').IntegerProgramme} programme @param {import('@/lib/kits/solver').SolverOptions} options */
function solve(programme, { timeLimitMs, presolve = true }) {
  const { optimal, timeLimit, infeasible, solutionLimit } = highs.constants.modelStatus;
  return highs.withModel(modelOf(programme), (model) => {
    model.options.set({
      output_flag: false,
      time_limit: timeLimitMs / 1000,
      mip_rel_gap: 0,
      mip_abs_gap: wholeObjective(programme) ? 0.999 : 1e-6,
      random_seed: 1,
      presolve: presolve ? 'choose' : 'off',
    });
    const start = startOf(programme);
    if (start) model.raw.setSparseSolution(start);
    model.run();
    const status = model.getModelStatus();
    if (status === infeasible) return { status: 'infeasible' };
    // an empty or malformed programme has a status of its own and an objective of 0: it is no answer
    if (status !== optimal && status !== timeLimit && status !== solutionLimit) {
      throw new Error(`the solver ended with status ${status}`);
    }
    const { colValue } = model.getSolution();
    const found = model.info.get('primal_solution_status') === 2;
    if (!found) return { status: 'nothingFound' };
    const values = Array.from(colValue, (value, at) => (programme.integer[at] ? Math.round(value) : value));
    const objective = programme.objective.reduce((sum, cost, at) => sum + cost * values[at], 0);
    if (status === optimal) return { status: 'optimal', values, objective, gap: 0 };
    return { status: 'timeLimit', values, objective, gap: model.info.get('mip_gap') };
  });
}

/** With whole coefficients on whole variables, an answer within less than 1 of the bound is the optimum. */
function wholeObjective({ objective, integer }) {
  return objective.every((cost, at) => cost === 0 || (Number.isInteger(cost) && integer[at]));
}

function modelOf({ objective, lower, upper, integer, constraints }) {
  const infinity = highs.infinity;
  const starts = [0];
  const indices = [];
  const values = [];
  for (const { variables, coefficients } of constraints) {
    indices.push(...variables);
    values.push(...coefficients);
    starts.push(indices.length);
  }
  return {
    numCols: objective.length,
    numRows: constraints.length,
    colCost: Float64Array.from(objective),
    colLower: Float64Array.from(lower),
    colUpper: Float64Array.from(upper, (most) => most ?? infinity),
    rowLower: Float64Array.from(constraints, (row) => row.lower ?? -infinity),
    rowUpper: Float64Array.from(constraints, (row) => row.upper ?? infinity),
    matrix: {
      format: 'csr',
      numRows: constraints.length,
      numCols: objective.length,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    },
    integrality: Int32Array.from(integer, (whole) => (whole ? 1 : 0)),
  };
}

function startOf({ startFrom }) {
  if (!startFrom) return null;
  const given = startFrom.flatMap((value, at) => (value === null ? [] : [at]));
  return { indices: Int32Array.from(given), values: Float64Array.from(given, (at) => startFrom[at]) };
}
