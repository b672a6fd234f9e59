import type { RecallOf } from '@/lib/trace/recall';
import type { Reading } from '../../reader';
import { hiddenFrom } from '../bench/blind';
import { hiddenCases } from '../bench/blindCases';

/** Sets and cases of which the reader may see no figure of what is called back. Of a set or a load packs are told, not pieces. */
export async function blindTo(db: Reading, { kind }: RecallOf) {
  const tellsPieces = kind === 'lot' || kind === 'item';
  const none: ReadonlySet<string> = new Set();
  return { sets: await hiddenFrom(db), cases: tellsPieces ? await hiddenCases(db) : none };
}
