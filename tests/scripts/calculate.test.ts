import { spawn } from 'node:child_process';
import { expect, test } from 'vitest';
import { calculations } from '@/lib/calculations/registry';

/** The command as a person types it, with `input` on its standard input. */
function calculate(
  args: string[],
  input: string,
): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['scripts/calculate.mjs', ...args], { stdio: 'pipe' });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.on('close', (code) => resolve({ code, out, err }));
    child.stdin.on('error', () => {}); // it may end before it has read everything
    child.stdin.end(input);
  });
}

/**
 * One that needs the solver, and one that does not: the command takes no notice of which it is, and every example is
 * answered in the API's test. All of them here: `CALCULATIONS=all npm test -- --only unit calculate`.
 */
const NAMES = process.env.CALCULATIONS === 'all' ? Object.keys(calculations) : ['fewest-trays', 'identifier'];

test.each(NAMES)(
  '%s: its example is answered as JSON on standard output',
  async (name) => {
    const { code, out, err } = await calculate([name], JSON.stringify(calculations[name]?.example));
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ calculation: name });
  },
  20_000,
);

test('an unknown name is refused with all names', async () => {
  const { code, out, err } = await calculate(['toString'], '{}');
  expect({ code, out }).toEqual({ code: 1, out: '' });
  const problem = JSON.parse(err);
  expect(problem).toMatchObject({ status: 404 });
  for (const name of Object.keys(calculations)) expect(problem.detail).toContain(name);
});

test('no name is refused with all names', async () => {
  const { code, err } = await calculate([], '');
  expect(code).toBe(1);
  for (const name of Object.keys(calculations)) expect(JSON.parse(err).detail).toContain(name);
});

test('malformed JSON is refused with its place', async () => {
  const { code, err } = await calculate(['completeness'], '{\n  "lines": [,]\n}');
  expect(code).toBe(1);
  expect(JSON.parse(err).detail).toContain('Line 2, column 13');
});

test('an input that cannot be used is refused with every place', async () => {
  const { code, out, err } = await calculate(['completeness'], '{"lines": 3, "surprise": 1}');
  expect({ code, out }).toEqual({ code: 1, out: '' });
  const { errors } = JSON.parse(err);
  expect(errors.length).toBeGreaterThan(1);
  expect(errors.map((error: { pointer: string }) => error.pointer)).toContain('/lines');
});
