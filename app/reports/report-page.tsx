import { Suspense } from 'react';
import { now } from '@/app/_server/clock';
import { dayOfReport, type ReportKind, reportOfDay } from '@/app/_server/day-report';
import { pageFirst } from '@/app/_server/page-first';
import type { Access } from '@/app/_server/session';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Skeleton } from '@/app/_ui/skeleton';
import { addDays, type PlainDate } from '@/lib/quantities/plainDate';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import type { DayReport } from '@/lib/theatre/report/dayReport';
import { askLines } from '@/lib/wording/day-asks';
import { bucketFigures, type ReportNames, dayReportWords as words } from '@/lib/wording/day-report';
import { stepLines } from '@/lib/wording/day-steps';
import { momentWords } from '@/lib/wording/sets';
import { ChangedSince } from './changed-since';
import { lackingRows, theatreRow, turnedRows, wayRows } from './report-rows';
import { OnTheWayTable, SetTable, TheatreTable } from './report-tables';
import { AskList, StepList } from './step-lists';

const ADDRESS: Record<ReportKind, string> = { morning: '/reports/morning', dayBefore: '/reports/day-before' };

/** A report of a day, as things stand now. */
export async function ReportPage({
  access,
  kind,
  asked,
}: {
  access: Pick<Access, 'db' | 'person'>;
  kind: ReportKind;
  asked: string | null;
}) {
  const at = now();
  const today = wallClock(at).date;
  const day = await dayOfReport(access.db, kind, asked);
  const on = (other: string) => `${ADDRESS[kind]}?day=${other}`;
  const other: ReportKind = kind === 'morning' ? 'dayBefore' : 'morning';
  return (
    <Page
      title={`${kind === 'morning' ? words.morning : words.dayBefore}, ${dayWords(day)}`}
      mark={day === today ? 'today' : undefined}
      lead={`${kind === 'morning' ? words.morningLead : words.dayBeforeLead} As things stood ${momentWords(at, at)}.`}
      breadcrumb={[
        { label: 'Cases', href: '/cases' },
        { label: 'Theatre list', href: `/theatre-list?date=${day}` },
      ]}
      actions={
        <>
          <LinkButton href={on(addDays(day, -1))}>Day before</LinkButton>
          <LinkButton href={on(addDays(day, 1))}>Day after</LinkButton>
          <LinkButton href={ADDRESS[other]}>
            {other === 'morning' ? words.morning : words.dayBefore}
          </LinkButton>
          <LinkButton href={`${ADDRESS[kind]}/paper?day=${day}`} newTab kind="primary">
            Print
          </LinkButton>
        </>
      }
    >
      <Suspense key={day} fallback={<Skeleton lines={16} label="Working out how the day stands" />}>
        <ReportBody access={access} kind={kind} day={day} />
      </Suspense>
    </Page>
  );
}

/** Who gets which set is worked out for it; the head of the page does not wait. */
async function ReportBody({
  access,
  kind,
  day,
}: {
  access: Pick<Access, 'db' | 'person'>;
  kind: ReportKind;
  day: PlainDate;
}) {
  await pageFirst();
  const { report, names, changed } = await reportOfDay(access, kind, day);
  return (
    <>
      {report.lines.length === 0 ? (
        <EmptyState title={words.noCase}>Nothing is on the list of any theatre.</EmptyState>
      ) : (
        <FigureRow>
          {bucketFigures(report.counts).map(({ key, label, value }) => (
            <Figure key={key} label={label} value={value} size="medium" />
          ))}
        </FigureRow>
      )}
      {report.lines.length === 0 ? null : <Steps report={report} names={names} />}
      <ChangedSince changed={changed} now={names.now} />
      {report.lines.length === 0 ? null : <Details report={report} names={names} />}
    </>
  );
}

interface Told {
  report: DayReport;
  names: ReportNames;
}

function Steps({ report, names }: Told) {
  const steps = stepLines(report.steps, names);
  const asks = report.ask === null ? null : askLines(report.ask, names);
  return (
    <>
      <Section title={words.first} note={steps.length === 0 ? undefined : words.firstNote}>
        {steps.length === 0 ? (
          <EmptyState title={words.firstNone} />
        ) : (
          <StepList steps={steps} label={words.first} />
        )}
      </Section>
      {asks === null ? null : (
        <Section title={words.ask} note={words.askNote}>
          {asks.length === 0 ? (
            <EmptyState title={words.askNone} />
          ) : (
            <AskList lines={asks} label={words.ask} />
          )}
        </Section>
      )}
    </>
  );
}

function Details({ report, names }: Told) {
  const theatres = [...new Set(report.lines.map(({ facts }) => facts.theatre))];
  const [ways, lacking, turned] = [
    wayRows(report, names),
    lackingRows(report, names),
    turnedRows(report, names),
  ];
  return (
    <>
      <Section title={words.theatres}>
        {theatres.map((theatre) => (
          <Section key={theatre} title={theatre} level={3}>
            <TheatreTable
              theatre={theatre}
              rows={report.lines
                .filter(({ facts }) => facts.theatre === theatre)
                .map((line) => theatreRow(line, names))}
            />
          </Section>
        ))}
      </Section>
      <Section title={words.onTheWay} note={ways.length === 0 ? undefined : words.expected}>
        {ways.length === 0 ? <EmptyState title={words.onTheWayNone} /> : <OnTheWayTable rows={ways} />}
      </Section>
      <Section title={words.lacking}>
        {lacking.length === 0 ? (
          <EmptyState title={words.lackingNone} />
        ) : (
          <SetTable about="lacking" rows={lacking} />
        )}
      </Section>
      <Section title={words.turned}>
        {turned.length === 0 ? (
          <EmptyState title={words.turnedNone} />
        ) : (
          <SetTable about="turned" rows={turned} />
        )}
      </Section>
    </>
  );
}
