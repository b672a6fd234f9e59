import type { Role } from './role';

/** Who may do what. Asked in every operation that writes, never only on a screen. One act a line; extend it here. */
export const PERMITTED = {
  bookCase: ['surgeon', 'scrubPractitioner', 'theatreManager', 'administrator'],
  writePlan: ['surgeon', 'scrubPractitioner', 'theatreManager', 'administrator'],
  /** The operating surgeon decides: nobody else confirms a plan. */
  confirmPlan: ['surgeon'],
  /** Rules and exceptions of fit: a second person with the same permission approves. */
  draftFitRule: ['theatreManager', 'administrator', 'decontaminationLead'],
  approveFitRule: ['theatreManager', 'administrator', 'decontaminationLead'],
  setRemarks: ['theatreManager', 'administrator'],
  countSet: ['technician', 'decontaminationLead', 'scrubPractitioner', 'administrator'],
  openSet: ['technician', 'decontaminationLead', 'administrator'],
  writeConfiguration: ['decontaminationLead', 'theatreManager', 'administrator'],
  /** By another person than the one who drafted it. */
  approveConfiguration: ['decontaminationLead', 'theatreManager', 'administrator'],
  editCatalogue: ['theatreManager', 'stockKeeper', 'administrator'],
} as const satisfies Record<string, readonly Role[]>;

export type Act = keyof typeof PERMITTED;

export function may(role: Role, act: Act): boolean {
  return (PERMITTED[act] as readonly Role[]).includes(role);
}
