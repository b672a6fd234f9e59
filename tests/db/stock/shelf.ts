import { eq } from 'drizzle-orm';
import type { Database } from '@/db/client';
import { type HeapKind, putOnHeap } from '@/db/operations/pieces/heaps';
import { recordMoves } from '@/db/operations/pieces/record-moves';
import type { Person } from '@/db/queries/people';
import { type HeapRow, heapAt } from '@/db/queries/shelf/heapAt';
import { people, stock } from '@/db/schema';
import { type NewId, personId, type StockId, stockId } from '@/lib/identity/ids';
import type { Outcome } from '@/lib/identity/refusal';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import { role } from '@/lib/people/role';
import { DEMO_NOW, demoDatabase } from '../../setup/database';

export const codesOf = (outcome: Outcome<unknown, unknown>): string[] =>
  outcome.ok ? [] : outcome.refusal.problems.map(({ code }) => code);

/** The value of a write that must have been done. */
export function done<T>(outcome: Outcome<T, unknown>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal.problems));
  return outcome.value;
}

/** The shelves of the demo and those who keep them; each act a minute after the one before. */
export class Shelf {
  private minutes = 0;
  private made = 0;
  readonly newId: NewId = (prefix) => {
    this.made += 1;
    return `${prefix}_test-${this.made}`;
  };

  private constructor(
    readonly db: Database,
    readonly keeper: Person,
    readonly other: Person,
    readonly lead: Person,
    readonly manager: Person,
    readonly surgeon: Person,
  ) {}

  static async open(): Promise<Shelf> {
    const db = await demoDatabase();
    const person = async (name: string): Promise<Person> => {
      const [row] = await db.read
        .select()
        .from(people)
        .where(eq(people.id, `person_${name}`));
      if (!row) throw new Error(`nobody is called ${name}`);
      return { id: personId.parse(row.id), name: row.name, role: role.parse(row.role) };
    };
    return new Shelf(
      db,
      await person('dilys-harrow'),
      await person('kofi-brandreth'),
      await person('maurice-oduya'),
      await person('gwen-sallis'),
      await person('tobias-wray'),
    );
  }

  now(): string {
    this.minutes += 1;
    return new Date(DEMO_NOW.getTime() + this.minutes * 60_000).toISOString();
  }

  proof(person: Person, meaning: Meaning, at: string): Attestation {
    return { personId: person.id, meaning, method: 'pin', at };
  }

  /** What an act on a heap is asked with, by the revision it has now. */
  async at(id: string, person = this.keeper) {
    const heap = await this.heap(id);
    return {
      db: this.db,
      now: this.now(),
      newId: this.newId,
      person,
      stockId: stockId.parse(id) as StockId,
      baseRevision: heap.row.revision,
    };
  }

  async heap(id: string) {
    const heap = await heapAt(this.db.read, id, DEMO_NOW.toISOString());
    if (!heap) throw new Error(`there is no heap ${id}`);
    return heap;
  }

  /** A heap with a use-by far ahead that lies in the implant cupboard, put there with its move. */
  async putDown(quantity: number, change: Partial<HeapKind> = {}): Promise<HeapRow> {
    const kind: HeapKind = {
      itemId: 'item_sf-l27-24',
      form: 'sterilePacked',
      lot: 'TEST-1',
      useBy: '2027-06-30',
      owner: 'ours',
      lenderId: null,
      placeId: 'place_implant-cupboard',
      ...change,
    };
    const id = await this.db.tx(async (write) => {
      const stockId = await putOnHeap(write, { ...kind, quantity, newId: this.newId });
      const at = this.now();
      await recordMoves(write, [
        { act: 'received', ...kind, quantity, to: { stockId }, personId: null, doneAt: at, enteredAt: at },
      ]);
      return stockId;
    });
    return (await this.heap(id)).row;
  }

  async quantity(id: string): Promise<number> {
    const [row] = await this.db.read.select().from(stock).where(eq(stock.id, id));
    return row?.quantity ?? 0;
  }
}
