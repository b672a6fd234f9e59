import { failed, ok, type Problem, problemsFromZod, type Result } from '../identity/result';
import { patientDataWarnings } from '../theatre/patientDataWarning';
import { patientDataSentence } from '../wording/cases';
import { type Construct, construct } from './plan';

/**
 * Parses a construct sent from outside. A note that looks like a patient's data is refused unless the
 * writer says that it isn't (`notPatientData`): it must not be kept even for the moment before it is seen.
 */
export function checkConstruct(raw: unknown, notPatientData: boolean): Result<Construct> {
  const parsed = construct.safeParse(raw);
  const text = noteOf(raw);
  const warned = notPatientData ? [] : textProblems(text, ['note'], true);
  if (!parsed.success) return failed(...problemsFromZod(parsed.error), ...warned);
  return warned.length > 0 ? failed(...warned) : ok(parsed.data);
}

/** Problems for a text that looks like a patient's data. `canBeDenied`: the writer has a way to say that it isn't. */
export function textProblems(text: string, path: (string | number)[], canBeDenied = false): Problem[] {
  return patientDataWarnings(text).map(({ kind, excerpt }) => ({
    path,
    code: 'looks-like-patient-data',
    message: patientDataSentence(kind, excerpt, canBeDenied),
  }));
}

function noteOf(raw: unknown): string {
  const note = typeof raw === 'object' && raw !== null && 'note' in raw ? raw.note : null;
  // Long enough for any note that could be kept; the rest is refused for its length.
  return typeof note === 'string' ? note.slice(0, 600) : '';
}
