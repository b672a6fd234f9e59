'use client';

import { ThumbDrawing } from '@/app/_ui/drawing/ThumbDrawing';
import { Status } from '@/app/_ui/status';
import type { LineState } from '@/lib/bench/state';
import { FAULT_WORDS, ROUTE_WORDS } from '@/lib/wording/bench';
import { capitalised } from '@/lib/wording/numbers';
import { ClassMark } from '../../_parts/class-mark';
import styles from './bench.module.css';
import type { BenchLine } from './bench-subject';
import { lineWords } from './line-cell';
import { FAULT_KEYS, type LineKeys } from './use-line-keys';

/**
 * The line in hand, with everything that can be said of it by touch. Keys leave the focus on the map, so that touch,
 * keyboard and scanner can be used by turns.
 */
export function LinePanel({
  line,
  state,
  pending,
  keys,
  mayRefill,
  onRefill,
  onSurplus,
  onUndo,
  canUndo,
}: {
  line: BenchLine | null;
  state: LineState | undefined;
  pending: boolean;
  keys: LineKeys;
  mayRefill: boolean;
  onRefill: () => void;
  onSurplus: () => void;
  onUndo: () => void;
  canUndo: boolean;
}) {
  if (!line) return null;
  const over = (state?.found ?? 0) > line.expected;
  return (
    <section className={styles.panel} aria-label="Line in hand" onPointerDown={keepFocus}>
      <div className={styles.inHand}>
        <span className={styles.panelThumb}>{line.thumb ? <ThumbDrawing thumb={line.thumb} /> : null}</span>
        <div>
          <strong>{line.name}</strong>
          <span className={styles.under}>
            {line.code} · {line.place}
            {line.partsPerPiece > 1 ? ` · each of ${line.partsPerPiece} parts` : ''}
          </span>
          <span className={styles.under}>
            <ClassMark mustHaveClass={line.mustHaveClass} />
          </span>
          <span className={styles.under} role="status">
            {capitalised(lineWords({ line, state, pending }))}
          </span>
        </div>
      </div>
      <fieldset className={styles.pad}>
        <legend className={styles.hidden}>Pieces found</legend>
        {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((one) => (
          <Key key={one} onPress={() => keys.digit(one)}>
            {one}
          </Key>
        ))}
        <Key label="Two digits for this line" pressed={keys.typed.wide} onPress={keys.wide}>
          10+
        </Key>
        <Key onPress={() => keys.digit('0')}>0</Key>
        <Key label="Erase, or the line before" onPress={keys.erase}>
          ←
        </Key>
      </fieldset>
      {keys.faulty ? (
        <fieldset className={styles.faults}>
          <legend>{`One piece ${FAULT_WORDS[keys.faulty]}: where does it go?`}</legend>
          {line.routes.map((route) => (
            <Key key={route} onPress={() => keys.route(route)} wide>
              {route === 'repair' ? <u>R</u> : <u>D</u>}
              {route === 'repair' ? 'epair' : 'iscard'}
            </Key>
          ))}
          <Key onPress={() => keys.route(null)} wide>
            Neither
          </Key>
        </fieldset>
      ) : (
        <fieldset className={styles.faults}>
          <legend>Put one piece aside</legend>
          {Object.entries(FAULT_KEYS).map(([letter, condition]) => (
            <Key key={condition} onPress={() => keys.fault(condition)} wide>
              <Marked letter={letter} word={FAULT_WORDS[condition]} />
            </Key>
          ))}
        </fieldset>
      )}
      {state?.aside.length ? (
        <p className={styles.asides}>
          <Status tone="attention" look="plain">
            {state.aside
              .map(
                ({ pieces, condition, route }) =>
                  `${pieces} ${FAULT_WORDS[condition]}, ${ROUTE_WORDS[route]}`,
              )
              .join('; ')}
          </Status>
        </p>
      ) : null}
      <div className={styles.panelActs}>
        {mayRefill ? (
          <Key onPress={onRefill} wide>
            Re<u>f</u>ill…
          </Key>
        ) : null}
        {over ? (
          <Key onPress={onSurplus} wide>
            Take surplus home…
          </Key>
        ) : null}
        <Key onPress={onUndo} wide disabled={!canUndo}>
          <u>U</u>ndo the last entry
        </Key>
      </div>
    </section>
  );
}

/** The letter that does it, underlined in the word. */
function Marked({ letter, word }: { letter: string; word: string }) {
  const at = word.toLowerCase().indexOf(letter);
  return (
    <span>
      {word.slice(0, at)}
      <u>{word.slice(at, at + 1)}</u>
      {word.slice(at + 1)}
    </span>
  );
}

/** A press leaves the focus where it is, on the map; keyboards have letters and digits for all of this. */
const keepFocus = (event: React.PointerEvent) => event.preventDefault();

function Key({
  children,
  label,
  onPress,
  wide = false,
  pressed,
  disabled = false,
}: {
  children: React.ReactNode;
  label?: string;
  onPress: () => void;
  wide?: boolean;
  pressed?: boolean;
  disabled?: boolean;
}) {
  return (
    <button
      type="button"
      className={wide ? styles.wideKey : styles.key}
      aria-label={label}
      aria-pressed={pressed}
      disabled={disabled}
      onMouseDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      {children}
    </button>
  );
}
