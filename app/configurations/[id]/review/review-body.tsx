import { Suspense } from 'react';
import { pageFirst } from '@/app/_server/page-first';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { reviewConfiguration } from '@/db/queries/review/configurationReview';
import type { Reading } from '@/db/reader';
import { writePence } from '@/lib/quantities/money';
import { type PeriodMonths, periodUntil } from '@/lib/review/period';
import { wallClock } from '@/lib/theatre/localTime';
import { setReviewDescription } from '@/lib/wording/set-review';
import { DraftEffect } from './draft-effect';
import { LineTable } from './line-table';
import { ProposeForm } from './propose-form';
import styles from './review.module.css';
import { proposableLines, reviewRow } from './review-rows';
import { ShortList } from './short-list';
import { TogetherSection } from './together-section';
import { AlikeTable, RemovedTable, SetUseTable } from './whole-tables';

const COSTS_ASKED = ['keepPencePerPiece', 'pouchPence', 'fetchMinutes', 'theatrePencePerMinute'] as const;

/** All of a review, worked out from the cases of the period. */
export async function ReviewBody({
  access,
  configurationId,
  months,
  now,
  mayWrite,
}: {
  access: Reading;
  configurationId: string;
  months: PeriodMonths;
  now: string;
  mayWrite: boolean;
}) {
  await pageFirst();
  const today = wallClock(now).date;
  const period = periodUntil(today, months);
  const review = await reviewConfiguration(access, configurationId, period, now);
  if (review === null)
    return (
      <EmptyState
        title="No version of it is in force"
        action={<LinkButton href={`/configurations/${configurationId}`}>To the configuration</LinkButton>}
      >
        A review looks at what sets of the version in force were used for.
      </EmptyState>
    );
  const { cases, lines, inForce, draft, costs, short, names } = review;
  if (cases.length === 0)
    return (
      <EmptyState title="No set of it was in a case of this time">
        A longer time may tell more. Where a case is over and its kit was issued, it counts here.
      </EmptyState>
    );
  const recorded = cases.filter(({ used }) => used !== null).length;
  const planned = cases.filter(({ construct }) => construct !== null).length;
  const lacking = COSTS_ASKED.filter((field) => costs[field] === null).length;
  const pouch = lines.filter(({ review: one }) => one?.verdict === 'pouch').length;
  return (
    <>
      <FigureRow>
        <Figure
          size="medium"
          label="Cases a set of it was in"
          value={cases.length}
          note={`${recorded} with their use recorded, ${planned} with a confirmed plan`}
        />
        <Figure
          size="medium"
          label="Lines that cost less as a pouch"
          value={lacking > 0 ? null : pouch}
          note={
            lacking > 0 ? `${lacking} of the costs are not stated` : `of ${lines.length}, even at the bound`
          }
        />
        <Figure
          size="medium"
          label="Recorded lines a case uses"
          value={review.shareUsed === null ? null : (review.shareUsed.share * 100).toFixed(1)}
          unit="%"
          note={review.shareUsed?.comparison.sentence ?? 'nothing is recorded'}
        />
        <Figure
          size="medium"
          label="Ran short, as it is in force"
          value={short.inForce.length}
          note={`of ${cases.length} cases, from the set alone`}
        />
      </FigureRow>
      <ShortList
        summary={`The ${short.inForce.length} cases in which it ran short`}
        cases={short.inForce}
        names={names}
      />
      <Section
        title="Line by line"
        note={
          review.casesNeeded === null
            ? 'nothing is recorded yet'
            : `it takes ${review.casesNeeded} cases to show that a line runs out in under ${(costs.runOutPerThousand / 10).toFixed(1)} % of them`
        }
      >
        <LineTable rows={lines.map(reviewRow)} />
        <ul className={styles.sources}>
          {setReviewDescription.sources.map(({ text, fromMemory }) => (
            <li key={text}>{fromMemory ? `${text} (from memory)` : text}</li>
          ))}
        </ul>
      </Section>
      {draft ? (
        <DraftEffect access={access} review={{ ...review, draft }} />
      ) : mayWrite && review.configuration.withdrawnAt === null ? (
        <Section
          title="Propose a new version"
          note="becomes a draft, which is tried and which a second person puts in force; back-ups are left as they are"
        >
          <ProposeForm
            configurationId={review.configuration.id}
            versionId={inForce.id}
            next={(review.configuration.versions[0]?.content.version ?? 0) + 1}
            lines={proposableLines(lines)}
          />
        </Section>
      ) : null}
      <Section title="Asked for after it was taken out" note="what earlier versions held">
        <RemovedTable
          rows={review.removed.map(({ itemId, name, version, since, asked }) => ({
            itemId,
            name,
            version,
            since,
            cases: asked?.cases ?? null,
            asked: asked?.asked.length ?? null,
            last: asked?.asked.at(-1) ?? null,
          }))}
        />
      </Section>
      <Section title="The sets of it" note="opened in the cases of this time">
        <SetUseTable rows={review.sets} />
      </Section>
      <Suspense fallback={<Skeleton lines={4} label="Cases are compared" />}>
        <TogetherSection access={access} configurationId={configurationId} period={period} now={now} />
      </Suspense>
      <Section title="Much like it" note="configurations in force that share two pieces in three or more">
        <AlikeTable
          rows={review.alike.map((one) => ({ ...one, sharePercent: Math.floor(one.share * 1000) / 10 }))}
        />
      </Section>
      {costs.keepPencePerPiece === null ? null : (
        <p className={styles.soft}>
          {`Keeping a piece: ${writePence(costs.keepPencePerPiece)} a turn, as the hospital states it.`}
        </p>
      )}
    </>
  );
}
