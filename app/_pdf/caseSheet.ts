import 'server-only';
import type { Access } from '@/app/_server/enter';
import { highsSolver } from '@/app/_server/solver/highs';
import { cardAsked } from '@/db/queries/cards/cardAsked';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { listPeople } from '@/db/queries/people';
import type { KitSheetOf } from '@/lib/documents/kitSheet';
import type { Sheet } from '@/lib/documents/sheet';
import { noSheetWords } from '@/lib/wording/paper';
import { printingNow, sheetAnswer } from './answer';
import { noSheetAnswer } from './noSheet';

/** A sheet of a case from its kit as the store is now, by the list it is fetched by once there is one; a page for people where there is no case, or no plan yet. */
export async function caseSheetAnswer(
  { db, person, request }: Access & { request: Request },
  id: string,
  sheetOf: (given: KitSheetOf) => Sheet,
): Promise<Response> {
  const answer = await loadKitOfCase(db, id, {
    solver: highsSolver,
    lengthCover: 'figure',
    byList: true,
  });
  if (answer.kind === 'noCase') return noSheetAnswer({ status: 404, ...noSheetWords.noCase });
  if (answer.kind === 'noPlan') {
    return noSheetAnswer({ status: 409, ...noSheetWords.noPlan(answer.booked.reference, answer.booked.id) });
  }
  const printing = printingNow(person);
  const [people, card] = await Promise.all([listPeople(db), cardAsked(db, answer.answer)]);
  const personName = (whose: string) => people.find((one) => one.id === whose)?.name ?? whose;
  return sheetAnswer(sheetOf({ ...answer.answer, personName, printing, card }), request, printing);
}
