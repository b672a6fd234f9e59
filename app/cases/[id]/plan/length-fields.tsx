'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { NumberField } from '@/app/_ui/number-field';
import { TextField } from '@/app/_ui/text-field';
import { defaultSpreadsFor } from '@/lib/plans/defaultSpreads';
import type { Construct, PlannedLength } from '@/lib/plans/plan';
import { madeLengthsUm, type ScrewFamily } from '@/lib/plans/planCatalogue';
import { readLength, writeLength } from '@/lib/plans/readLength';
import { writeMm } from '@/lib/quantities/length';
import { plainMm } from '@/lib/wording/plans';
import styles from './planner.module.css';

/**
 * A screw's length: typed (`16`, or `22±2`), or one of the lengths made, or a published spread with its source. The
 * lengths made are all shown, in order, and none of them is marked.
 */
export function LengthFields({
  prefix,
  region,
  family,
  length,
  acceptLongerMm,
  onLength,
  onAcceptLonger,
}: {
  prefix: string;
  region: Construct['region'];
  family: ScrewFamily | null;
  /** `undefined` where the chosen holes differ. */
  length: PlannedLength | undefined;
  acceptLongerMm: number | undefined;
  onLength: (length: PlannedLength) => void;
  onAcceptLonger: (mm: number) => void;
}) {
  const stated = length ? writeLength(length) : '';
  const [typed, setTyped] = useState({ text: stated, stated });
  // A length set elsewhere (a shortcut, the table, undo) shows here, unless it is what was typed.
  if (typed.stated !== stated) setTyped({ text: stated, stated });
  const read = readLength(typed.text);
  const made = family ? madeLengthsUm(family) : [];

  function type(text: string) {
    const next = readLength(text);
    setTyped({ text, stated: next.ok ? writeLength(next.length) : typed.stated });
    if (next.ok) onLength(next.length);
  }
  return (
    <div className={styles.lengths}>
      <div className={styles.lengthRow}>
        <TextField
          name={`${prefix}-length`}
          label="Length, mm"
          hint={length === undefined ? 'The chosen holes differ.' : 'A number, or a mean and spread: 22±2'}
          width="number"
          value={typed.text}
          onValue={type}
          problems={read.ok ? [] : [read.sentence]}
        />
        <NumberField
          name={`${prefix}-longer`}
          label="Longer accepted"
          unit="mm"
          stepper
          whole
          min={0}
          max={10}
          value={acceptLongerMm === undefined ? '' : String(acceptLongerMm)}
          onValue={(text) => {
            if (/^(10|\d)$/.test(text)) onAcceptLonger(Number(text));
          }}
        />
      </div>
      {length?.kind === 'spread' && length.sourceNote ? (
        <p className={styles.soft}>Spread from: {length.sourceNote}</p>
      ) : null}
      {made.length > 0 ? (
        <fieldset className={styles.made}>
          <legend className={styles.smallLegend}>Made in, mm</legend>
          {made.map((um) => (
            <Button
              key={um}
              size="small"
              className={styles.madeLength}
              aria-pressed={length?.kind === 'exact' && length.mm * 1000 === um}
              onClick={() => onLength({ kind: 'exact', mm: um / 1000 })}
            >
              {writeMm(um)}
            </Button>
          ))}
        </fieldset>
      ) : null}
      {defaultSpreadsFor(region).map((spread) => (
        <div key={spread.id} className={styles.spread}>
          <Button
            size="small"
            onClick={() =>
              onLength({
                kind: 'spread',
                meanMm: spread.meanMm,
                sdMm: spread.sdMm,
                sourceNote: spread.source,
              })
            }
          >
            {`${spread.name}: ${plainMm(spread.meanMm)} ± ${plainMm(spread.sdMm)} mm`}
          </Button>
          <span className={styles.soft}>
            range {spread.rangeMm.join(' to ')} mm; {spread.source}
          </span>
        </div>
      ))}
    </div>
  );
}
