import type { IdentifierOutput } from '../calculations/identifier/schema';
import { looksLikeBadge } from '../people/badge';
import { patientDataWarnings } from '../theatre/patientDataWarning';

/** GS1's numbers of people: 8017 of those who give care, 8018 of those who receive it. */
const GSRN = new Set(['8017', '8018']);

/**
 * Whether a scan names a person: a badge of ours, or what is most likely on a wristband. Such a text is neither kept nor
 * shown nor sent anywhere; a badge goes to where badges are proven.
 */
export function namesPerson(text: string, reading: IdentifierOutput): 'badge' | 'patient' | null {
  if (looksLikeBadge(text)) return 'badge';
  if (reading.elements.some(({ identifier }) => identifier !== null && GSRN.has(identifier)))
    return 'patient';
  // a GSRN with a wrong digit, or without its mark, is still somebody's
  const bare = text.replace(/^\][A-Za-z][0-9A-Za-z]/, '').replace(/[()\s]/g, '');
  if (/^801[78]\d{16,}/.test(bare) || /\/801[78]\/\d{16,}/.test(bare)) return 'patient';
  if (reading.state !== 'unknown') return null;
  return patientDataWarnings(bare).some(({ kind }) => kind === 'nationalNumber') ? 'patient' : null;
}
