import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { IntegerProgramme, Solver, SolverAnswer, SolverOptions } from '@/lib/kits/solver';

interface Waiting {
  resolve: (answer: SolverAnswer) => void;
  reject: (fault: Error) => void;
}

type Reply = { ready: true } | { id: number; answer: SolverAnswer } | { id: number; fault: string };

const kept = globalThis as typeof globalThis & { kitwrightSolver?: HighsThread };

/**
 * The solver of this process: HiGHS in one thread of its own, started on first use and kept warm. Programmes queue
 * in that thread. The thread does not keep the process alive.
 */
export const highsSolver: Solver = (programme, options) => {
  kept.kitwrightSolver ??= new HighsThread();
  return kept.kitwrightSolver.solve(programme, options);
};

class HighsThread {
  private readonly waiting = new Map<number, Waiting>();
  private next = 1;
  private readonly worker: Worker;

  constructor() {
    // found from the working folder: a bundler must not look into it
    const path = [process.cwd(), 'app', '_server', 'solver', 'highs-worker.mjs'];
    this.worker = new Worker(join(...path));
    this.worker.unref();
    this.worker.on('message', (reply: Reply) => this.hear(reply));
    this.worker.on('error', (fault) => this.end(fault));
    this.worker.on('exit', () => this.end(new Error('the solver ended')));
  }

  solve(programme: IntegerProgramme, options: SolverOptions): Promise<SolverAnswer> {
    const id = this.next;
    this.next += 1;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      // while somebody waits, the process must not end
      this.worker.ref();
      this.worker.postMessage({ id, programme, options });
    });
  }

  private hear(reply: Reply): void {
    if ('ready' in reply) return;
    const waiting = this.waiting.get(reply.id);
    this.waiting.delete(reply.id);
    if (this.waiting.size === 0) this.worker.unref();
    if ('answer' in reply) waiting?.resolve(reply.answer);
    else waiting?.reject(new Error(reply.fault));
  }

  /** A thread that has died takes its questions with it; the next question starts another. */
  private end(fault: Error): void {
    if (kept.kitwrightSolver === this) kept.kitwrightSolver = undefined;
    for (const { reject } of this.waiting.values()) reject(fault);
    this.waiting.clear();
  }
}
