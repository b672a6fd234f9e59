import type { z } from 'zod';

/** Sentences zod makes up itself; they speak to programmers, so they are said again in our words. */
const MADE_UP = /^(?:Invalid|Too small|Too big|Unrecognized)\b/;

/** A message written into the schema names the field's own rule and is kept as it is; zod's own is put in our words. */
export function plainMessage(issue: z.core.$ZodIssue): string {
  return MADE_UP.test(issue.message) ? inputSentence(issue) : issue.message;
}

/**
 * What is wrong with one field of an input, and the way out, as one sentence.
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
      return `There is no field “${short(key ?? issue.keys.join('”, “'))}” here: check the spelling, or leave it out.`;
    case 'invalid_format':
      return MADE_UP.test(issue.message)
        ? 'This is not written as it has to be here.'
        : sentence(issue.message);
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
  record: 'An object with named fields is needed',
};

function typeSentence(issue: z.core.$ZodIssueInvalidType): string {
  const needed = NAMED_TYPES[issue.expected] ?? 'Something of another kind is needed';
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
    : 'None of the accepted forms: see the example.';
}

function short(text: string): string {
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

function sentence(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
