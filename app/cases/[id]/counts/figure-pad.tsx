'use client';

import type { Typed } from '@/lib/bench/typing';
import type { CountMoment } from '@/lib/theatreCounts/act';
import styles from './counts.module.css';
import type { CountRow } from './use-theatre-count';

/** What the next figure says of the line in hand. */
export type FigureMode = 'counted' | 'implanted' | 'discarded';

const MODE_WORDS: Record<FigureMode, string> = {
  counted: 'Here now',
  implanted: 'Implanted',
  discarded: 'Thrown away',
};

/** The keys of a figure, for gloves: one digit counts a line and goes on; `##` first where there are ten or more. */
export function FigurePad({
  row,
  moment,
  mode,
  typed,
  onMode,
  onDigit,
  onWide,
  onErase,
}: {
  row: CountRow;
  moment: CountMoment;
  mode: FigureMode;
  typed: Typed;
  onMode: (mode: FigureMode) => void;
  onDigit: (digit: string) => void;
  onWide: () => void;
  onErase: () => void;
}) {
  const modes: FigureMode[] = row.implant ? ['counted', 'implanted', 'discarded'] : ['counted', 'discarded'];
  return (
    <section
      className={styles.panel}
      aria-label="Line in hand"
      onPointerDown={(event) => event.preventDefault()}
    >
      <p className={styles.inHand}>
        <strong>{row.name}</strong>
        <span className={styles.under}>{row.under}</span>
      </p>
      {moment === 'final' ? (
        <fieldset className={styles.modes}>
          <legend className={styles.hidden}>What the figure says</legend>
          {modes.map((one) => (
            <Key key={one} pressed={one === mode} onPress={() => onMode(one)}>
              {MODE_WORDS[one]}
            </Key>
          ))}
        </fieldset>
      ) : null}
      <fieldset className={styles.pad}>
        <legend className={styles.legend}>
          {`${MODE_WORDS[mode]}${typed.digits === '' ? '' : `: ${typed.digits}…`}`}
        </legend>
        {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((one) => (
          <Key key={one} onPress={() => onDigit(one)}>
            {one}
          </Key>
        ))}
        <Key label="Two digits for this line" pressed={typed.wide} onPress={onWide}>
          ##
        </Key>
        <Key onPress={() => onDigit('0')}>0</Key>
        <Key label="Erase" onPress={onErase}>
          ←
        </Key>
      </fieldset>
    </section>
  );
}

function Key({
  children,
  label,
  pressed,
  onPress,
}: {
  children: React.ReactNode;
  label?: string;
  pressed?: boolean;
  onPress: () => void;
}) {
  return (
    <button
      type="button"
      className={styles.key}
      aria-label={label}
      aria-pressed={pressed}
      onMouseDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      {children}
    </button>
  );
}
