import type { Chance } from '@/seed/history/chance';
import { CONFIGURATIONS, IMPLANT_LINES, type Line } from './ground';
import { DAY, iso, MINUTE } from './moments';
import type { Statements } from './statements';

const PIECES_PER_CASE = 6;

/** Writes what cases used, and the lots it was refilled from. */
export class UsesWriting {
  private readonly lots = new Map<string, { lot: string; heap: string; left: number; made: number }>();

  constructor(
    private readonly insert: Statements,
    private readonly chance: Chance,
    private readonly linesOf: readonly Line[][],
  ) {}

  /** Six pieces leave slots of the set in theatre, and as many come from lots of the shelf the same day. */
  use(set: number, setId: string, caseId: string, packId: string, startsAt: number, by: string): void {
    const lines = this.linesOf[set % CONFIGURATIONS] ?? [];
    const used = [...Array(PIECES_PER_CASE).keys()].flatMap(() => {
      const line = lines[this.chance.whole(0, IMPLANT_LINES - 1)];
      return line ? [{ line, act: this.chance.is(0.07) ? 'wasted' : 'implanted' }] : [];
    });
    for (const [piece, { line, act }] of used.entries()) {
      const at = iso(startsAt + (20 + piece) * MINUTE);
      this.insert.move.run(
        act,
        line.itemId,
        null,
        null,
        1,
        null,
        setId,
        line.id,
        null,
        null,
        null,
        caseId,
        packId,
        1_200,
        by,
        at.slice(0, 10),
        at,
        at,
      );
    }
    for (const [piece, { line }] of used.entries()) {
      const lot = this.lotOf(line.itemId, startsAt);
      const back = iso(startsAt + (360 + piece) * MINUTE);
      this.insert.move.run(
        'refilled',
        line.itemId,
        lot.lot,
        null,
        1,
        lot.heap,
        null,
        null,
        null,
        setId,
        line.id,
        null,
        null,
        1_200,
        by,
        back.slice(0, 10),
        back,
        back,
      );
      lot.left -= 1;
    }
  }

  private lotOf(itemId: string, at: number) {
    const known = this.lots.get(itemId);
    if (known && known.left > 0) return known;
    const made = (known?.made ?? 0) + 1;
    const stem = itemId.slice('item_'.length);
    const lot = { lot: `${stem}-${made}`.toUpperCase(), heap: `stock_y-${stem}-${made}`, left: 20, made };
    this.lots.set(itemId, lot);
    this.insert.heap.run(lot.heap, itemId, lot.lot);
    const came = iso(at - 7 * DAY);
    this.insert.move.run(
      'received',
      itemId,
      lot.lot,
      null,
      20,
      null,
      null,
      null,
      lot.heap,
      null,
      null,
      null,
      null,
      1_200,
      'person_t0',
      came.slice(0, 10),
      came,
      came,
    );
    return lot;
  }
}
