import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { ReportPage } from '../report-page';

export const metadata: Metadata = { title: 'Morning report' };
export const dynamic = 'force-dynamic';

export default async function MorningReportPage({
  searchParams,
}: {
  searchParams: Promise<{ day?: string }>;
}) {
  const access = await enter('/reports/morning');
  return <ReportPage access={access} kind="morning" asked={(await searchParams).day ?? null} />;
}
