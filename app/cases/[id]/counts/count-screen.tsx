'use client';

import { useEffect, useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { RefusedEntries } from '@/app/_kit/refused-entries';
import { Button } from '@/app/_ui/button';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { OpenTheatreCount } from '@/db/queries/theatreCounts/countsScreen';
import { NOTHING_TYPED, nextLine, type Typed, typeDigit } from '@/lib/bench/typing';
import type { TheatreAct } from '@/lib/theatreCounts/act';
import { MOMENT_WORDS, theatreCountWords as words } from '@/lib/wording/theatre-counts';
import { AddItem } from './add-item';
import { CloseCount } from './close-count';
import { CountRows } from './count-rows';
import styles from './counts.module.css';
import { type FigureMode, FigurePad } from './figure-pad';
import { ADDED, type CountGroup, type CountRow, useTheatreCount } from './use-theatre-count';

/** Two people's count of what is on the table, set by set. Nothing is filled in, and nothing expected is shown. */
export function CountScreen({
  booked,
  count,
}: {
  booked: { id: string; reference: string };
  count: OpenTheatreCount;
}) {
  const counting = useTheatreCount(count);
  const { state, enter, groups } = counting;
  const [groupId, setGroupId] = useState(groups[0]?.id ?? ADDED);
  const group = groups.find(({ id }) => id === groupId) ?? groups[0];
  const [active, setActive] = useState<string | null>(null);
  const [mode, setMode] = useState<FigureMode>('counted');
  const [problems, setProblems] = useState<string[]>([]);
  const [typed, setTyped] = useState<Typed>(NOTHING_TYPED);
  const rows = group?.rows ?? [];
  const row = rows.find(({ key }) => key === active) ?? rows[0] ?? null;
  const unopened = group?.setId != null && state.notOpened.has(group.setId);
  const figureOf = ({ key, thing }: CountRow): number | null =>
    thing.kind === 'added' && count.moment === 'first'
      ? (state.added.get(thing.key)?.pieces ?? null)
      : (state.counted.get(key) ?? null);
  const leftIn = ({ rows: own, setId }: CountGroup) =>
    setId !== null && state.notOpened.has(setId) ? 0 : own.filter((one) => figureOf(one) === null).length;

  function say(figure: number) {
    if (!row) return;
    enter(actFor(row, mode, figure));
    if (mode !== 'counted') return setMode('counted');
    const order = rows.map(({ key }) => key);
    const counted = (key: string) =>
      key === row.key || figureOf(rows.find((one) => one.key === key) as CountRow) !== null;
    setActive(nextLine(order, row.key, counted));
  }

  function digit(one: string) {
    // nobody is shown what is expected, so no line is taken to be of ten or more unless somebody says so
    const after = typeDigit(typed, one, 1);
    setTyped(after.typed);
    if (after.figure !== null) say(after.figure);
  }
  const wide = () => setTyped({ digits: '', wide: !typed.wide });

  function choose(key: string | null) {
    setActive(key);
    setMode('counted');
    setTyped(NOTHING_TYPED);
  }

  /** What came to the table in the first count is counted by being added. */
  function actFor({ thing, name }: CountRow, how: FigureMode, figure: number): TheatreAct {
    if (thing.kind === 'added' && count.moment === 'first') {
      const itemId = state.added.get(thing.key)?.itemId ?? null;
      return { kind: 'added', key: thing.key, itemId: itemId as never, name, pieces: figure };
    }
    return { kind: how, thing, pieces: figure };
  }

  useEffect(() => {
    const elsewhere = document.activeElement?.closest('[role="dialog"], input, textarea, select');
    if (row && !elsewhere) document.getElementById(`count-${row.key.replace(' ', '-')}`)?.focus();
  }, [row]);

  const check = (): string[] =>
    groups.flatMap((one) => {
      const left = leftIn(one);
      if (left === 0) return [];
      return one.setId === null
        ? one.rows.filter((each) => figureOf(each) === null).map(({ name }) => words.addedLeft(name))
        : [words.linesLeft(one.title, left)];
    });

  return (
    <div className={kitStyles.screen}>
      <ProblemSummary problems={problems.map((sentence) => ({ path: '', sentence }))} />
      <RefusedEntries
        refused={counting.outbox.refused.map(({ item, sentence }) => ({ id: item.id, sentence }))}
        word="Not recorded"
        onRead={counting.dismiss}
      />
      <fieldset className={styles.tabs}>
        <legend className={styles.legend}>{MOMENT_WORDS[count.moment]}</legend>
        {groups.map((one) => (
          <button
            key={one.id}
            type="button"
            className={styles.tab}
            aria-current={one.id === group?.id || undefined}
            onClick={() => {
              setGroupId(one.id);
              choose(null);
            }}
          >
            <span>{one.title}</span>
            <span className={kitStyles.under}>
              {one.setId !== null && state.notOpened.has(one.setId)
                ? 'not opened'
                : `${one.rows.length - leftIn(one)} of ${one.rows.length}`}
            </span>
          </button>
        ))}
      </fieldset>
      {group ? (
        <div className={styles.count}>
          <Section title={group.title}>
            {group.setId === null ? <AddItem count={count} state={state} enter={enter} /> : null}
            {unopened ? (
              <p className={kitStyles.acts}>
                <Status tone="neutral">Not opened</Status>
                <Button
                  size="bench"
                  onClick={() => enter({ kind: 'notOpened', setId: group.setId as never, so: false })}
                >
                  It was opened
                </Button>
              </p>
            ) : (
              <CountRows
                rows={rows}
                active={row?.key ?? null}
                figureOf={figureOf}
                state={state}
                pendingKeys={counting.pendingKeys}
                onChoose={choose}
                onDigit={digit}
                onWide={wide}
              />
            )}
            {group.setId !== null && !unopened && rows.every((one) => figureOf(one) === null) ? (
              <Button
                size="bench"
                onClick={() => enter({ kind: 'notOpened', setId: group.setId as never, so: true })}
              >
                {`${group.title} was not opened`}
              </Button>
            ) : null}
          </Section>
          {row && !unopened ? (
            <FigurePad
              row={row}
              moment={count.moment}
              mode={mode}
              typed={typed}
              onMode={setMode}
              onDigit={digit}
              onWide={wide}
              onErase={() => setTyped(NOTHING_TYPED)}
            />
          ) : null}
        </div>
      ) : null}
      <CloseCount booked={booked} count={count} counting={counting} check={check} onProblems={setProblems} />
    </div>
  );
}
