import type { Act } from '../people/permissions';
import type { NextAct } from './queue';

/** What it takes to do the next step of a set. */
export const ACT_OF: Record<NextAct, Act> = {
  receive: 'receiveSet',
  beginWash: 'washSet',
  endWash: 'washSet',
  count: 'countSet',
  pack: 'packSet',
  decideShort: 'readHospital',
  load: 'makeUpLoad',
  unload: 'makeUpLoad',
  accept: 'acceptLoad',
  liftHold: 'liftHold',
};

/** The screen on which it is done; `null` where one press does it. */
export function screenOf(act: NextAct, setId: string, loadId: string | null): string | null {
  switch (act) {
    case 'receive':
    case 'beginWash':
    case 'endWash':
      return null;
    case 'count':
      return `/sets/${setId}/count`;
    case 'pack':
      return `/sets/${setId}/pack`;
    case 'decideShort':
      return `/sets/${setId}/short`;
    case 'load':
      return '/loads';
    case 'unload':
    case 'accept':
      return loadId === null ? '/loads' : `/loads/${loadId}`;
    case 'liftHold':
      return `/sets/${setId}#hold`;
  }
}
