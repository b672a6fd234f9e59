'use client';

import { type KeyboardEvent, useCallback, useState } from 'react';
import { flushSync } from 'react-dom';
import type { BenchAct, Fault } from '@/lib/bench/act';
import {
  type Direction,
  NOTHING_TYPED,
  neighbour,
  nextLine,
  type Typed,
  typeDigit,
  typedFigure,
} from '@/lib/bench/typing';
import type { BenchLine } from './bench-subject';

/** One letter a fault, as the keys on screen say it. */
export const FAULT_KEYS: Record<string, Fault> = {
  b: 'bent',
  l: 'blunt',
  c: 'corroded',
  s: 'stained',
  m: 'markingGone',
  w: 'boreWorn',
};

const ARROWS: Record<string, Direction> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

export interface LineKeys {
  typed: Typed;
  /** A fault named of the line in hand, while it is asked where the piece goes. */
  faulty: Fault | null;
  digit: (digit: string) => void;
  wide: () => void;
  erase: () => void;
  take: () => void;
  fault: (condition: Fault) => void;
  route: (route: 'repair' | 'discard' | null) => void;
  choose: (lineId: string) => void;
  onKeyDown: (event: KeyboardEvent) => void;
}

/** The keys of the bench: digits count the line in hand and go on, letters name what is wrong with a piece of it. */
export function useLineKeys({
  line,
  order,
  rows,
  isCounted,
  enter,
  onLine,
  onLayer,
  onUndo,
  onRefill,
}: {
  line: BenchLine | null;
  order: readonly string[];
  rows: readonly (readonly (string | null)[])[];
  isCounted: (lineId: string) => boolean;
  enter: (act: BenchAct) => unknown;
  onLine: (lineId: string) => void;
  onLayer: (by: 1 | -1) => void;
  onUndo: () => void;
  onRefill: () => void;
}): LineKeys {
  const [typed, setTyped] = useState<Typed>(NOTHING_TYPED);
  const [faulty, setFaulty] = useState<Fault | null>(null);

  const state = useCallback(
    (figure: number) => {
      if (!line) return;
      enter({ kind: 'found', lineId: line.id as never, pieces: figure });
      setTyped(NOTHING_TYPED);
      setFaulty(null);
    },
    [line, enter],
  );

  /** What was typed so far becomes the figure: nothing is lost by leaving the line. */
  const settle = useCallback(() => {
    const figure = typedFigure(typed);
    if (figure !== null) state(figure);
    setFaulty(null);
  }, [typed, state]);

  const goOn = useCallback(
    (from: string) => {
      const next = nextLine(order, from, (id) => id === from || isCounted(id));
      if (next !== from) onLine(next);
    },
    [order, isCounted, onLine],
  );

  const digit = useCallback(
    (one: string) => {
      if (!line) return;
      const after = typeDigit(typed, one, line.expected);
      setTyped(after.typed);
      if (after.figure === null) return;
      state(after.figure);
      goOn(line.id);
    },
    [line, typed, state, goOn],
  );

  const take = useCallback(() => {
    if (!line) return;
    const figure = typedFigure(typed);
    if (figure !== null) state(figure);
    goOn(line.id);
  }, [line, typed, state, goOn]);

  const erase = useCallback(() => {
    if (typed.digits !== '' || typed.wide) return setTyped(NOTHING_TYPED);
    const at = line ? order.indexOf(line.id) : 0;
    const before = order[at - 1];
    if (before) onLine(before);
  }, [typed, line, order, onLine]);

  const route = useCallback(
    (where: 'repair' | 'discard' | null) => {
      if (line && faulty && where)
        enter({ kind: 'fault', lineId: line.id as never, pieces: 1, condition: faulty, route: where });
      setFaulty(null);
    },
    [line, faulty, enter],
  );

  const fault = useCallback(
    (condition: Fault) => {
      if (!line) return;
      const [only, ...more] = line.routes;
      if (only && more.length === 0)
        enter({ kind: 'fault', lineId: line.id as never, pieces: 1, condition, route: only });
      else setFaulty(condition);
    },
    [line, enter],
  );

  const choose = useCallback(
    (lineId: string) => {
      if (lineId !== line?.id) settle();
      onLine(lineId);
    },
    [line, settle, onLine],
  );

  const wide = useCallback(() => setTyped((now) => ({ ...now, wide: true })), []);

  const step = useCallback(
    (direction: Direction) => {
      const next = line ? neighbour(rows, line.id, direction) : null;
      if (next) choose(next);
    },
    [line, rows, choose],
  );

  /** What a key does here, or nothing: then it is the browser's. */
  const doing = useCallback(
    (key: string): (() => void) | null => {
      const letter = key.toLowerCase();
      const direction = ARROWS[key];
      const condition = FAULT_KEYS[letter];
      if (/^\d$/.test(key)) return () => digit(key);
      if (direction) return () => step(direction);
      if (key === 'Enter' || key === ' ') return take;
      if (key === 'Backspace') return erase;
      if (key === '+') return wide;
      if (key === 'Escape') return faulty ? () => setFaulty(null) : null;
      if (key === 'PageDown' || key === 'PageUp')
        return () => {
          settle();
          onLayer(key === 'PageDown' ? 1 : -1);
        };
      if (faulty && (letter === 'r' || letter === 'd'))
        return () => route(letter === 'r' ? 'repair' : 'discard');
      if (condition) return () => fault(condition);
      return { u: onUndo, f: onRefill }[letter] ?? null;
    },
    [faulty, digit, step, take, erase, wide, settle, onLayer, route, fault, onUndo, onRefill],
  );

  const onKeyDown = useCallback(
    (event: KeyboardEvent) => {
      const { key, altKey, metaKey, ctrlKey } = event;
      if (altKey || metaKey || (ctrlKey && key !== 'z')) return;
      const act = ctrlKey ? onUndo : doing(key);
      if (!act) return;
      event.preventDefault();
      // keys held back while they might have been a scan come all at once: each must see what the one before did
      flushSync(act);
    },
    [doing, onUndo],
  );

  return { typed, faulty, digit, wide, erase, take, fault, route, choose, onKeyDown };
}
