/** Where entries wait that are not acknowledged yet: one place for each, so that two tabs never overwrite each other. */
export interface WaitingRoom<T> {
  all(): T[];
  put(one: T): void;
  remove(id: string): void;
}

/** What became of one that was sent. */
export type Delivered =
  | { id: string; ok: true; enteredAt: string }
  | { id: string; ok: false; because: string; sentence: string };

export interface OutboxState<T> {
  /** Not acknowledged yet, in the order they were made. */
  pending: readonly T[];
  /** Answered with a refusal: nothing was recorded. */
  refused: readonly { item: T; sentence: string }[];
  /** The last try did not get through. */
  cutOff: boolean;
}

interface OutboxOptions<T> {
  room: WaitingRoom<T>;
  /** Sends some in order and answers for each it knows of; throws where nothing is known of what arrived. */
  send: (items: readonly T[]) => Promise<readonly Delivered[]>;
  wait: (ms: number) => Promise<void>;
  onChange: (state: OutboxState<T>) => void;
  onStored: (item: T, enteredAt: string) => void;
  /** Orders what was found waiting; ties keep their places. */
  order: (a: T, b: T) => number;
}

const MOST_AT_ONCE = 40;
const FIRST_WAIT_MS = 250;
const LONGEST_WAIT_MS = 8_000;

/**
 * Keeps what was entered until the server says it is on its disk. Each carries an id made here, so sending it again
 * after a lost answer enters it once; nothing is taken out before it is answered for.
 */
export class Outbox<T extends { id: string }> {
  private pending: T[];
  private refused: { item: T; sentence: string }[] = [];
  private cutOff = false;
  private sending: Promise<void> | null = null;
  private closed = false;

  constructor(private readonly options: OutboxOptions<T>) {
    this.pending = [...options.room.all()].sort(options.order);
  }

  get state(): OutboxState<T> {
    return { pending: [...this.pending], refused: [...this.refused], cutOff: this.cutOff };
  }

  /** Keeps one before anything else is done with it, and sends it. */
  add(item: T): void {
    this.options.room.put(item);
    this.pending.push(item);
    this.tell();
    void this.flush();
  }

  /** Sends until nothing waits; goes on by itself after a failure. One at a time. */
  flush(): Promise<void> {
    this.sending ??= this.run().finally(() => {
      this.sending = null;
    });
    return this.sending;
  }

  /** The person has read why one was not recorded. */
  dismiss(id: string): void {
    this.refused = this.refused.filter(({ item }) => item.id !== id);
    this.tell();
  }

  /** No more tries from here; what waits stays in its room. */
  stop(): void {
    this.closed = true;
  }

  private async run(): Promise<void> {
    let waitMs = FIRST_WAIT_MS;
    while (this.pending.length > 0 && !this.closed) {
      const some = this.pending.slice(0, MOST_AT_ONCE);
      const answered = await this.options.send(some).then(
        (delivered) => this.settle(some, delivered),
        () => 0,
      );
      this.cutOff = answered === 0;
      this.tell();
      if (answered > 0) {
        waitMs = FIRST_WAIT_MS;
        continue;
      }
      await this.options.wait(waitMs);
      waitMs = Math.min(waitMs * 2, LONGEST_WAIT_MS);
    }
  }

  private settle(sent: readonly T[], delivered: readonly Delivered[]): number {
    const known = new Map(delivered.map((one) => [one.id, one]));
    let answered = 0;
    for (const item of sent) {
      const answer = known.get(item.id);
      if (!answer) continue;
      answered += 1;
      this.pending = this.pending.filter(({ id }) => id !== item.id);
      this.options.room.remove(item.id);
      if (answer.ok) this.options.onStored(item, answer.enteredAt);
      else this.refused.push({ item, sentence: answer.sentence });
    }
    return answered;
  }

  private tell(): void {
    this.options.onChange(this.state);
  }
}
