/** The three outcomes of a fit rule and the three severities, as the screens say them. */

export type FindingOutcome = 'fits' | 'doesNotFit' | 'notEstablished';
export type FindingSeverity = 'stops' | 'caution' | 'note';

/**
 * The word shown for a finding. A rule that is broken says how much it matters; one that could not be answered says so
 * whatever its severity, because unknown is never an answer.
 */
export function outcomeWord(outcome: FindingOutcome, severity: FindingSeverity): string {
  switch (outcome) {
    case 'fits':
      return 'Fits';
    case 'notEstablished':
      return 'Not established';
    case 'doesNotFit':
      return severityWord(severity);
  }
}

function severityWord(severity: FindingSeverity): string {
  switch (severity) {
    case 'stops':
      return 'Does not fit';
    case 'caution':
      return 'Caution';
    case 'note':
      return 'Note';
  }
}
