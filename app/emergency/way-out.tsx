import Link from 'next/link';
import type { Barred } from '@/app/_server/emergency/barred';
import { never } from '@/lib/identity/result';
import type { StoredSet } from '@/lib/kits/store';
import { unavailableWords } from '@/lib/wording/kit-shorts';
import { capitalised } from '@/lib/wording/numbers';

/** Why a set can't be had, and what can be done about it by those who may. */
export function WayOut({ set: { id }, because }: { set: Pick<StoredSet, 'id'>; because: Barred | null }) {
  if (because === null) return null;
  switch (because.kind) {
    case 'awaitsDecision':
      return (
        <>
          Short, and nobody has decided yet.{' '}
          <Link href={`/sets/${id}/short`}>Those who may stand for it decide there.</Link>
        </>
      );
    case 'takenForEmergency':
      return <>Taken for another emergency, {because.reference}: speak with whoever has it.</>;
    case 'held':
      return (
        <>
          {capitalised(unavailableWords(because))}.{' '}
          <Link href={`/sets/${id}`}>Who may lift the hold decides there.</Link>
        </>
      );
    case 'shortForOneCase':
      return (
        <>
          {capitalised(unavailableWords(because))}.{' '}
          <Link href={`/sets/${id}/short`}>A new decision is made there.</Link>
        </>
      );
    case 'pastUseBy':
      return <>{capitalised(unavailableWords(because))}. It is reprocessed first.</>;
    case 'onOtherKit':
      return (
        <>
          {capitalised(unavailableWords(because))}: it lies with that kit. Who picked it puts it back first.
        </>
      );
    case 'letOutForOneCase':
      return <>{capitalised(unavailableWords(because))}.</>;
    default:
      return never(because);
  }
}
