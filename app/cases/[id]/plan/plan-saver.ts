import { compareConstructs } from '@/lib/plans/compare';
import { type Construct, construct as constructSchema } from '@/lib/plans/plan';
import type { PlanVersion } from '@/lib/plans/planVersion';
import { clearUnsaved, keepUnsaved, readUnsaved } from './unsaved-plan';

/** How the draft on screen stands to the draft in the database. */
export type SaveState =
  | { kind: 'saved' }
  | { kind: 'waiting' }
  | { kind: 'saving' }
  /** The server can't be reached; it is tried again, and the draft is kept in this browser meanwhile. */
  | { kind: 'unreachable' }
  | { kind: 'refused'; because: string; sentences: string[] }
  | { kind: 'conflict'; theirs: PlanVersion; writer: string | null };

interface Base {
  planId: string | null;
  revision: number;
  construct: Construct;
}

const QUIET_MS = 350;
const AGAIN_MS = 3000;

/**
 * Saves a draft as it is written: after a moment of quiet, one request at a time, each over the revision it began
 * from. What is not saved yet is kept in this browser, so that a reload or a crash loses nothing.
 */
export class PlanSaver {
  private base: Base;
  private present: Construct;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private inFlight: Promise<void> | null = null;
  private state: SaveState = { kind: 'saved' };
  /** The saved start that was laid into the plan since it was saved last. */
  private laidFrom: string | null = null;

  constructor(
    private readonly caseId: string,
    base: Base,
    private readonly on: {
      state: (state: SaveState, planId: string | null) => void;
      /** Another's version, or what this browser kept, takes the place of what is on screen. */
      adopt: (construct: Construct) => void;
      /** The plan is no longer a draft that can be written. */
      gone: () => void;
    },
  ) {
    this.base = base;
    this.present = base.construct;
  }

  get planId(): string | null {
    return this.base.planId;
  }
  get revision(): number {
    return this.base.revision;
  }

  /** A saved start was laid into the plan; the next save says which. */
  laid(startId: string): void {
    this.laidFrom = startId;
  }

