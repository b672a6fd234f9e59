import type { Metadata } from 'next';
import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { namesOfPieces } from '@/app/_server/names-of-pieces';
import { pageFirst } from '@/app/_server/page-first';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Skeleton } from '@/app/_ui/skeleton';
import type { Database } from '@/db/client';
import { type GapOnScreen, urgentGaps } from '@/db/queries/restock/gaps';
import { dateWords } from '@/lib/documents/edition';
import { stepsWords } from '@/lib/wording/kit-parts';
import { gapName, gapSentence } from '@/lib/wording/restock-screens';
import { momentWords } from '@/lib/wording/sets';
import { GapsTable } from '../_parts/gaps-table';

export const metadata: Metadata = { title: 'Gaps of booked cases' };
export const dynamic = 'force-dynamic';

/** As far ahead as is looked, in days. */
const HORIZONS = [7, 14, 28] as const;

export default async function GapsPage({ searchParams }: { searchParams: Promise<{ days?: string }> }) {
  const { db } = await enter('/restock/gaps');
  const asked = (await searchParams).days;
  const days = HORIZONS.find((one) => String(one) === asked) ?? 14;
  return (
    <Page
      title="Gaps of booked cases"
      lead={`What confirmed plans of the next ${days} days need that neither sets nor the shelf have, wherever it stands now. Held sets and held stock are left out, and use-by is tested against the day of each case.`}
      breadcrumb={[{ label: 'Restock', href: '/restock' }]}
      actions={HORIZONS.filter((one) => one !== days).map((one) => (
        <LinkButton key={one} href={`/restock/gaps?days=${one}`}>{`Next ${one} days`}</LinkButton>
      ))}
    >
      <Suspense key={days} fallback={<Skeleton lines={10} label="Plans are held against sets and shelf" />}>
        <Gaps db={db} days={days} />
      </Suspense>
    </Page>
  );
}

async function Gaps({ db, days }: { db: Database; days: number }) {
  await pageFirst();
  const at = now();
  const [{ cases, gaps, needs }, { item }] = await Promise.all([urgentGaps(db, at, days), namesOfPieces(db)]);
  return (
    <GapsTable
      cases={cases}
      rows={gaps.map((gap, index) => ({
        key: `${gap.caseId}/${index}`,
        caseId: gap.caseId,
        reference: gap.reference,
        startsAt: gap.startsAt,
        starts: momentWords(gap.startsAt, at),
        what: gapName(gap, item),
        pieces: gap.kind === 'piece' ? gap.pieces : null,
        sentence: gapSentence(gap),
        steps: stepsOf(gap, needs),
        coming: comingWords(gap),
        comesLate: comesLate(gap),
      }))}
    />
  );
}

function stepsOf(gap: GapOnScreen, needs: Awaited<ReturnType<typeof urgentGaps>>['needs']): string {
  const own = needs.get(gap.caseId);
  return own ? stepsWords(gap.steps, own) : gap.steps.join(', ');
}

function comingWords({ coming }: GapOnScreen): string {
  return coming
    .map(
      ({ number, toCome, expectedOn }) =>
        `${toCome} on ${number}, ${expectedOn === null ? 'nobody knows by when' : `expected ${dateWords(expectedOn)}`}`,
    )
    .join('; ');
}

/** Something is on order, but none of it is known to come by the day before the case. */
const comesLate = ({ coming, caseDate }: GapOnScreen): boolean =>
  coming.length > 0 && coming.every(({ expectedOn }) => expectedOn === null || expectedOn >= caseDate);
