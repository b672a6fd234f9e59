import 'server-only';
import { now } from '@/app/_server/clock';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';

/** The calendar date at the hospital, whatever zone the machine is set to. */
export const today = (): PlainDate => wallClock(now()).date;
