import 'server-only';
import type { Database } from '@/db/client';
import { keptCatalogue } from '@/db/queries/caseKit';
import type { PackOnFile } from '@/db/queries/packs/pack';
import { readSetting } from '@/db/queries/settings';
import { openQuestionsOf } from '@/db/queries/theatreCounts/questions';
import type { Label, LabelStock } from '@/lib/documents/label';
import { labelContent } from '@/lib/documents/labelContent';
import { layLabel } from '@/lib/documents/layLabel';
import { labelText } from '@/lib/packs/packNumber';
import { type DataMatrix, plainDataMatrix } from '../dataMatrix';
import { measureText } from './outlines';

/** The label of a pack as it is printed now, in the newest copy; `null` where none was ever printed. */
export async function labelOfPack(
  db: Database,
  pack: PackOnFile,
  asked: LabelStock | null,
): Promise<{ label: Label; symbol: DataMatrix; title: string } | null> {
  const copy = pack.copies[0]?.copy;
  if (copy === undefined) return null;
  const [catalogue, { policy }, { label: usual }, questions] = await Promise.all([
    keptCatalogue(db),
    readSetting(db.read, 'sterility'),
    readSetting(db.read, 'packs'),
    pack.set === null ? [] : openQuestionsOf(db, [pack.set.id]),
  ]);
  const names = new Map(catalogue.map((item) => [item.id, item.name]));
  const labelled = { ...pack.labelled, openQuestions: questions.length };
  const content = labelContent(labelled, copy, policy, (id) => names.get(id) ?? id);
  const title = labelText(pack.labelled.number, copy);
  const symbol = plainDataMatrix(title);
  return { label: layLabel(content, asked ?? usual, symbol.columns, measureText), symbol, title };
}
