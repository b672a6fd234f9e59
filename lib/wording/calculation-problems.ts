import type { z } from 'zod';

/**
 * What is wrong with one field of a calculation's input, and the way out, as one sentence. A message written into the
 * schema itself (it names the field's own rule) is kept.
 *
 * @param key the key without a place, for `unrecognized_keys`
 */
export function inputSentence(issue: z.core.$ZodIssue, key?: string): string {
  switch (issue.code) {
    case 'invalid_type':
      return typeSentence(issue);
    case 'too_small':
      return boundSentence('at least', issue.minimum, issue.inclusive ?? true, issue.origin) ?? issue.message;
    case 'too_big':
      return boundSentence('at most', issue.maximum, issue.inclusive ?? true, issue.origin) ?? issue.message;
    case 'invalid_value':
      return `One of these is needed: ${issue.values.map(String).join(', ')}.`;
    case 'invalid_union':
      return unionSentence(issue);
    case 'unrecognized_keys':
      return `There is no field “${short(key ?? '')}” here: check the spelling, or leave it out.`;
    default:
      return sentence(issue.message);
  }
}

const NAMED_TYPES: Record<string, string> = {
  number: 'A number is needed',
  int: 'A whole number is needed',
  string: 'A text is needed',
  boolean: 'true or false is needed',
  array: 'A list is needed',
  object: 'An object with named fields is needed',
};

function typeSentence(issue: z.core.$ZodIssueInvalidType): string {
  const needed = NAMED_TYPES[issue.expected] ?? sentence(issue.message).slice(0, -1);
  if (issue.message.endsWith('received undefined')) return `${needed}; nothing is given.`;
  if (issue.message.endsWith('received null')) return `${needed}; null (not stated) is not accepted here.`;
  return `${needed}.`;
}

function boundSentence(
  word: 'at least' | 'at most',
  bound: number | bigint,
  inclusive: boolean,
  origin: string,
): string | null {
  const strict = word === 'at least' ? 'more than' : 'less than';
  const limit = `${inclusive ? word : strict} ${bound}`;
  switch (origin) {
    case 'string':
      return bound === 1 && word === 'at least'
        ? 'A text is needed; this one is empty.'
        : `Needs ${limit} characters.`;
    case 'array':
    case 'set':
      return word === 'at least'
        ? `The list needs ${limit} ${bound === 1 ? 'entry' : 'entries'}.`
        : `The list takes ${limit} entries.`;
    case 'number':
    case 'int':
      return `Must be ${limit}.`;
    default:
      return null;
  }
}

function unionSentence(issue: z.core.$ZodIssueInvalidUnion): string {
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];
  return options.length > 0
    ? `One of these is needed: ${options.join(', ')}.`
    : 'None of the accepted forms: see the example of this calculation.';
}

function short(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

function sentence(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
