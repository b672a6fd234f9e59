import { caseSheetAnswer } from '@/app/_pdf/caseSheet';
import { endpoint } from '@/app/_server/enter';
import { pickList } from '@/lib/documents/pickList';

export const dynamic = 'force-dynamic';

/** The pick list of a case as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /cases/[id]/pick-list', (access) =>
  caseSheetAnswer(access, access.params.id, pickList),
);
