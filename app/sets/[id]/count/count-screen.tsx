'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useMemo, useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { ProblemSummary } from '@/app/_ui/problem-summary';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { Status } from '@/app/_ui/status';
import { showToast } from '@/app/_ui/toast';
import { useUrlParam } from '@/app/_ui/url-state';
import { countFrom, draftProblems, progressOf, recountDiffering } from '@/lib/sets/countDraft';
import { sendJson } from '../../_parts/send-json';
import { ConflictPanel, type HeldByOther } from './conflict-panel';
import styles from './count.module.css';
import type { CountSubject } from './count-subject';
import { ForeignPieces } from './foreign-pieces';
import { LayerCount } from './layer-count';
import { NumberPad } from './number-pad';
import { ShortagePanel } from './shortage-panel';
import { newCountId, useCount } from './use-count';

/** Counting one set by hand, one layer at a time. */
export function CountScreen({ subject, personId }: { subject: CountSubject; personId: string }) {
  const { set, lines, layers } = subject;
  const setId = set.id;
  const router = useRouter();
  const lineIds = useMemo(() => lines.map(({ id }) => id), [lines]);
  const count = useCount(set.id, personId, set.revision, subject.foreign, lineIds);
  const { draft, ready, kept, enter } = count;
  const byId = useMemo(() => new Map(lines.map((line) => [line.id, line])), [lines]);
  const [chosen, setChosen] = useUrlParam('layer', String(layers[0]?.layer ?? 1));
  const [shown, setShown] = useState<{ path: string; sentence: string }[]>([]);
  const [sending, setSending] = useState(false);
  const [conflict, setConflict] = useState<HeldByOther | null>(null);
  const problems = useMemo(
    () =>
      new Map(
        shown.flatMap(({ path, sentence }) =>
          path.startsWith('found-') ? [[path.slice(6), sentence] as const] : [],
        ),
      ),
    [shown],
  );

  // A count begun before someone else changed the set: ask what stands now, and show both.
  const stale = ready && kept && draft.baseRevision !== set.revision;
  useEffect(() => {
    if (!stale) return;
    let left = false;
    fetch(`/api/sets/${setId}/counts`, { cache: 'no-store' })
      .then((answer) => (answer.ok ? (answer.json() as Promise<HeldByOther>) : null))
      .then(
        (theirs) => {
          if (!left && theirs) setConflict(theirs);
        },
        () => undefined, // saving will say it
      );
    return () => {
      left = true;
    };
  }, [stale, setId]);

  if (!ready) return <Skeleton lines={8} label="Preparing the count" />;
  const progress = progressOf(draft, lines);
  const layer = layers.find((one) => String(one.layer) === chosen) ?? layers[0];
  const at = layer ? layers.indexOf(layer) : 0;
  const next = layers[at + 1];
  const counted = progress.filter((row) => row.counted > 0);
  const whole = progress.filter((row) => row.counted === row.lines);
  const nothing = counted.length === 0;

  async function save(): Promise<void> {
    const found = draftProblems(draft, lines).map(({ lineId, message }) => ({
      path: `found-${lineId}`,
      sentence: `${byId.get(lineId)?.name ?? lineId} (layer ${byId.get(lineId)?.layer}): ${message}`,
    }));
    if (nothing) found.unshift({ path: '', sentence: 'Nothing is counted yet: count one layer whole.' });
    setShown(found);
    if (found.length > 0) {
      const first = found.find(({ path }) => path !== '');
      const inLayer = first ? byId.get(first.path.slice(6))?.layer : undefined;
      if (inLayer !== undefined && !found.some(({ path }) => byId.get(path.slice(6))?.layer === layer?.layer))
        setChosen(String(inLayer));
      return;
    }
    setSending(true);
    try {
      const answer = await sendJson<unknown, HeldByOther>(`/api/sets/${set.id}/counts`, countFrom(draft));
      if (answer.ok) {
        count.done();
        showToast({
          tone: 'good',
          word: 'Count recorded',
          text: `${set.code}: ${whole.length} of ${layers.length} layers counted.`,
        });
        router.push(`/sets/${set.id}`);
        router.refresh();
        return;
      }
      if (answer.current) setConflict(answer.current);
      else
        setShown(
          answer.problems.length > 0
            ? answer.problems.map(({ sentence }) => ({ path: '', sentence }))
            : [{ path: '', sentence: answer.sentence }],
        );
    } catch {
      setShown([
        {
          path: '',
          sentence:
            'The server can’t be reached. The count is kept in this browser: save it again in a moment.',
        },
      ]);
    } finally {
      setSending(false);
    }
  }

  if (conflict) {
    return (
      <ConflictPanel
        draft={draft}
        theirs={conflict}
        lines={byId}
        onDiscard={() => {
          count.discard();
          count.done();
          router.push(`/sets/${set.id}`);
          router.refresh();
        }}
        onRecount={() => {
          count.setDraft((now) => recountDiffering(now, conflict, newCountId()));
          setConflict(null);
          setShown([]);
        }}
      />
    );
  }

  return (
    <div className={styles.screen}>
      {kept ? (
        <p className={styles.kept}>
          <Status tone="neutral">Taken up again</Status> What was entered before is kept in this browser.{' '}
          <ConfirmDialog
            title="Discard this count?"
            confirm="Discard what was entered"
            danger
            trigger={{ label: 'Begin afresh', kind: 'quiet' }}
            onConfirm={() => {
              count.discard();
              setShown([]);
              return undefined;
            }}
          >
            <p>Everything entered for {set.code} and not saved is lost.</p>
          </ConfirmDialog>
        </p>
      ) : null}
      <ProblemSummary problems={shown} />
      <nav aria-label="Layers" className={styles.layers}>
        {layers.map((one) => {
          const row = progress.find((counting) => counting.layer === one.layer);
          const done = row !== undefined && row.counted === row.lines;
          return (
            <button
              key={one.layer}
              type="button"
              className={styles.layerKey}
              aria-current={one === layer ? 'step' : undefined}
              onClick={() => setChosen(String(one.layer))}
            >
              <span>{`Layer ${one.layer}: ${one.name}`}</span>
              <Status tone={done ? 'good' : row?.counted ? 'attention' : 'unknown'} look="plain">
                {`${row?.counted ?? 0} of ${row?.lines ?? 0} lines`}
              </Status>
            </button>
          );
        })}
      </nav>
      {layer ? (
        <Section
          title={`Layer ${layer.layer}: ${layer.name}`}
          note="a layer is counted whole; other layers may be left"
        >
          <LayerCount
            key={layer.layer}
            layer={layer}
            draft={draft}
            lines={byId}
            problems={problems}
            enter={(lineId, change) => {
              enter(lineId, change);
              setShown((now) => now.filter(({ path }) => path !== `found-${lineId}` && path !== ''));
            }}
          />
        </Section>
      ) : null}
      <ShortagePanel setId={set.id} draft={draft} />
      <ForeignPieces
        pieces={draft.foreign}
        known={subject.foreign}
        items={subject.items}
        onPieces={count.setForeign}
      />
      <div className={styles.foot}>
        <NumberPad enter={(lineId, found) => enter(lineId, { found })} />
        <div className={styles.acts}>
          <p role="status">{`${whole.length} of ${layers.length} layers counted whole`}</p>
          {next ? (
            <Button
              size="bench"
              data-layer-end=""
              onClick={() => {
                setChosen(String(next.layer));
                window.scrollTo({ top: 0 });
              }}
            >
              {`Go to layer ${next.layer}`}
            </Button>
          ) : null}
          <Button
            kind="primary"
            size="bench"
            data-layer-end={next ? undefined : ''}
            pending={sending}
            onClick={save}
          >
            Record the count
          </Button>
        </div>
      </div>
    </div>
  );
}
