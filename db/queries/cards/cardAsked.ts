import type { CardAsked } from '@/lib/documents/cardExtras';
import { findExtras } from '@/lib/kits/extras';
import { mayRead, type Reading } from '../../reader';
import type { KitOfCase } from '../caseKit';
import { type CardOfCase, originOfCase } from './cards';

/** What the preference card of a case asks for, found in the very store its kit was planned from; `undefined` without a card. */
export async function cardAsked(
  db: Reading,
  { booked, kit, store }: Pick<KitOfCase, 'booked' | 'kit' | 'store'>,
): Promise<(CardAsked & Pick<CardOfCase, 'id'>) | undefined> {
  mayRead(db, 'readHospital');
  const { card } = await originOfCase(db, booked.id);
  if (card === null) return undefined;
  const { id, surgeon, procedure, version, newest, body } = card;
  return {
    id,
    surgeon,
    procedure,
    version,
    newest,
    note: body.note,
    extras: findExtras(body.extras, { kit, store, caseDate: booked.caseDate }),
  };
}
