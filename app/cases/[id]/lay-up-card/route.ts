import { caseSheetAnswer } from '@/app/_pdf/caseSheet';
import { layUpCard } from '@/lib/documents/layUpCard';

export const dynamic = 'force-dynamic';

/** The lay-up card of a case as a PDF; `?paper=letter` for Letter. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ id: string }> },
): Promise<Response> {
  return caseSheetAnswer(request, (await params).id, layUpCard);
}
