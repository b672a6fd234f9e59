/**
 * Asks one question at a time. What comes meanwhile waits, and of that only the newest is asked: answers that take longer
 * than the questions come never pile up before anything else that is on its way.
 */
export class NewestOnly<Q> {
  private waiting: { question: Q } | null = null;
  private busy = false;
  private closed = false;

  /** @param put asks one; an answer that does not come is the same as one that did */
  constructor(private readonly put: (question: Q) => Promise<void>) {}

  ask(question: Q): void {
    this.waiting = { question };
    if (!this.busy) void this.run();
  }

  /** Nothing more is asked from here. */
  stop(): void {
    this.closed = true;
  }

  private async run(): Promise<void> {
    this.busy = true;
    for (let next = this.take(); next !== null; next = this.take())
      await this.put(next.question).catch(() => undefined);
    this.busy = false;
  }

  private take(): { question: Q } | null {
    const next = this.closed ? null : this.waiting;
    this.waiting = null;
    return next;
  }
}
