import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, VAR } from '../../../scripts/bootstrap/places.mjs';
import { CannotTry, type Found, type Suite } from '../suite';

/**
 * A disk that is full, and one that may only be read, under a running server: writes are refused in a plain sentence, reads go
 * on on every screen, health says it, nothing acknowledged is lost, and writing resumes by itself. The small disk is one in
 * memory within a mount namespace of its own; turning read-only is done below the C library (`stubborn.c` says why).
 */
export const disk: Suite = {
  unit: 'refused writes',
  size: 20,
  async run({ size, template }) {
    const namespace = namespaceHere();
    const shim = builtShim();
    const inside = join(ROOT, 'tests/faults/disk/inside.ts');
    const ran = spawnSync(
      'unshare',
      [...namespace, process.execPath, '--import', 'tsx', inside, template, String(size), shim ?? ''],
      { cwd: ROOT, encoding: 'utf8', maxBuffer: 1e8 },
    );
    const said = ran.stdout.trim().split('\n').at(-1) ?? '';
    if (ran.status !== 0 || !said.startsWith('{'))
      throw new Error(`the run on a small disk ended with ${ran.status}: ${ran.stderr.slice(-2000)}`);
    const found = JSON.parse(said) as Omit<Found, 'notTried'> | { cannot: string };
    if ('cannot' in found) throw new CannotTry(`no small disk can be made (${found.cannot})`);
    const notTried = shim === null ? ['a disk that turns read-only needs a C compiler (gcc)'] : [];
    return { ...found, notTried };
  },
};

/** As the system's administrator, or as somebody who may be one within a namespace. */
function namespaceHere(): string[] {
  const ways = [['-m'], ['-rm']];
  const way = ways.find((options) => spawnSync('unshare', [...options, 'true']).status === 0);
  if (!way)
    throw new CannotTry('this user may make no mount namespace (neither as root nor by user namespaces)');
  return way;
}

function builtShim(): string | null {
  const folder = join(VAR, 'test', 'faults');
  mkdirSync(folder, { recursive: true });
  const shim = join(folder, 'stubborn.so');
  const source = join(ROOT, 'tests/faults/disk/stubborn.c');
  const built = spawnSync('gcc', ['-shared', '-fPIC', '-O1', '-o', shim, source, '-ldl']);
  return built.status === 0 ? shim : null;
}
