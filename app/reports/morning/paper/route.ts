import { endpoint } from '@/app/_server/enter';
import { reportPaper } from '../../report-paper';

export const dynamic = 'force-dynamic';

/** The report as a PDF; `?day=` for another day, `?paper=letter` for Letter. */
export const GET = endpoint('GET /reports/morning/paper', (access) => reportPaper(access, 'morning'));
