import { caseSheetAnswer } from '@/app/_pdf/caseSheet';
import { pickList } from '@/lib/documents/pickList';

export const dynamic = 'force-dynamic';

/** The pick list of a case as a PDF; `?paper=letter` for Letter. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  return caseSheetAnswer(request, (await params).id, pickList);
}
