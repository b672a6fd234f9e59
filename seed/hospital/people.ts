import type { Role } from '@/lib/people/role';

/** Invented people, two or more for every role in which a second person is needed. */
export const PEOPLE = [
  { id: 'person_wren-adeyemi', name: 'Wren Adeyemi', role: 'technician' },
  { id: 'person_tomas-birkett', name: 'Tomas Birkett', role: 'technician' },
  { id: 'person_jolene-stott', name: 'Jolene Stott', role: 'technician' },
  { id: 'person_maurice-oduya', name: 'Maurice Oduya', role: 'decontaminationLead' },
  { id: 'person_hettie-crane', name: 'Hettie Crane', role: 'decontaminationLead' },
  { id: 'person_ines-halloran', name: 'Ines Halloran', role: 'surgeon' },
  { id: 'person_tobias-wray', name: 'Tobias Wray', role: 'surgeon' },
  { id: 'person_sunita-marlowe', name: 'Sunita Marlowe', role: 'surgeon' },
  { id: 'person_callum-denby', name: 'Callum Denby', role: 'surgeon' },
  { id: 'person_ruth-okonjo', name: 'Ruth Okonjo', role: 'scrubPractitioner' },
  { id: 'person_piotr-lennard', name: 'Piotr Lennard', role: 'scrubPractitioner' },
  { id: 'person_dilys-harrow', name: 'Dilys Harrow', role: 'stockKeeper' },
  { id: 'person_kofi-brandreth', name: 'Kofi Brandreth', role: 'stockKeeper' },
  { id: 'person_gwen-sallis', name: 'Gwen Sallis', role: 'theatreManager' },
  { id: 'person_amir-foxton', name: 'Amir Foxton', role: 'theatreManager' },
  { id: 'person_nell-ashdown', name: 'Nell Ashdown', role: 'incidentLead' },
  { id: 'person_joseph-quayle', name: 'Joseph Quayle', role: 'incidentLead' },
  { id: 'person_edda-winslow', name: 'Edda Winslow', role: 'administrator' },
  { id: 'person_ravi-thorne', name: 'Ravi Thorne', role: 'administrator' },
] as const satisfies { id: `person_${string}`; name: string; role: Role }[];

export type DemoPerson = (typeof PEOPLE)[number]['id'];
