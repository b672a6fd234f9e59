import { z } from 'zod';
import type { Role } from '../people/role';
import { type Urgency, urgency } from './surgicalCase';

/** What happened to a case on the list, as the ledger has it. */
export type ListChange =
  | { kind: 'booked'; startsAt: string }
  | { kind: 'moved'; from: Slot; to: Slot; lostSets: string[] }
  | { kind: 'urgency'; from: Urgency; to: Urgency }
  | { kind: 'cancelled'; because: string }
  | { kind: 'putBack' }
  | { kind: 'promised'; setCode: string }
  | { kind: 'freed'; setCode: string }
  /** Sets by their ids, given to it and taken from it as the list was planned. */
  | { kind: 'planned'; given: string[]; taken: string[] }
  | { kind: 'planConfirmed'; version: number }
  /** An entry whose detail is not of the shape known here: said to be there, and no more. */
  | { kind: 'other'; action: ListAct };

type Slot = z.infer<typeof slot>;
const slot = z.object({ theatreId: z.string(), startsAt: z.string(), endsAt: z.string() });

/** Acts of the ledger that change the list, each with what is read from its detail. */
const READ = {
  'book-case': z
    .object({ startsAt: z.string() })
    .transform(({ startsAt }): ListChange => ({ kind: 'booked', startsAt })),
  'move-case': z
    .object({ from: slot, to: slot, lostSets: z.array(z.string()).default([]) })
    .transform((detail): ListChange => ({ kind: 'moved', ...detail })),
  'change-urgency': z
    .object({ from: urgency, to: urgency })
    .transform((detail): ListChange => ({ kind: 'urgency', ...detail })),
  'cancel-case': z
    .object({ because: z.string() })
    .transform(({ because }): ListChange => ({ kind: 'cancelled', because })),
  'put-case-back': z.object({}).transform((): ListChange => ({ kind: 'putBack' })),
  'promise-set': z
    .object({ setCode: z.string() })
    .transform(({ setCode }): ListChange => ({ kind: 'promised', setCode })),
  'free-set': z
    .object({ setCode: z.string() })
    .transform(({ setCode }): ListChange => ({ kind: 'freed', setCode })),
  'plan-sets': z
    .object({ given: z.array(z.string()), taken: z.array(z.string()) })
    .transform((detail): ListChange => ({ kind: 'planned', ...detail })),
  'confirm-plan': z
    .object({ version: z.number() })
    .transform(({ version }): ListChange => ({ kind: 'planConfirmed', version })),
} as const;

export type ListAct = keyof typeof READ;
export const LIST_ACTS = Object.keys(READ) as ListAct[];

/** One entry of the ledger as a change of the list. */
export function listChangeFrom(action: ListAct, detail: unknown): ListChange {
  const read = READ[action].safeParse(detail);
  return read.success ? read.data : { kind: 'other', action };
}

/** Whose list is their own cases; everybody else has the whole list. */
export const hasOwnList = (role: Role): boolean => role === 'surgeon';
