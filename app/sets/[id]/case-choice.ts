import type { ComboOption } from '@/app/_ui/combo-field';
import { momentWords } from '@/lib/wording/sets';

/** A case a set could be sent to, as it is chosen. */
export const caseChoice = (
  { id, reference, startsAt }: { id: string; reference: string; startsAt: string },
  now: string,
): ComboOption => ({ value: id, label: reference, note: momentWords(startsAt, now) });
