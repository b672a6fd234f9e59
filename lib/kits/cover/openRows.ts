import { bitCount, type Rows } from './rows';

/** What one look at the open rows says. */
export interface Look {
  /** No fewer further trays than this can meet them. */
  bound: number;
  /** Types that meet the row with the fewest ways, those that meet most first; empty when a row can't be met. */
  branch: number[];
}

/**
 * Looks at the rows still open and the types not shut, and gives a lower bound with the row to branch on.
 *
 * The bound: give each open row the weight 1/m, m being the most open rows that any type meeting it meets. The weights
 * of the rows of one type then sum to at most 1, so that their total never exceeds the number of trays (a feasible
 * answer of the dual). Raising weights where a type's sum leaves room makes it sharper.
 */
export class OpenRows {
  private readonly sizes: Int32Array;
  private readonly most: Int32Array;
  private readonly ways: Int32Array;
  private readonly room: Float64Array;
  private readonly weights: Float64Array;

  constructor(
    private readonly rows: Rows,
    private readonly typeCount: number,
  ) {
    this.sizes = new Int32Array(typeCount);
    this.most = new Int32Array(rows.count);
    this.ways = new Int32Array(rows.count);
    this.room = new Float64Array(typeCount);
    this.weights = new Float64Array(rows.count);
  }

  look(open: Int32Array, shut: readonly boolean[], atMost: number): Look {
    const { words, masks, types, count } = this.rows;
    const { sizes, most, ways } = this;
    most.fill(0);
    ways.fill(0);
    for (let type = 0; type < this.typeCount; type += 1) {
      let size = 0;
      if (!shut[type]) {
        for (let word = 0; word < words; word += 1) {
          size += bitCount((masks[type * words + word] as number) & (open[word] as number));
        }
      }
      sizes[type] = size;
      if (size === 0) continue;
      for (let word = 0; word < words; word += 1) {
        let bits = (masks[type * words + word] as number) & (open[word] as number);
        while (bits !== 0) {
          const row = word * 32 + (31 - Math.clz32(bits & -bits));
          bits &= bits - 1;
          ways[row] = (ways[row] as number) + 1;
          if (size > (most[row] as number)) most[row] = size;
        }
      }
    }
    let fewest = -1;
    let sum = 0;
    for (let row = 0; row < count; row += 1) {
      if (!isOpen(open, row)) continue;
      if (ways[row] === 0) return { bound: Number.POSITIVE_INFINITY, branch: [] };
      sum += 1 / (most[row] as number);
      if (fewest === -1 || (ways[row] as number) < (ways[fewest] as number)) fewest = row;
    }
    let bound = Math.ceil(sum - 1e-6);
    if (bound <= atMost) bound = Math.max(bound, this.raised(open, shut));
    if (bound > atMost || fewest === -1) return { bound, branch: [] };
    const branch = (types[fewest] as number[]).filter((type) => (sizes[type] as number) > 0 && !shut[type]);
    branch.sort((a, b) => (sizes[b] as number) - (sizes[a] as number) || a - b);
    return { bound, branch };
  }

  /** The bound with weights raised row by row to the least room that any of the row's types leaves. */
  private raised(open: Int32Array, shut: readonly boolean[]): number {
    const { types, count } = this.rows;
    const { sizes, most, room, weights, ways } = this;
    room.fill(1);
    const order: number[] = [];
    for (let row = 0; row < count; row += 1) {
      if (!isOpen(open, row)) continue;
      order.push(row);
      weights[row] = 1 / (most[row] as number);
      for (const type of types[row] as number[])
        room[type] = (room[type] as number) - (weights[row] as number);
    }
    // rows with few ways gain most from what is left
    order.sort((a, b) => (ways[a] as number) - (ways[b] as number));
    let sum = 0;
    for (const row of order) {
      let least = Number.POSITIVE_INFINITY;
      for (const type of types[row] as number[]) {
        if (!shut[type] && (sizes[type] as number) > 0) least = Math.min(least, room[type] as number);
      }
      if (least > 1e-9) {
        for (const type of types[row] as number[]) room[type] = (room[type] as number) - least;
        weights[row] = (weights[row] as number) + least;
      }
      sum += weights[row] as number;
    }
    return Math.ceil(sum - 1e-6);
  }
}

function isOpen(open: Int32Array, row: number): boolean {
  return ((open[row >>> 5] as number) & (1 << (row & 31))) !== 0;
}
