import { questionText, type UseQuestion } from '@/lib/usage/questions';
import { reckonUse } from '@/lib/usage/reckon';
import { mayRead, type Reading } from '../../reader';
import { hiddenFrom } from '../bench/blind';
import { subjectOf, tableFacts } from './tableFacts';
import { itemsAtTable, tableItems } from './tableItems';
import { unseenBy } from './unseen';

/** A question a record of use leaves open, and the text by which whoever closes it says that they saw it. */
export interface OpenUseQuestion {
  text: string;
  question: UseQuestion;
}

/** What a record of use leaves open now, by what the reader may see; `null` where there is no such case. */
export async function useQuestions(db: Reading, caseId: string): Promise<OpenUseQuestion[] | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [whole, blind] = await Promise.all([tableFacts(read, caseId), hiddenFrom(db)]);
  if (!whole) return null;
  const facts = unseenBy(whole, blind);
  const items = await tableItems(read, itemsAtTable(facts));
  const { questions } = reckonUse(subjectOf(facts), facts.entries, (id) => items.get(id) ?? null);
  return questions.map((question) => ({ text: questionText(question), question }));
}
