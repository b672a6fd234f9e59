import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Delivered, Outbox } from '@/lib/bench/outbox';
import { NOTHING_TYPED, neighbour, nextLine, typeDigit, typedFigure } from '@/lib/bench/typing';

describe('digits', () => {
  it('one key counts a line of fewer than ten, two one of more; the figure is the person’s own', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 0, max: 99 }), (expected, figure) => {
        const digits = expected < 10 ? [figure % 10] : [Math.floor(figure / 10), figure % 10];
        let typed = NOTHING_TYPED;
        let said: number | null = null;
        for (const digit of digits) {
          expect(said).toBeNull();
          ({ typed, figure: said } = typeDigit(typed, String(digit), expected));
        }
        expect(said).toBe(expected < 10 ? figure % 10 : figure);
        expect(typed).toEqual(NOTHING_TYPED);
      }),
    );
  });

  it('a line of a few may be given two digits when asked, and half a figure is taken by Enter', () => {
    const first = typeDigit({ digits: '', wide: true }, '1', 4);
    expect(first.figure).toBeNull();
    expect(typeDigit(first.typed, '2', 4).figure).toBe(12);
    expect(typedFigure(first.typed)).toBe(1);
    expect(typedFigure(NOTHING_TYPED)).toBeNull();
  });
});

describe('going on', () => {
  const order = ['a', 'b', 'c'];
  it.each([
    { from: 'a', counted: 'a', to: 'b' },
    { from: 'c', counted: 'c', to: 'a' },
    { from: 'b', counted: 'abc', to: 'b' },
    { from: 'a', counted: 'ab', to: 'c' },
  ])('from $from with $counted counted to $to', ({ from, counted, to }) => {
    expect(nextLine(order, from, (id) => counted.includes(id))).toBe(to);
  });

  it('arrows keep to the column, pass over gaps, and stop at the edge', () => {
    const rows = [
      ['a', null, 'c'],
      [null, 'e', null],
      ['g', 'h', 'i'],
    ];
    expect(neighbour(rows, 'a', 'right')).toBe('c');
    expect(neighbour(rows, 'c', 'down')).toBe('e');
    expect(neighbour(rows, 'e', 'down')).toBe('h');
    expect(neighbour(rows, 'a', 'up')).toBeNull();
    expect(neighbour(rows, 'i', 'right')).toBeNull();
  });
});

interface Waiting {
  id: string;
}

/** A server that keeps what reaches it, on a network that loses some requests, and some answers after the work is done. */
function shakyServer(fates: readonly ('through' | 'requestLost' | 'answerLost')[]) {
  const stored: string[] = [];
  let tries = 0;
  return {
    stored,
    async send(items: readonly Waiting[]): Promise<Delivered[]> {
      const fate = fates[tries % fates.length] ?? 'through';
      tries += 1;
      if (fate === 'requestLost') throw new Error('lost');
      for (const { id } of items) if (!stored.includes(id)) stored.push(id);
      if (fate === 'answerLost') throw new Error('lost');
      return items.map(({ id }) => ({ id, ok: true, enteredAt: 'now' }));
    },
  };
}

describe('the outbox', () => {
  const fate = fc.constantFrom('through' as const, 'requestLost' as const, 'answerLost' as const);
  it('delivers everything once and in order over any network that sometimes lets something through', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fate, { maxLength: 12 }),
        fc.integer({ min: 1, max: 90 }),
        async (fates, count) => {
          const server = shakyServer([...fates, 'through']);
          const kept = new Map<string, Waiting>();
          const acknowledged: string[] = [];
          const outbox = new Outbox<Waiting>({
            room: {
              all: () => [...kept.values()],
              put: (one) => void kept.set(one.id, one),
              remove: (id) => void kept.delete(id),
            },
            send: (items) => server.send(items),
            wait: async () => undefined,
            onChange: () => undefined,
            onStored: ({ id }) => {
              expect(server.stored).toContain(id);
              acknowledged.push(id);
            },
            order: () => 0,
          });
          const ids = Array.from({ length: count }, (_, at) => `entry_${at}`);
          for (const id of ids) outbox.add({ id });
          await outbox.flush();
          expect(server.stored).toEqual(ids);
          expect(acknowledged).toEqual(ids);
          expect(kept.size).toBe(0);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('takes up after a reload what was not answered, and says what was refused', async () => {
    const kept = new Map([['entry_a', { id: 'entry_a' }]]);
    const outbox = new Outbox<Waiting>({
      room: {
        all: () => [...kept.values()],
        put: (one) => void kept.set(one.id, one),
        remove: (id) => void kept.delete(id),
      },
      send: async (items) =>
        items.map(({ id }) => ({ id, ok: false, because: 'frozen', sentence: 'This count is closed.' })),
      wait: async () => undefined,
      onChange: () => undefined,
      onStored: () => undefined,
      order: () => 0,
    });
    expect(outbox.state.pending).toHaveLength(1);
    await outbox.flush();
    expect(outbox.state).toMatchObject({
      pending: [],
      refused: [{ item: { id: 'entry_a' }, sentence: 'This count is closed.' }],
    });
    outbox.dismiss('entry_a');
    expect(outbox.state.refused).toEqual([]);
  });
});
