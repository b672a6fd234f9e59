import { z } from 'zod';
import { caseId, personId, planId, startId, theatreId } from '../identity/ids';
import { caseRegion, limb } from '../theatre/surgicalCase';

/** What the construct is taken from; `unknown`: the plan is not known yet. */
export const constructSource = z.union([startId, planId, z.literal('unknown')]);
export type ConstructSource = z.infer<typeof constructSource>;

const setCode = z.string().regex(/^[A-Z0-9][A-Z0-9-]{1,19}$/);
const instant = z.iso.datetime();

const FIELDS = {
  /** A case that is on the list already. */
  case: caseId,
  region: caseRegion,
  side: limb,
  plan: constructSource,
  /** When its sets are needed, as an instant. */
  by: instant,
  theatre: theatreId,
  surgeon: personId,
  /** When the sets went to theatre, where they have gone already. */
  gone: instant,
};
const takes = z.array(setCode).max(8);

/** The questions of an emergency as far as they are answered: all of it stands in the address. */
export type EmergencyAsked = { [K in keyof typeof FIELDS]: z.infer<(typeof FIELDS)[K]> | null } & {
  /** Codes of the sets to take. */
  take: string[];
};

/** Reads the address; what is not an answer is left unanswered, never refused. */
export function readAsked(from: Readonly<Record<string, string | string[] | undefined>>): EmergencyAsked {
  const one = <K extends keyof typeof FIELDS>(key: K) => {
    const parsed = FIELDS[key].safeParse(from[key]);
    return (parsed.success ? parsed.data : null) as EmergencyAsked[K];
  };
  const text = from.take;
  const codes = takes.safeParse(typeof text === 'string' && text !== '' ? text.split(',') : []);
  return {
    case: one('case'),
    region: one('region'),
    side: one('side'),
    plan: one('plan'),
    by: one('by'),
    theatre: one('theatre'),
    surgeon: one('surgeon'),
    gone: one('gone'),
    take: codes.success ? [...new Set(codes.data)] : [],
  };
}

/** The address at which these answers are given. */
export function addressOf(asked: EmergencyAsked): string {
  const { take, ...fields } = asked;
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries(fields)) if (value !== null) query.set(key, value);
  if (take.length > 0) query.set('take', take.join(','));
  const text = query.toString().replaceAll('%2C', ',').replaceAll('%3A', ':');
  return text === '' ? '/emergency' : `/emergency?${text}`;
}
