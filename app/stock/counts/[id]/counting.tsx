'use client';

import { useState } from 'react';
import { RefusedEntries } from '@/app/_kit/refused-entries';
import { SavedLine } from '@/app/_kit/saved-line';
import { useScans } from '@/app/_scan/use-scans';
import { Section } from '@/app/_ui/section';
import type { CountScreen } from '@/db/queries/shelf/countScreen';
import styles from '../counts.module.css';
import { AddThing, type ScannedThing } from './add-thing';
import { CloseBar } from './close-bar';
import { FigureRow } from './figure-row';
import { lineOfScan } from './line-of-scan';
import { useFigures } from './use-figures';

/** A count under way: every heap that is listed gets a figure, by number or by scanning each pack. */
export function Counting({
  count,
  items,
}: {
  count: CountScreen;
  items: { value: string; label: string }[];
}) {
  const figures = useFigures(count);
  const [said, setSaid] = useState('');
  const [scanned, setScanned] = useState<ScannedThing | null>(null);
  const again = count.part === 'countsAgain';

  useScans(
    ({ meaning }) => {
      const found = lineOfScan(meaning, count.lines);
      switch (found.kind) {
        case 'line': {
          const line = found.line;
          const pieces = figures.more(line, found.pieces);
          setSaid(`${line.name}, ${line.lot === null ? 'no lot' : `lot ${line.lot}`}: ${pieces} counted.`);
          break;
        }
        case 'which':
          setSaid('The code does not say which of several heaps here: enter its figure by hand.');
          break;
        case 'notListed':
          setSaid(
            again
              ? `${found.name} is not counted again.`
              : `${found.name} is not on this list: say what it is below.`,
          );
          if (!again) setScanned(found.thing);
          break;
        case 'nothing':
          setSaid('That is nothing that is counted here.');
      }
      return 'taken';
    },
    { takes: 'everything' },
  );

  const left = count.lines.filter((line) => figures.figureOf(line) === null).length;
  return (
    <div className={styles.screen}>
      <RefusedEntries refused={figures.refused} word="Not taken" onRead={figures.dismiss} />
      <Section
        title={again ? 'Count these again' : 'Count what lies here'}
        note={left === 0 ? 'all have a figure' : `${left} of ${count.lines.length} without a figure`}
      >
        <p className={styles.soft}>
          Count the pieces on this shelf only: what lies with a kit, or beside a set it travels with, is not
          counted here. Where nothing lies, enter 0.
        </p>
        <p className={styles.said} role="status">
          {said}
        </p>
        <ol className={styles.list} aria-label="Heaps to count">
          {count.lines.map((line) => (
            <FigureRow
              key={line.id}
              line={line}
              figure={figures.figureOf(line)}
              pending={figures.waiting.has(line.id)}
              onFigure={(pieces) => figures.enter(line.id, pieces)}
            />
          ))}
        </ol>
      </Section>
      {again ? null : (
        <AddThing
          items={items}
          scanned={scanned}
          waiting={[...figures.waiting.values()].filter(({ kind }) => kind === 'added').length}
          onAdd={(thing) => {
            figures.addThing(thing);
            setScanned(null);
          }}
        />
      )}
      <SavedLine outbox={figures.outbox} />
      <CloseBar count={count} left={left} pending={figures.outbox.pending.length} />
    </div>
  );
}
