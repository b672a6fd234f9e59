'use client';

import { useCallback, useEffect, useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { useUrlParam } from '@/app/_ui/url-state';
import type { BenchEntry } from '@/lib/bench/act';
import { type CountPurpose, closingProblems, isCounted, progressOf } from '@/lib/bench/closing';
import { nextLine } from '@/lib/bench/typing';
import type { SentProblem } from '../../_parts/send-json';
import styles from './bench.module.css';
import type { BenchSubject } from './bench-subject';
import { CloseBar } from './close-bar';
import { ForeignPanel } from './foreign-panel';
import { HomeDialog } from './home-dialog';
import { LayerMap, rowsOf } from './layer-map';
import { LayerTabs } from './layer-tabs';
import type { CellView } from './line-cell';
import { LinePanel } from './line-panel';
import { RefillDialog } from './refill-dialog';
import { ShortagePanel } from './shortage-panel';
import { useBench } from './use-bench';
import { useBenchScans } from './use-bench-scans';
import { useLineKeys } from './use-line-keys';

/**
 * One person's count of one set, a layer at a time. Each entry goes to the server by itself and looks hollow until it is
 * there; nothing is filled in for anybody.
 */
export function BenchScreen({
  countId,
  purpose,
  subject,
  recorded,
  foreign,
  mayRefill,
}: {
  countId: string;
  purpose: CountPurpose;
  subject: BenchSubject;
  recorded: readonly BenchEntry[];
  /** Foreign pieces known from before; nothing where the person is to check blind. */
  foreign: readonly { itemId: string; quantity: number; note: string | null }[];
  mayRefill: boolean;
}) {
  const { lines, layers, set, items } = subject;
  const bench = useBench(countId, recorded);
  const { state, enter } = bench;
  const byId = useMemo(() => new Map(lines.map((line) => [line.id, line])), [lines]);
  const [chosenLayer, setChosenLayer] = useUrlParam('layer', String(layers[0]?.layer ?? 1));
  const layer = layers.find((one) => String(one.layer) === chosenLayer) ?? layers[0];
  const rows = useMemo(() => (layer ? rowsOf(layer) : []), [layer]);
  const order = useMemo(() => rows.flat().filter((id) => id !== null), [rows]);
  const [active, setActive] = useState<string | null>(null);
  const lineId = active && order.includes(active) ? active : (order[0] ?? null);
  const line = lineId ? (byId.get(lineId) ?? null) : null;
  const [problems, setProblems] = useState<SentProblem[]>([]);
  const [dialog, setDialog] = useState<'refill' | 'surplus' | null>(null);
  const problemOf = useMemo(
    () => new Map(problems.map(({ path, sentence }) => [path.replace(/^lines\./, ''), sentence])),
    [problems],
  );

  const counted = useCallback((id: string) => isCounted(state.lines.get(id)), [state]);
  const last = state.standing.findLast(({ act }) => act.kind !== 'refill') ?? null;
  const undo = useCallback(() => {
    if (last) enter({ kind: 'undo', entryId: last.id as never });
  }, [last, enter]);
  const toLine = useCallback(
    (id: string) => {
      const where = byId.get(id)?.layer;
      if (where !== undefined) setChosenLayer(String(where));
      setActive(id);
    },
    [byId, setChosenLayer],
  );
  const toLayer = useCallback(
    (by: 1 | -1) => {
      const next = layers[(layer ? layers.indexOf(layer) : 0) + by];
      if (!next) return;
      // going on from a layer that is counted says that it was looked over as a whole
      const whole = layer && rowsOf(layer).every((row) => row.every((id) => id === null || counted(id)));
      if (by === 1 && layer && whole && purpose !== 'settle' && !state.looked.has(layer.layer))
        enter({ kind: 'looked', layer: layer.layer });
      const own = rowsOf(next)
        .flat()
        .filter((id) => id !== null);
      setChosenLayer(String(next.layer));
      setActive(counted(own[0] ?? '') ? nextLine(own, own[0] ?? '', counted) : (own[0] ?? null));
    },
    [layers, layer, counted, setChosenLayer, purpose, state.looked, enter],
  );
  const onRefill = useCallback(() => mayRefill && setDialog('refill'), [mayRefill]);
  const keys = useLineKeys({
    line,
    order,
    rows,
    isCounted: counted,
    enter,
    onLine: toLine,
    onLayer: toLayer,
    onUndo: undo,
    onRefill,
  });
  const scanned = useBenchScans({ countId, lines, lineId, state, enter, onLine: toLine, set });

  // the map has the focus from the beginning, after each line, and again once a dialog is closed
  useEffect(() => {
    if (dialog === null && lineId) {
      const cell = document.getElementById(`cell-${lineId}`);
      const elsewhere = document.activeElement?.closest('[role="dialog"], input, textarea, select');
      if (cell && !elsewhere) cell.focus();
    }
  }, [lineId, dialog]);

  const progress = progressOf(state, lines);
  const disputed = purpose === 'settle' ? new Set(lines.map(({ id }) => id)) : null;
  const view = (id: string): CellView | null => {
    const own = byId.get(id);
    return own
      ? {
          line: own,
          state: state.lines.get(id),
          pending: bench.pendingLines.has(id),
          active: id === lineId,
          typed: keys.typed.digits,
          problem: problemOf.get(id),
          onChoose: keys.choose,
        }
      : null;
  };
  const check = (): SentProblem[] =>
    closingProblems(state, lines, disputed).map(({ path, message }) => {
      const about = byId.get(String(path[1] ?? ''));
      return {
        path: path.join('.'),
        sentence: about ? `${about.name} (layer ${about.layer}, ${about.place}): ${message}` : message,
      };
    });
  const whole = progress.find((row) => row.layer === layer?.layer);
  const layerDone = whole !== undefined && whole.counted === whole.lines;
  const next = layer ? layers[layers.indexOf(layer) + 1] : undefined;

  return (
    <div className={styles.screen}>
      <ProblemSummary problems={problems.map(({ sentence }) => ({ path: '', sentence }))} />
      {bench.outbox.refused.map(({ item, sentence }) => (
        <p key={item.id} role="alert" className={styles.refused}>
          <Status tone="stop">Not recorded</Status> {sentence}
          <Button size="bench" onClick={() => bench.dismiss(item.id)}>
            I have read it
          </Button>
        </p>
      ))}
      <LayerTabs
        layers={layers}
        progress={progress}
        current={layer?.layer ?? null}
        onLayer={setChosenLayer}
      />
      <div className={styles.bench}>
        <div className={styles.mapColumn}>
          {layer ? (
            <Section
              title={`Layer ${layer.layer}: ${layer.name}`}
              note={
                purpose === 'settle'
                  ? 'the lines on which two counts differ'
                  : 'a layer is counted whole; other layers may be left'
              }
            >
              {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys of the cells inside, caught once for all of them */}
              <div onKeyDown={keys.onKeyDown}>
                <LayerMap layer={layer} view={view} />
              </div>
              {layerDone && next ? (
                <p className={styles.layerDone}>
                  <Status tone="good">Layer counted</Status>
                  <Button size="bench" onClick={() => toLayer(1)}>{`Go on with layer ${next.layer}`}</Button>
                </p>
              ) : null}
            </Section>
          ) : null}
          <p className={styles.keysLine}>
            Digits count the line in hand and go on · arrows move · a letter puts a piece aside · Backspace
            goes back · Page Down: next layer · <u>f</u> refills · <u>u</u> undoes. Scanning a piece adds one
            to its line.
          </p>
          <p role="status" className={styles.scanned}>
            {scanned}
          </p>
        </div>
        <LinePanel
          line={line}
          state={lineId ? state.lines.get(lineId) : undefined}
          pending={lineId !== null && bench.pendingLines.has(lineId)}
          keys={keys}
          mayRefill={mayRefill}
          onRefill={onRefill}
          onSurplus={() => setDialog('surplus')}
          onUndo={undo}
          canUndo={last !== null}
        />
      </div>
      <ShortagePanel
        countId={countId}
        state={state}
        uncounted={lines.filter(({ id }) => !counted(id)).length}
      />
      {purpose === 'settle' ? null : (
        <ForeignPanel countId={countId} state={state} known={foreign} items={items} enter={enter} />
      )}
      <CloseBar
        countId={countId}
        set={set}
        purpose={purpose}
        bench={bench}
        check={check}
        onProblems={setProblems}
      />
      {dialog === 'refill' && line ? (
        <RefillDialog
          key={line.id}
          countId={countId}
          line={line}
          short={line.expected - (state.lines.get(line.id)?.found ?? line.expected)}
          open
          onOpen={(open) => setDialog(open ? 'refill' : null)}
          makeEntry={bench.makeEntry}
          onDone={bench.takeUp}
        />
      ) : null}
      {dialog === 'surplus' && line ? (
        <HomeDialog
          countId={countId}
          itemId={line.itemId}
          name={line.name}
          most={Math.max(1, (state.lines.get(line.id)?.found ?? 0) - line.expected)}
          open
          onOpen={(open) => setDialog(open ? 'surplus' : null)}
          onHome={(pieces, home) => enter({ kind: 'surplusHome', lineId: line.id as never, pieces, home })}
        />
      ) : null}
    </div>
  );
}
