'use client';

import { useEffect, useRef, useState } from 'react';
import { NumberField } from '@/app/_ui/number-field';
import { Status } from '@/app/_ui/status';
import type { CountLineShown } from '@/db/queries/shelf/countScreen';
import { FORM_WORDS, heldWords, OWNER_WORDS } from '@/lib/wording/stock';
import styles from '../counts.module.css';

const WHOLE = /^\d{1,5}$/;
const RESTS_MS = 1_500;

/**
 * One heap and its figure, which counts as soon as the field or the page is left, Enter is pressed, or nothing is typed for a
 * moment.
 */
export function FigureRow({
  line,
  figure,
  pending,
  onFigure,
}: {
  line: CountLineShown;
  /** What stands for this line now; `null`: nothing yet. */
  figure: number | null;
  pending: boolean;
  onFigure: (pieces: number) => void;
}) {
  const [text, setText] = useState(figure === null ? '' : String(figure));
  const [wrong, setWrong] = useState(false);
  useEffect(() => {
    if (figure !== null) setText(String(figure));
  }, [figure]);

  function commit(entered: string) {
    const said = entered.trim();
    if (said === '' && figure === null) return setWrong(false);
    if (!WHOLE.test(said)) return setWrong(true);
    setWrong(false);
    if (Number(said) !== figure) onFigure(Number(said));
  }

  // a touch on the keys beside it leaves no field on some tablets: what has rested for a moment counts too
  const latest = useRef(commit);
  useEffect(() => {
    latest.current = commit;
  });
  useEffect(() => {
    if (!WHOLE.test(text.trim())) return;
    const count = () => latest.current(text);
    const resting = setTimeout(count, RESTS_MS);
    // whoever leaves the page in that moment has typed it all the same
    window.addEventListener('pagehide', count);
    return () => {
      clearTimeout(resting);
      window.removeEventListener('pagehide', count);
    };
  }, [text]);

  return (
    <li className={styles.line} data-pending={pending || undefined}>
      <div>
        <p className={styles.name}>{line.name}</p>
        <p className={styles.soft}>{line.code}</p>
      </div>
      <div>
        <p>{`${line.lot === null ? 'no lot stated' : `lot ${line.lot}`}, ${line.useBy === null ? 'no use-by stated' : `use-by ${line.useBy}`}`}</p>
        <p className={styles.soft}>
          {`${FORM_WORDS[line.form]}, ${OWNER_WORDS[line.owner]}${line.held === null ? '' : `, held, because ${heldWords(line.held)}`}`}
        </p>
        {line.added ? <Status tone="attention">not on the list at first</Status> : null}
      </div>
      {/* leaving the field is what makes the figure count; its keys only change what is typed */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: hears what its own field lets through */}
      <div
        onBlur={() => commit(text)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit(text);
        }}
      >
        <NumberField
          name={`figure-${line.id}`}
          label={`Pieces of ${line.name}, ${line.lot === null ? 'no lot' : `lot ${line.lot}`}`}
          hideLabel
          unit="pieces"
          whole
          stepper
          min={0}
          value={text}
          onValue={setText}
          problems={wrong ? ['Whole pieces, 0 where nothing lies.'] : []}
        />
      </div>
    </li>
  );
}
