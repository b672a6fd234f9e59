import {
  faultSentence,
  identifiedSentence,
  identifierWorking,
  missingSeparators,
} from '@/lib/wording/identifier';
import type { Answer } from '../calculation';
import { identify } from './identify';
import type { IdentifierInput, IdentifierOutput } from './schema';

/**
 * Reads a scanned or typed code. `notEstablished` where it can be cut into elements in more than one way: the readings
 * are given, and none is taken. A code that is faulty or unknown is answered as that.
 */
export function identifier(input: IdentifierInput): Answer<IdentifierOutput> {
  const read = identify(input);
  const { scheme, state, carrier, elements, faults, readings } = read;
  const output: IdentifierOutput = {
    scheme,
    state,
    carrier,
    says: identifiedSentence(read),
    text: withControlsWritten(input.text),
    elements,
    problems: [...faults]
      .sort((a, b) => a.position - b.position)
      .map((fault) => ({ sentence: faultSentence(fault), code: fault.kind, position: fault.position })),
    readings: readings.map((reading) => ({ reading })),
  };
  const working = identifierWorking(read, input);
  return state === 'ambiguous'
    ? {
        outcome: 'notEstablished',
        missing: [{ path: ['text'], what: missingSeparators(read) }],
        known: output,
        working,
      }
    : { outcome: 'answered', answer: output, working };
}

const NAMED: Readonly<Record<string, string>> = {
  '\u001d': '{GS}',
  '\r': '{CR}',
  '\n': '{LF}',
  '\t': '{TAB}',
};

/** Control characters, which no screen shows, written out: `{GS}`, `{1E}`. */
function withControlsWritten(text: string): string {
  return text.replace(
    // biome-ignore lint/suspicious/noControlCharactersInRegex: it is these that are looked for
    /[\u0000-\u001f\u007f]/g,
    (control) => NAMED[control] ?? `{${control.charCodeAt(0).toString(16).toUpperCase().padStart(2, '0')}}`,
  );
}
