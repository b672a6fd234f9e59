import { parentPort, workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

// a thread has no loader of its own for TypeScript
register();
const { EVERY_TARGET } = await import('./targets.ts');
const { name, runs, seed, done } = workerData;
try {
  const target = EVERY_TARGET.find((one) => one.name === name);
  const outcomes = await target.attack(runs, seed, () => Atomics.add(done, 0, 1));
  parentPort.postMessage({ outcomes, fault: null });
} catch (error) {
  const cause = error instanceof Error && error.cause instanceof Error ? `\n${error.cause.stack}` : '';
  parentPort.postMessage({
    outcomes: null,
    fault: `${error instanceof Error ? error.message : error}${cause}`,
  });
}
