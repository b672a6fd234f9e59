import { and, inArray, isNull, ne } from 'drizzle-orm';
import type { NewId } from '@/lib/identity/ids';
import type { NoticeContent } from '@/lib/turns/notice';
import type { Queries } from '../../client';
import type { Person } from '../../queries/people';
import { people } from '../../schema';
import { tellPerson } from '../turns/tell-person';

type TellLeads = NoticeContent & {
  href: string;
  /** Who did it, and need not be told. */
  person: Person;
  now: string;
  newId: NewId;
};

/** Tells the decontamination leads and the theatre managers who work here. */
export async function tellLeads(write: Queries, { person, ...notice }: TellLeads): Promise<void> {
  const leads = await write
    .select({ id: people.id })
    .from(people)
    .where(
      and(
        inArray(people.role, ['decontaminationLead', 'theatreManager']),
        isNull(people.leftAt),
        ne(people.id, person.id),
      ),
    );
  for (const { id } of leads) await tellPerson(write, { ...notice, personId: id });
}
