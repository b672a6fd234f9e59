import { caseSheetAnswer } from '@/app/_pdf/caseSheet';
import { endpoint } from '@/app/_server/enter';
import { layUpCard } from '@/lib/documents/layUpCard';

export const dynamic = 'force-dynamic';

/** The lay-up card of a case as a PDF; `?paper=letter` for Letter. */
export const GET = endpoint('GET /cases/[id]/lay-up-card', (access) =>
  caseSheetAnswer(access, access.params.id, layUpCard),
);
