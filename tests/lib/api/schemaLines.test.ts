import { expect, test } from 'vitest';
import { schemaLines } from '@/lib/api/schemaLines';

const said = (schema: object, named: Record<string, object> = {}) =>
  schemaLines(schema, named).map(({ path, is, needed }) => `${path || '·'}: ${is}${needed ? '' : '?'}`);

test('members one a line, with what each is and whether it is needed', () => {
  expect(
    said({
      type: 'object',
      properties: {
        name: { type: 'string', minLength: 1, maxLength: 60 },
        days: { type: 'integer', minimum: 1, maximum: 9007199254740991 },
        scope: { type: 'array', items: { enum: ['a', 'b'] } },
        note: { type: ['string', 'null'] },
        proof: { anyOf: [{ const: 'me' }, { type: 'object', properties: { badge: { type: 'string' } } }] },
        ids: { type: 'array', items: { pattern: '^x', type: 'string' } },
      },
      required: ['name', 'days'],
    }),
  ).toEqual([
    '·: object',
    'name: text, at least 1 letter, at most 60 letters',
    'days: whole number, at least 1',
    'scope: list of "a" or "b"?',
    'note: text or null?',
    'proof: "me", or object?',
    'proof: object?',
    'proof.badge: text?',
    'ids: list of text, like ^x?',
  ]);
});

test('what is named is followed once, so that a thing within itself ends', () => {
  const named = {
    Part: {
      type: 'object',
      properties: { parts: { type: 'array', items: { $ref: '#/components/schemas/Part' } } },
    },
  };
  expect(said({ $ref: '#/components/schemas/Part' }, named)).toEqual([
    '·: object',
    'parts: list of Part?',
    'parts[]: Part, as above',
  ]);
});