  /** What is on screen now. */
  write(construct: Construct): void {
    this.present = construct;
    if (this.state.kind === 'conflict') {
      keepUnsaved(this.caseId, { ...this.base, construct });
      return;
    }
    if (!this.isDirty()) {
      clearTimeout(this.timer);
      clearUnsaved(this.caseId);
      if (this.inFlight === null) this.say({ kind: 'saved' });
      return;
    }
    keepUnsaved(this.caseId, { ...this.base, construct });
    if (!constructSchema.safeParse(construct).success) {
      this.say({
        kind: 'refused',
        because: 'invalid',
        sentences: ['Something in the plan must be put right first.'],
      });
      return;
    }
    if (this.inFlight === null) this.say({ kind: 'waiting' });
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.flush(), QUIET_MS);
  }

  /** Takes up what this browser kept from before a reload, and what others saved since the page was made. */
  async begin(): Promise<void> {
    const kept = readUnsaved(this.caseId);
    if (!kept || compareConstructs(kept.construct, this.present).length === 0) {
      if (kept) clearUnsaved(this.caseId);
      await this.look();
      return;
    }
    this.on.adopt(kept.construct);
    if (kept.planId === this.base.planId) {
      this.base = { ...this.base, revision: kept.revision };
      this.write(kept.construct);
      await this.look();
    } else {
      // Begun here, and by somebody else meanwhile: both are shown.
      this.present = kept.construct;
      await this.look(true);
    }
  }

  /** Looks whether somebody else saved meanwhile; `always` treats what stands as news even at the revision known. */
  async look(always = false): Promise<void> {
    if (this.inFlight !== null || this.state.kind === 'conflict') return;
    try {
      const answer = await fetch(`/api/v1/plans?case=${encodeURIComponent(this.caseId)}`, {
        cache: 'no-store',
      });
      if (!answer.ok) return;
      const { plan, writer } = (await answer.json()) as { plan: PlanVersion | null; writer: string | null };
      if (this.inFlight !== null) return;
      if (!plan) {
        if (this.base.planId !== null) this.on.gone();
        return;
      }
      if (always || plan.id !== this.base.planId || plan.revision !== this.base.revision)
        this.meet(plan, writer);
    } catch {
      // The next save will say that the server can't be reached.
    }
  }

  /** Saves now; resolves when what is on screen is saved, or can't be. */
  async flush(): Promise<boolean> {
    clearTimeout(this.timer);
    if (this.inFlight) await this.inFlight;
    if (!this.isDirty()) return this.state.kind === 'saved';
    if (this.state.kind === 'conflict' || !constructSchema.safeParse(this.present).success) return false;
    this.inFlight = this.send(false).finally(() => {
      this.inFlight = null;
    });
    await this.inFlight;
    if (this.state.kind === 'saving') this.write(this.present);
    return !this.isDirty();
  }

  /** Leaves what is unsaved with the browser to send, as the page goes away. */
  leave(): void {
    clearTimeout(this.timer);
    if (this.isDirty() && this.inFlight === null && this.state.kind === 'waiting') void this.send(true);
  }

  /** Ends a conflict: theirs is taken, or mine is saved over it knowingly. */
  async resolve(whose: 'theirs' | 'mine'): Promise<void> {
    if (this.state.kind !== 'conflict') return;
    const { theirs } = this.state;
    if (theirs.status !== 'draft') {
      clearUnsaved(this.caseId);
      this.on.gone();
      return;
    }
    this.base = { planId: theirs.id, revision: theirs.revision, construct: theirs.construct };
    this.say({ kind: 'saved' });
    if (whose === 'theirs') {
      clearUnsaved(this.caseId);
      this.present = theirs.construct;
      this.on.adopt(theirs.construct);
    } else {
      this.write(this.present);
      await this.flush();
    }
  }

  private isDirty(): boolean {
    return compareConstructs(this.base.construct, this.present).length > 0;
  }

  private meet(plan: PlanVersion, writer: string | null): void {
    if (plan.status === 'draft' && compareConstructs(plan.construct, this.present).length === 0) {
      this.base = { planId: plan.id, revision: plan.revision, construct: plan.construct };
      clearUnsaved(this.caseId);
      this.say({ kind: 'saved' });
    } else if (this.isDirty()) {
      this.say({ kind: 'conflict', theirs: plan, writer });
    } else if (plan.status === 'draft') {
      this.base = { planId: plan.id, revision: plan.revision, construct: plan.construct };
      this.present = plan.construct;
      this.on.adopt(plan.construct);
      this.say({ kind: 'saved' });
    } else this.on.gone();
  }

  private async send(leaving: boolean): Promise<void> {
    const sent = this.present;
    const { planId, revision } = this.base;
    const from = this.laidFrom === null ? {} : { startId: this.laidFrom };
    this.say({ kind: 'saving' });
    const request =
      planId === null
        ? {
            url: '/api/v1/plans',
            method: 'POST',
            body: { caseId: this.caseId, construct: sent, notPatientData: true, ...from },
          }
        : {
            url: `/api/v1/plans/${planId}`,
            method: 'PUT',
            body: { revision, construct: sent, notPatientData: true, ...from },
          };
    let answer: Response;
    try {
      answer = await fetch(request.url, {
        method: request.method,
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(request.body),
        keepalive: leaving,
      });
    } catch {
      this.say({ kind: 'unreachable' });
      this.timer = setTimeout(() => void this.flush(), AGAIN_MS);
      return;
    }
    if (leaving) return;
    if (answer.ok) {
      this.laidFrom = null;
      const saved = (await answer.json()) as { id?: string; revision: number };
      this.base = { planId: saved.id ?? planId, revision: saved.revision, construct: sent };
      if (this.isDirty()) return;
      clearUnsaved(this.caseId);
      this.say({ kind: 'saved' });
      return;
    }
    await this.hearRefusal(answer);
  }

  private async hearRefusal(answer: Response): Promise<void> {
    const problem = (await answer.json().catch(() => null)) as {
      because?: string;
      current?: PlanVersion | null;
      currentWriter?: string | null;
      errors?: { message: string }[];
      title?: string;
    } | null;
    if (answer.status === 409 && problem?.current) {
      this.say({ kind: 'conflict', theirs: problem.current, writer: problem.currentWriter ?? null });
      return;
    }
    const sentences = problem?.errors?.map(({ message }) => message) ?? [
      problem?.title ?? `Answer ${answer.status}`,
    ];
    this.say({ kind: 'refused', because: problem?.because ?? 'invalid', sentences });
  }

  private say(state: SaveState): void {
    this.state = state;
    this.on.state(state, this.base.planId);
  }
}
