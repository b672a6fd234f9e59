import { may } from '@/lib/people/permissions';
import { type Reading, THE_PROGRAM } from '../../reader';
import { type KitOnRecord, stands } from './standing';

/** Whether somebody had a hand in what lies with the kit as it is picked now. */
export const pickedOf = ({ life, picks }: KitOnRecord, personId: string): boolean =>
  life?.pickedBy === personId || picks.some((pick) => stands(pick) && pick.pickedBy === personId);

/**
 * Whether the reader must not see what was picked: a kit waits for its check, and they are one of those who may make it.
 * What they would be shown is left out by the queries, not by the screens.
 */
export function blindToKit({ reader }: Pick<Reading, 'reader'>, kit: KitOnRecord): boolean {
  return (
    reader !== THE_PROGRAM &&
    kit.stage === 'picked' &&
    may({ role: reader.role }, 'checkKit') &&
    !pickedOf(kit, reader.id)
  );
}
