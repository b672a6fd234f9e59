import { describe, expect, test } from 'vitest';
import { GET as describeOne, POST } from '@/app/api/v1/calculations/[name]/route';
import { GET as listAll } from '@/app/api/v1/calculations/route';
import { jsonPointer } from '@/lib/calculations/problemDetails';
import { calculations } from '@/lib/calculations/registry';

const at = (name: string) => ({ params: Promise.resolve({ name }) });
const post = (name: string, body: BodyInit, type: string | null = 'application/json') => {
  const request = new Request('http://localhost/', { method: 'POST', body });
  if (type === null) request.headers.delete('content-type');
  else request.headers.set('content-type', type);
  return POST(request, at(name));
};

describe('every calculation', () => {
  test.each(Object.values(calculations).map((one) => [one.name, one] as const))(
    '%s says what it is, and answers its own example as its schema promises',
    async (name, calculation) => {
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      for (const list of [calculation.formula, calculation.assumptions, calculation.sources]) {
        expect(list.length).toBeGreaterThan(0);
      }
      const answer = await post(name, JSON.stringify(calculation.example));
      expect(answer.status).toBe(200);
      const output = await answer.json();
      expect(output).toMatchObject({
        calculation: name,
        outcome: 'answered',
        assumptions: calculation.assumptions,
      });
      expect(output.working.length).toBeGreaterThan(0);
      expect(calculation.output.safeParse(output.answer).error?.issues ?? []).toEqual([]);
    },
  );

  test('is listed with its schemas', async () => {
    const { calculations: listed } = await (await listAll()).json();
    expect(listed.map(({ name }: { name: string }) => name)).toEqual(Object.keys(calculations));
    for (const one of listed) {
      expect(one.input).toMatchObject({
        $schema: 'https://json-schema.org/draft/2020-12/schema',
        type: 'object',
      });
      expect(one.output).toHaveProperty('oneOf');
      expect(await (await describeOne(new Request('http://localhost/'), at(one.name))).json()).toEqual(one);
    }
  });

  test('takes no field it does not know: a misspelt one is refused, not passed over', async () => {
    for (const { name, example } of Object.values(calculations)) {
      const answer = await post(name, JSON.stringify({ ...(example as object), surprise: 1 }));
      expect(answer.status, name).toBe(422);
      const { errors } = await answer.json();
      expect(errors).toEqual([expect.objectContaining({ pointer: '/surprise', code: 'unrecognized-keys' })]);
    }
  });
});

// RFC 9457, Problem Details for HTTP APIs: §3 media type, `status`, `title`, `detail`; RFC 6901 for the pointers
describe('problems', () => {
  test.each([
    ['unknown name', 'toString', '{}', 'application/json', 404, /completeness, .*length-cover/],
    ['not declared as JSON', 'completeness', '{}', 'text/plain', 415, /application\/json/],
    ['no content type', 'completeness', '{}', null, 415, /no content type/],
    ['malformed', 'completeness', '{\n "lines": [,]}', 'application/json', 400, /Line 2, column 12/],
    ['empty', 'completeness', '', 'application/json', 400, /Line 1, column 1/],
    ['too long', 'completeness', `"${'x'.repeat(256 * 1024)}"`, 'application/json', 413, /256 kB/],
    ['not an object', 'completeness', '[]', 'application/json', 422, /One value/],
  ] as const)('%s', async (_why, name, body, type, status, detail) => {
    const answer = await post(name, body, type);
    expect(answer.status).toBe(status);
    expect(answer.headers.get('content-type')).toBe('application/problem+json');
    const problem = await answer.json();
    expect(problem).toMatchObject({ type: 'about:blank', status, title: expect.any(String) });
    expect(problem.detail).toMatch(detail);
  });

  test('a body that claims to be short is not read beyond the limit', async () => {
    let sent = 0;
    const endless = new ReadableStream({
      pull(controller) {
        sent += 1;
        controller.enqueue(new Uint8Array(64 * 1024).fill(32));
      },
    });
    const request = new Request('http://localhost/', {
      method: 'POST',
      body: endless,
      headers: { 'content-type': 'application/json' },
      duplex: 'half',
    } as RequestInit);
    expect((await POST(request, at('completeness'))).status).toBe(413);
    expect(sent).toBeLessThan(10);
  });

  test('every fault at once, each with its path and pointer', async () => {
    const lines = [
      {
        line: 'x'.repeat(10_000),
        item: 'a',
        mustHaveClass: 5,
        expected: -1,
        minimum: 0.5,
        found: '3',
        massGrams: null,
      },
    ];
    const problem = await (
      await post('completeness', JSON.stringify({ lines, containerGrams: null }))
    ).json();
    expect(problem.errors.map(({ pointer }: { pointer: string }) => pointer).sort()).toEqual(
      ['line', 'mustHaveClass', 'expected', 'minimum', 'found'].map((field) => `/lines/0/${field}`).sort(),
    );
    for (const { path, pointer, message } of problem.errors) {
      expect(jsonPointer(path)).toBe(pointer);
      expect(message).toMatch(/^[^a-z].*\.$/);
      expect(message.length).toBeLessThan(300);
    }
  });

  // RFC 6901 §5, the examples of its document
  test.each([
    [['a/b'], '/a~1b'],
    [['m~n'], '/m~0n'],
    [['foo', 0], '/foo/0'],
    [[], ''],
    [[''], '/'],
  ])('pointer of %j', (path, pointer) => {
    expect(jsonPointer(path)).toBe(pointer);
  });
});
