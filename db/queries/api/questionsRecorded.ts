import { isNull } from 'drizzle-orm';
import { mayRead, type Reading } from '../../reader';
import { theatreQuestions } from '../../schema';
import { questionsOf, type TheatreQuestion } from '../theatreCounts/questions';
import { idsAfter, inOrderOf, type PlaceInList } from './idsAfter';

/** Questions of counts in theatre, the last opened first; only those that are open, where asked. `undefined`: no such place. */
export async function questionsRecorded(
  db: Reading,
  { open, ...place }: PlaceInList & { open: boolean },
): Promise<TheatreQuestion[] | undefined> {
  mayRead(db, 'readHospital');
  const where = open ? isNull(theatreQuestions.settledAt) : undefined;
  const ids = await idsAfter(db.read, { table: theatreQuestions, id: theatreQuestions.id, where }, place);
  return ids && inOrderOf(ids, await questionsOf(db, ids));
}
