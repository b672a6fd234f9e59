import { identifier } from '@/lib/calculations/identifier/identifier';
import { identifierInput } from '@/lib/calculations/identifier/schema';

/** A code read as of 2026, in short: `01=09521234543213 17=2027-06-30`; faults as `code@position`. */
export function show(text: string, separators: 'mayBeLost' | 'sent' = 'mayBeLost', currentYear = 2026) {
  const answer = identifier(identifierInput.parse({ text, currentYear, separators }));
  const output = answer.outcome === 'answered' ? answer.answer : answer.known;
  if (!output) throw new Error('nothing known');
  return {
    outcome: answer.outcome,
    scheme: output.scheme,
    state: output.state,
    read: output.elements.map(({ identifier: code, name, plain }) => `${code ?? name}=${plain}`).join(' '),
    problems: output.problems.map(({ code, position }) => `${code}@${position}`).join(' '),
    sentences: output.problems.map(({ sentence }) => sentence),
    readings: output.readings.map(({ reading }) => reading),
    output,
    answer,
  };
}
