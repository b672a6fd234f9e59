import { z } from 'zod';

export const role = z.enum([
  'technician',
  'decontaminationLead',
  'surgeon',
  'scrubPractitioner',
  'stockKeeper',
  'theatreManager',
  'incidentLead',
  'administrator',
]);
export type Role = z.infer<typeof role>;

export const ROLE_WORDS: Record<Role, string> = {
  technician: 'Sterile services technician',
  decontaminationLead: 'Decontamination lead',
  surgeon: 'Surgeon',
  scrubPractitioner: 'Scrub practitioner',
  stockKeeper: 'Stock and loan keeper',
  theatreManager: 'Theatre manager',
  incidentLead: 'Incident lead',
  administrator: 'Administrator',
};
