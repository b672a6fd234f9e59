import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { onlyTexts } from '@/app/_ui/served-rows';
import { traceCase } from '@/db/queries/trace/caseTrace';
import { traceLot } from '@/db/queries/trace/lot';
import { tracePerson, traceSteriliser } from '@/db/queries/trace/period';
import { traceReach } from '@/db/queries/trace/reached';
import { may } from '@/lib/people/permissions';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { instantOf } from '@/lib/theatre/localTime';
import { casesAsked } from '../_parts/cases-asked';
import { TraceScans } from '../_parts/trace-scans';
import { CaseResult } from './case-result';
import { LotResult } from './lot-result';
import { PeriodResult } from './period-result';
import { ReachResult } from './reach-result';

export const metadata: Metadata = { title: 'Trace' };
export const dynamic = 'force-dynamic';

type Asked = Record<string, string | string[] | undefined>;

/** What a trace found: of a lot, an item, a set, a load, a case, a steriliser or a person, as the address asks. */
export default async function TraceResultPage({ searchParams }: { searchParams: Promise<Asked> }) {
  const { db, person } = await enter('/trace/result');
  const asked = await searchParams;
  const value = (name: string) => {
    const one = asked[name];
    return typeof one === 'string' ? one : '';
  };
  const mayOpen = may(person, 'openRecall');
  switch (value('of')) {
    case 'lot':
    case 'item':
    case 'set':
    case 'load': {
      const { of, cases, query } = casesAsked(onlyTexts(asked));
      if (of === null || of.kind === 'recall') return <NothingFound />;
      if (of.kind === 'lot') {
        const traced = await traceLot(db, of.itemId, of.lot, cases);
        return traced ? <LotResult traced={traced} casesQuery={query} mayOpen={mayOpen} /> : <NothingFound />;
      }
      const reached = await traceReach(db, of, cases);
      return reached ? (
        <ReachResult reached={reached} casesQuery={query} mayOpen={mayOpen} />
      ) : (
        <NothingFound />
      );
    }
    case 'case': {
      const traced = await traceCase(db, value('case'));
      return traced ? <CaseResult traced={traced} /> : <NothingFound />;
    }
    case 'steriliser':
    case 'person': {
      const from = plainDate.safeParse(value('from'));
      const until = plainDate.safeParse(value('until'));
      if (!from.success || !until.success) return <NothingFound why="Give both days as YYYY-MM-DD." />;
      // no zone we know of skips midnight in Europe/London; a day without one has no period to show
      const begin = instantOf(from.data, '00:00');
      const end = instantOf(addDays(until.data, 1), '00:00');
      if (begin === null || end === null) return <NothingFound why="Choose other days." />;
      const isPerson = value('of') === 'person';
      if (isPerson && !may(person, 'tracePerson'))
        return <NothingFound why="What a person handled is for those who look into incidents." />;
      const traced = isPerson
        ? await tracePerson(db, value('person'), begin, end)
        : await traceSteriliser(db, value('steriliser'), begin, end);
      return traced ? <PeriodResult traced={traced} from={from.data} until={until.data} /> : <NothingFound />;
    }
    default:
      return <NothingFound />;
  }
}

function NothingFound({ why = 'Nothing by that name is on record here.' }: { why?: string }) {
  return (
    <Page bench title="Trace" breadcrumb={[{ label: 'Trace', href: '/trace' }]}>
      <TraceScans />
      <EmptyState title="Nothing to trace" action={<LinkButton href="/trace">Search again</LinkButton>}>
        {why}
      </EmptyState>
    </Page>
  );
}
