import type { Element, Fault, Reading } from '../reading';
import { readElement } from './elementValue';
import { IDENTIFIERS, identifierAt } from './identifiers';
import { pairFaults } from './pairs';
import { GS, type Plain } from './separators';

/**
 * An element string as the standard reads it: what has a predefined length ends there, everything else at the next
 * separator or the end.
 *
 * @param separated whether separators are known to be sent
 */
export function readElementString({ text, at }: Plain, currentYear: number, separated: boolean): Reading {
  const elements: Element[] = [];
  const faults: Fault[] = [];
  let from = 0;
  while (from < text.length) {
    if (text[from] === GS) {
      from += 1;
      continue;
    }
    const next = text.indexOf(GS, from);
    const end = next < 0 ? text.length : next;
    const identifier = identifierAt(text, from);
    if (!identifier) {
      const value = text.slice(from, end);
      const position = at[from] ?? 0;
      elements.push(unknownElement(null, value, position));
      faults.push({ kind: 'unknown-identifier', scheme: 'gs1', given: value.slice(0, 4), position });
      from = end;
      continue;
    }
    const start = from + identifier.code.length;
    const until = identifier.predefined ? Math.min(start + identifier.format.most, end) : end;
    const value = text.slice(start, until);
    const read = readElement(identifier, value, at[start] ?? 0, currentYear, separated);
    elements.push(read.element);
    faults.push(...read.faults);
    from = until;
  }
  return { elements, faults: [...faults, ...pairFaults(elements)] };
}

/**
 * The text people read and type, each identifier in brackets. A bracket that belongs to a value is written `\(`, as
 * GS1's own tools write it.
 */
export function readBracketed({ text, at }: Plain, currentYear: number): Reading {
  const elements: Element[] = [];
  const faults: Fault[] = [];
  const marks = [...text.matchAll(/(?<!\\)\((\d{2,4})\)/g)];
  const before = text
    .slice(0, marks[0]?.index ?? text.length)
    .replaceAll(GS, '')
    .trim();
  if (before !== '') {
    const unclosed = /^\(\d*[^)]*$/.test(before);
    faults.push(
      unclosed
        ? { kind: 'unclosed-bracket', position: at[text.indexOf('(')] ?? 1 }
        : { kind: 'stray-text', given: before.slice(0, 20), position: at[0] ?? 1 },
    );
  }
  marks.forEach((mark, order) => {
    const code = mark[1] ?? '';
    const start = mark.index + mark[0].length;
    // separators between bracketed elements say nothing more
    const raw = text.slice(start, marks[order + 1]?.index ?? text.length).replaceAll(GS, ' ');
    const lead = raw.length - raw.trimStart().length;
    const value = raw.trim().replace(/\\([()])/g, '$1');
    const position = at[start + lead] ?? at.at(-1) ?? 0;
    const identifier = IDENTIFIERS.get(code);
    if (!identifier) {
      elements.push(unknownElement(code, value, position));
      faults.push({ kind: 'unknown-identifier', scheme: 'gs1', given: code, position: at[mark.index] ?? 0 });
      return;
    }
    const read = readElement(identifier, value, position, currentYear, true);
    elements.push(read.element);
    faults.push(...read.faults);
  });
  return { elements, faults: [...faults, ...pairFaults(elements)] };
}

const unknownElement = (identifier: string | null, value: string, position: number): Element => ({
  identifier,
  name: 'Unknown',
  value,
  meaning: 'unknown',
  plain: null,
  position,
});

/** Elements as people read them; what `readBracketed` reads back. */
export function writeBracketed(elements: readonly { identifier: string | null; value: string }[]): string {
  return elements
    .map(({ identifier, value }) => `(${identifier ?? '?'})${value.replace(/[()]/g, '\\$&')}`)
    .join('');
}
