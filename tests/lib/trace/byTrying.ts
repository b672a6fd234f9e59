import { type LotAsked, mayBeOfLot, type SlotHistory } from '@/lib/trace/slotHistory';
import { type End, endsOf } from '@/lib/trace/slotNetwork';

/**
 * Every way in which the pieces of a slot can have gone, tried one after the other, piece by piece: per way, how many of
 * the lot ended in each end. Another method than the program's, and far too slow for anything but small slots.
 *
 * @returns every vector that is possible, by ends; none where the records contradict themselves
 */
export function waysByTrying(history: SlotHistory, asked: LotAsked): { ends: End[]; ways: number[][] } {
  const ends = endsOf(history);
  const seen = new Set<string>();
  const ways = new Map<string, number[]>();
  /** What lies in the slot, piece by piece: the lot; `?`: any, this one too; `~`: any but this one. */
  const visit = (at: number, end: number, lying: readonly string[], taken: readonly number[]): void => {
    const key = `${at} ${end} ${[...lying].sort().join()} ${taken.join()}`;
    if (seen.has(key)) return;
    seen.add(key);
    const event = history.events[at];
    if (event?.kind === 'in') {
      const one = event.lot ?? (mayBeOfLot(event.atMs, asked) ? '?' : '~');
      visit(at + 1, end, [...lying, ...Array<string>(event.quantity).fill(one)], taken);
      return;
    }
    const next = ends[end];
    if (event && next?.is !== at) {
      visit(at + 1, end, lying, taken);
      return;
    }
    if (!next) {
      ways.set(taken.join(), [...taken]);
      return;
    }
    const take = (left: number, from: readonly string[], ofLot: number): void => {
      if (left === 0) {
        visit(event ? at + 1 : at, end + 1, from, [...taken, ofLot]);
        return;
      }
      for (const one of new Set(from)) {
        const rest = from.filter((_, place) => place !== from.indexOf(one));
        const canBeLot = (one === asked.lot || one === '?') && (next.lot === null || next.lot === asked.lot);
        const canBeOther =
          one !== asked.lot &&
          (next.lot === null || (next.lot !== asked.lot && (one === next.lot || one === '?' || one === '~')));
        if (canBeLot) take(left - 1, rest, ofLot + 1);
        if (canBeOther) take(left - 1, rest, ofLot);
      }
    };
    take(next.quantity, lying, 0);
  };
  visit(0, 0, Array<string>(history.before ?? 0).fill('~'), []);
  return { ends, ways: [...ways.values()] };
}
