import { expect, test } from 'vitest';
import { type Said, type Trouble, troubleFaults } from './checker';

const said = (status: number | null, text: string, type = 'application/problem+json'): Said => ({
  what: 'POST /x',
  status,
  type,
  text,
});
const sound: Trouble = {
  name: 'full disk',
  status: 507,
  words: /disk .* is full/,
  refused: [said(507, JSON.stringify({ detail: 'The disk of the server is full.' }))],
  reads: [said(200, '<html>', 'text/html')],
  ready: said(503, '{"state":"wrong","lights":{"writing":"wrong"}}', 'application/json'),
  health: said(200, 'Nothing can be written: the disk here is full.', 'text/html'),
  resumedAfterMs: 40,
};

test('refused in words, read on, said by health, and resumed', () => {
  expect(troubleFaults(sound)).toEqual([]);
});

test.each([
  ['no refusal at all', { refused: [] }, /nothing was refused/],
  [
    'a 500 without words',
    { refused: [said(500, 'Internal Server Error', 'text/plain')] },
    /not in words: .* 500/,
  ],
  ['a connection that was cut', { refused: [said(null, '')] }, /not in words/],
  ['another sentence', { refused: [said(507, '{"detail":"no"}')] }, /not in words/],
  ['a page that fails', { reads: [said(500, '')] }, /reading does not go on/],
  ['no reading', { reads: [] }, /nothing was read/],
  ['a health that is well', { ready: said(200, '{"lights":{"writing":"well"}}') }, /ready does not say it/],
  [
    'a health page that says nothing',
    { health: said(200, 'All is well', 'text/html') },
    /health page does not/,
  ],
  ['no write afterwards', { resumedAfterMs: null }, /did not resume/],
])('%s is a fault', (_, change, fault) => {
  expect(troubleFaults({ ...sound, ...change }).join('\n')).toMatch(fault);
});
