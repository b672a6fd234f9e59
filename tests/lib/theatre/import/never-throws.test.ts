import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainDate } from '@/lib/quantities/plainDate';
import { readListFile } from '@/lib/theatre/import/readList';
import { sampleRows } from '@/lib/theatre/import/sample';
import { sampleXlsx } from '@/lib/theatre/import/sampleXlsx';
import { fileFaultWords, understoodWords } from '@/lib/wording/list-import';

const ASKED = { sheet: null, columns: {} };

/** Whatever a file is, it is read or refused in words: it never brings the server down. */
async function answered(bytes: Uint8Array): Promise<void> {
  const answer = await readListFile(bytes, ASKED);
  const words = answer.ok ? understoodWords(answer.list) : [fileFaultWords(answer.fault)];
  expect(words.length).toBeGreaterThan(0);
  for (const sentence of words) expect(sentence).toMatch(/\.$/);
}

describe('any file at all', () => {
  it('of bytes', () =>
    fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), (bytes) => answered(bytes)),
      { numRuns: 200 },
    ));

  it('of text with our headings above', () =>
    fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 200 }), (text) =>
        answered(new TextEncoder().encode(`Theatre,Date,Start\n${text}`)),
      ),
      { numRuns: 200 },
    ));

  it('of JSON, in a bundle or not', () => {
    const resource = fc
      .tuple(
        fc.constantFrom(
          'Appointment',
          'ServiceRequest',
          'Location',
          'Practitioner',
          'BodyStructure',
          'Patient',
        ),
        fc.dictionary(
          fc.constantFrom(
            'id',
            'status',
            'start',
            'participant',
            'basedOn',
            'bodySite',
            'name',
            'identifier',
          ),
          fc.jsonValue({ maxDepth: 3 }),
        ),
      )
      .map(([resourceType, rest]) => ({ ...rest, resourceType }));
    return fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.json(),
          fc
            .array(fc.record({ fullUrl: fc.jsonValue(), resource: fc.oneof(resource, fc.jsonValue()) }), {
              maxLength: 6,
            })
            .map((entry) => JSON.stringify({ resourceType: 'Bundle', entry })),
        ),
        (text) => answered(new TextEncoder().encode(text)),
      ),
      { numRuns: 300 },
    );
  });

  it('of a workbook with one byte changed', async () => {
    const whole = await sampleXlsx(sampleRows(['Theatre 1'], ['Tobias Wray'], plainDate.parse('2026-01-20')));
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 4, max: whole.length - 1 }),
        fc.integer({ min: 1, max: 255 }),
        (at, by) => {
          const changed = Uint8Array.from(whole);
          changed[at] = ((changed[at] ?? 0) + by) % 256;
          return answered(changed);
        },
      ),
      { numRuns: 150 },
    );
  });
});
