'use client';

import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ThumbDrawing } from '@/app/_ui/drawing/ThumbDrawing';
import { SelectField } from '@/app/_ui/select-field';
import { TextField } from '@/app/_ui/text-field';
import { writeMm } from '@/lib/quantities/length';
import { type CountDraft, type LineDraft, NOTHING_ENTERED, piecesFrom } from '@/lib/sets/countDraft';
import { type PieceCondition, pieceCondition } from '@/lib/sets/setState';
import { capitalised } from '@/lib/wording/numbers';
import { CONDITION_WORDS } from '@/lib/wording/sets';
import { ClassMark } from '../../_parts/class-mark';
import { RackTable } from '../../_parts/rack-table';
import styles from './count.module.css';
import type { CountLine, CountSubject } from './count-subject';
import { FoundField } from './found-field';

interface Counting {
  draft: CountDraft;
  lines: ReadonlyMap<string, CountLine>;
  problems: ReadonlyMap<string, string>;
  enter: (lineId: string, change: Partial<LineDraft>) => void;
}

/** One layer to be counted: its racks as grids, then every other line with its drawing. */
export function LayerCount({ layer, ...counting }: Counting & { layer: CountSubject['layers'][number] }) {
  const { draft, lines, problems, enter } = counting;
  return (
    <div className={styles.layer}>
      {layer.racks.map((rack) => (
        <div key={rack.id} className={styles.rackCount}>
          <RackTable
            grid={{ rackItemId: rack.id as never, lengthsUm: rack.lengthsUm, rows: rack.rows }}
            name={rack.name}
            familyName={(family) => family}
            cell={(lineId, family, lengthUm) => {
              const line = lines.get(lineId);
              if (!line) return null;
              return (
                <span className={styles.cell}>
                  <FoundField
                    lineId={lineId}
                    label={`${family}, ${writeMm(lengthUm)} mm: found, ${line.expected} expected`}
                    value={draft.lines[lineId]?.found ?? ''}
                    problem={problems.get(lineId)}
                    onValue={(found) => enter(lineId, { found })}
                  />
                  <span className={styles.of}>of {line.expected}</span>
                  <span id={`problem-${lineId}`} className={styles.hidden}>
                    {problems.get(lineId)}
                  </span>
                </span>
              );
            }}
          />
          <RackUnsound rack={rack} {...counting} />
        </div>
      ))}
      <ul className={styles.lines}>
        {layer.loose.map((lineId) => {
          const line = lines.get(lineId);
          return line ? <LooseLine key={lineId} line={line} {...counting} /> : null;
        })}
      </ul>
    </div>
  );
}

function LooseLine({ line, draft, problems, enter }: Counting & { line: CountLine }) {
  const entered = draft.lines[line.id] ?? NOTHING_ENTERED;
  const pieces = piecesFrom(entered.found);
  const problem = problems.get(line.id);
  return (
    <li className={styles.line} data-state={typeof pieces === 'number' ? 'counted' : 'hollow'}>
      <span className={styles.place}>{`${line.row}·${line.slot}`}</span>
      <span className={styles.thumb}>{line.thumb ? <ThumbDrawing thumb={line.thumb} /> : null}</span>
      <span className={styles.what}>
        <strong>{line.name}</strong>
        <span className={styles.under}>
          {line.code} · <ClassMark mustHaveClass={line.mustHaveClass} />
          {line.partsPerPiece > 1 ? ` · each of ${line.partsPerPiece} parts` : ''}
        </span>
      </span>
      <span className={styles.expected}>
        <span className={styles.under}>expected</span>
        {line.expected}
      </span>
      <span className={styles.entry}>
        <FoundField
          lineId={line.id}
          label={`${line.name}: found, ${line.expected} expected`}
          value={entered.found}
          problem={problem}
          steppers
          onValue={(found) => enter(line.id, { found })}
        />
        <Difference pieces={pieces} expected={line.expected} />
      </span>
      <Unsound line={line} entered={entered} enter={enter} />
      <span id={`problem-${line.id}`} className={styles.problem}>
        {problem}
      </span>
    </li>
  );
}

/** Said only once the line is counted. */
function Difference({ pieces, expected }: { pieces: number | null | undefined; expected: number }) {
  const words =
    typeof pieces !== 'number'
      ? 'not counted'
      : pieces < expected
        ? `${expected - pieces} short`
        : pieces > expected
          ? `${pieces - expected} over`
          : 'as expected';
  return <span className={styles.difference}>{words}</span>;
}

/** Pieces put aside: there, but not fit for use. They are no part of what was found. */
function Unsound({
  line,
  entered,
  enter,
  startsOpen = false,
}: {
  line: Pick<CountLine, 'id' | 'name'>;
  entered: LineDraft;
  enter: Counting['enter'];
  startsOpen?: boolean;
}) {
  const begun = entered.unsound !== '' || entered.condition !== 'sound';
  const [open, setOpen] = useState(startsOpen);
  if (!begun && !open) {
    return (
      <Button kind="quiet" onClick={() => setOpen(true)} aria-label={`Put aside: ${line.name}`}>
        Put aside…
      </Button>
    );
  }
  return (
    <span className={styles.unsound}>
      <TextField
        name={`unsound.${line.id}`}
        label="Put aside"
        hint="not part of found"
        width="number"
        value={entered.unsound}
        onValue={(unsound) => enter(line.id, { unsound })}
      />
      <SelectField
        name={`condition.${line.id}`}
        label="Condition"
        options={pieceCondition.options.map((value) => ({
          value,
          label: capitalised(CONDITION_WORDS[value]),
        }))}
        value={entered.condition}
        onValue={(value) => enter(line.id, { condition: value as PieceCondition })}
      />
      <Button
        kind="quiet"
        aria-label={`Nothing put aside: ${line.name}`}
        onClick={() => {
          enter(line.id, { unsound: '', condition: 'sound' });
          setOpen(false);
        }}
      >
        None
      </Button>
    </span>
  );
}

/** For a rack, pieces put aside are entered below the grid, cell by cell. */
function RackUnsound({
  rack,
  draft,
  lines,
  enter,
}: Counting & { rack: CountSubject['layers'][number]['racks'][number] }) {
  const cells = rack.rows.flatMap(({ cells: own }) => own.flatMap((lineId) => lineId ?? []));
  const [shown, setShown] = useState<string[]>([]);
  const open = cells.filter((lineId) => {
    const entered = draft.lines[lineId];
    return shown.includes(lineId) || (entered && (entered.unsound !== '' || entered.condition !== 'sound'));
  });
  return (
    <div className={styles.rackUnsound}>
      <SelectField
        name={`aside.${rack.id}`}
        label="Put aside a screw of this rack"
        blank="Choose the cell"
        value=""
        options={cells
          .filter((lineId) => !open.includes(lineId))
          .map((lineId) => ({ value: lineId, label: lines.get(lineId)?.name ?? lineId }))}
        onValue={(lineId) => lineId !== '' && setShown([...shown, lineId])}
      />
      {open.map((lineId) => {
        const line = lines.get(lineId);
        return line ? (
          <div key={lineId} className={styles.rackAside}>
            <strong>{line.name}</strong>
            <Unsound line={line} entered={draft.lines[lineId] ?? NOTHING_ENTERED} enter={enter} startsOpen />
          </div>
        ) : null;
      })}
    </div>
  );
}
