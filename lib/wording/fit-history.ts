const text = (value: unknown) => (typeof value === 'string' ? value : '');

/** What one ledger entry about a rule or exception says, after the person's name. */
export function historySentence(action: string, detail: Record<string, unknown>): string {
  switch (action) {
    case 'draft-fit-rule':
      return `drafted version ${String(detail.version)}.`;
    case 'draft-fit-exception':
      return 'drafted it.';
    case 'approve-fit-rule':
    case 'approve-fit-exception':
      return `approved it, in force from ${text(detail.from)}.`;
    case 'discard-fit-rule':
    case 'discard-fit-exception':
      return 'discarded the draft.';
    case 'ask-withdrawal-of-fit-rule':
    case 'ask-withdrawal-of-fit-exception':
      return `asked for it to be withdrawn: ${text(detail.because)}`;
    case 'withdraw-fit-rule':
    case 'withdraw-fit-exception':
      return `agreed to the withdrawal, ending on ${text(detail.until)}.`;
    case 'keep-fit-rule':
    case 'keep-fit-exception':
      return 'kept it in force.';
    case 'try-change':
      return detail.change === 'withdraw'
        ? 'tried what withdrawing it would change.'
        : 'tried what it would change.';
    default:
      return action.replaceAll('-', ' ');
  }
}
