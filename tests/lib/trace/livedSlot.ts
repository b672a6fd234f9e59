import fc from 'fast-check';
import { OUTCOMES, type SlotEvent, type SlotHistory } from '@/lib/trace/slotHistory';

const LOTS = ['A', 'B', 'C'] as const;
/** A slot as it really went, and what was written down of it: every lot may have gone unrecorded or unread. */
export const lived = (most: number) =>
  fc
    .array(
      fc.record({
        isIn: fc.boolean(),
        quantity: fc.integer({ min: 1, max: 2 }),
        lot: fc.constantFrom(...LOTS),
        isRead: fc.integer({ min: 0, max: 2 }),
        pick: fc.array(fc.nat(50), { minLength: 2, maxLength: 2 }),
        case: fc.constantFrom('case_1', 'case_2', 'case_3', null),
        outcome: fc.constantFrom(...OUTCOMES),
      }),
      { minLength: 1, maxLength: most },
    )
    .map((steps) => {
      const lying: string[] = [];
      const events: SlotEvent[] = [];
      const truth: string[][] = [];
      for (const [atMs, step] of steps.entries()) {
        if (step.isIn || lying.length === 0) {
          lying.push(...Array<string>(step.quantity).fill(step.lot));
          events.push({
            kind: 'in',
            atMs,
            quantity: step.quantity,
            lot: step.isRead === 0 ? null : step.lot,
          });
          truth.push([]);
          continue;
        }
        for (const pick of step.pick.slice(0, Math.min(step.quantity, lying.length))) {
          const [lot] = lying.splice(pick % lying.length, 1) as [string];
          const { outcome } = step;
          const isRead = step.isRead === 1;
          events.push({ kind: 'out', atMs, quantity: 1, lot: isRead ? lot : null, case: step.case, outcome });
          truth.push([lot]);
        }
      }
      const history: SlotHistory = { events, now: null };
      return { history, truth, lying };
    });
