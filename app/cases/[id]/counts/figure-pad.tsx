'use client';

import { useState } from 'react';
import { NOTHING_TYPED, type Typed, typeDigit } from '@/lib/bench/typing';
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
  onMode,
  onFigure,
}: {
  row: CountRow;
  moment: CountMoment;
  mode: FigureMode;
  onMode: (mode: FigureMode) => void;
  onFigure: (figure: number) => void;
}) {
  const [typed, setTyped] = useState<Typed>(NOTHING_TYPED);
  function digit(one: string): void {
    // nobody is shown what is expected, so no line is taken to be of ten or more unless somebody says so
    const after = typeDigit(typed, one, 1);
    setTyped(after.typed);
    if (after.figure !== null) onFigure(after.figure);
  }
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
          <Key key={one} onPress={() => digit(one)}>
            {one}
          </Key>
        ))}
        <Key
          label="Two digits for this line"
          pressed={typed.wide}
          onPress={() => setTyped({ digits: '', wide: !typed.wide })}
        >
          ##
        </Key>
        <Key onPress={() => digit('0')}>0</Key>
        <Key label="Erase" onPress={() => setTyped(NOTHING_TYPED)}>
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
