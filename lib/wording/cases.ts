import type { PatientDataKind } from '../theatre/patientDataWarning';

/** The words of booking a case and of the plans kept with it. */

export const PATIENT_DATA_WORDS: Record<PatientDataKind, string> = {
  nationalNumber: 'a national health number',
  hospitalNumber: 'a hospital number',
  dateOfBirth: 'a date of birth',
  nameWithTitle: 'a person’s name',
  telephone: 'a telephone number',
  email: 'an e-mail address',
  postcode: 'a postcode',
};

/** Shown beside a text field: what it looks like, and the way out. */
export function patientDataSentence(kind: PatientDataKind, excerpt: string, canBeDenied = true): string {
  const wayOut = canBeDenied ? 'Take it out, or say that it is not about a patient.' : 'Take it out.';
  return `“${excerpt}” looks like ${PATIENT_DATA_WORDS[kind]}. No patient data is kept here: a case has only its reference. ${wayOut}`;
}
