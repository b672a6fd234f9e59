/** What is said of keys, revisions and pages to systems that use the API. */
export const apiWords = {
  keyForm: 'An Idempotency-Key is 1 to 255 visible characters, without spaces.',
  keyUsed:
    'This Idempotency-Key was sent with something else: take a new one for each thing that is to be done.',
  keyless: 'What this answers is told once and never kept, so it takes no Idempotency-Key.',
  tooLong: 'More can’t be sent at once.',
  revisionNeeded:
    'Say with If-Match which revision you saw, such as If-Match: "3": nobody’s change is then overwritten unseen.',
  revisionForm: 'If-Match takes one revision in quotes, such as "3".',
  cursor:
    'This cursor leads nowhere in this list: send the one of the page before with the same question, or none.',
  noList: 'There is no such list.',
  twice: (name: string) => `“${name}” stands there more than once: say it once.`,
  bodyNeeded: 'Send an object as JSON.',
} as const;
