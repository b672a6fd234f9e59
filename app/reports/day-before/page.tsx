import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { ReportPage } from '../report-page';

export const metadata: Metadata = { title: 'Day-before report' };
export const dynamic = 'force-dynamic';

export default async function DayBeforeReportPage({
  searchParams,
}: {
  searchParams: Promise<{ day?: string }>;
}) {
  const access = await enter('/reports/day-before');
  return <ReportPage access={access} kind="dayBefore" asked={(await searchParams).day ?? null} />;
}
