import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ENDPOINTS } from '@/lib/people/access';
import { configurationProblems, VARIABLES } from '@/lib/running/configuration';

const read = (path: string) => readFileSync(path, 'utf8');
const service = read('deploy/kitwright.service');
const container = read('deploy/Containerfile');
const KNOWN = new Set<string>([...VARIABLES.map(({ name }) => name), 'NODE_ENV', 'NEXT_TELEMETRY_DISABLED']);

/** Settings of a unit by name, each with its values in order (systemd.syntax(7)). */
function settings(unit: string): Map<string, string[]> {
  const found = new Map<string, string[]>();
  for (const line of unit.split('\n')) {
    const [, name, value] = /^([A-Za-z]+)=(.*)$/.exec(line) ?? [];
    if (name !== undefined) found.set(name, [...(found.get(name) ?? []), value ?? '']);
  }
  return found;
}

/** Variables as NAME=value. */
const variables = (pairs: readonly string[]) =>
  Object.fromEntries(
    pairs.map((pair) => [pair.slice(0, pair.indexOf('=')), pair.slice(pair.indexOf('=') + 1)]),
  );

const of = (unit: Map<string, string[]>, name: string) => unit.get(name)?.at(-1);

test('the service sets only variables the program reads, to values it can use', () => {
  const env = variables(settings(service).get('Environment') ?? []);
  expect(Object.keys(env).length).toBeGreaterThan(5);
  expect(Object.keys(env).filter((name) => !KNOWN.has(name))).toEqual([]);
  expect(configurationProblems(env)).toEqual([]);
});

test('the service starts a program that is there, with a flag it knows, and stops it by the signal it heeds', () => {
  const unit = settings(service);
  const start = /^\/usr\/bin\/node (\S+) (--\S+)$/.exec(of(unit, 'ExecStart') ?? '');
  expect(existsSync(start?.[1] ?? '')).toBe(true);
  expect(read('scripts/serve.mjs')).toContain(`'${start?.[2]}'`);
  expect(of(unit, 'KillSignal')).toBe('SIGTERM');
  expect(read('scripts/server/stop.mjs')).toContain("'SIGTERM'");
  // the first process alone is told, and it tells the others
  expect(of(unit, 'KillMode')).toBe('mixed');
  expect(Number(of(unit, 'TimeoutStopSec'))).toBeGreaterThan(5);
});

test('the service writes in its state folder and nowhere else, as nobody special, and reaches no other machine', () => {
  const unit = settings(service);
  const state = `/var/lib/${of(unit, 'StateDirectory')}/`;
  const env = variables(unit.get('Environment') ?? []);
  for (const name of ['KITWRIGHT_DB', 'KITWRIGHT_BACKUPS'])
    expect(env[name]).toMatch(new RegExp(`^${state}`));
  expect(env.KITWRIGHT_LOG).toBe('-');
  expect(unit.has('ReadWritePaths')).toBe(false);
  const kept = {
    ProtectSystem: 'strict',
    ProtectHome: 'yes',
    PrivateTmp: 'yes',
    PrivateDevices: 'yes',
    NoNewPrivileges: 'yes',
    CapabilityBoundingSet: '',
    IPAddressDeny: 'any',
    IPAddressAllow: 'localhost',
    UMask: '0077',
  };
  for (const [name, value] of Object.entries(kept)) expect(of(unit, name), name).toBe(value);
  expect(of(unit, 'User')).not.toBe('root');
  // the engine makes code while it runs: with this it would not start
  expect(unit.has('MemoryDenyWriteExecute')).toBe(false);
});

const hasTool = spawnSync('systemd-analyze', ['--version']).status === 0;

test.skipIf(!hasTool)(
  'systemd finds nothing wrong with the service, and little that it is exposed to',
  () => {
    const verified = spawnSync('systemd-analyze', ['verify', 'deploy/kitwright.service'], {
      encoding: 'utf8',
    });
    const about = verified.stderr
      .split('\n')
      .filter((line) => line.includes('kitwright') && !line.includes('not executable'));
    expect(about).toEqual([]);
    const judged = spawnSync('systemd-analyze', ['security', '--offline=true', 'deploy/kitwright.service'], {
      encoding: 'utf8',
    });
    const level = Number(/Overall exposure level for kitwright\.service: ([\d.]+)/.exec(judged.stdout)?.[1]);
    expect(level).toBeLessThan(2);
  },
);

/** Instructions of the last stage, lines that go on joined. */
function lastStage(file: string): [string, string][] {
  const lines = file
    .replaceAll(/\\\n\s*/g, ' ')
    .split('\n')
    .flatMap((line): [string, string][] => {
      const [, name, rest] = /^([A-Z]+)\s+(.*)$/.exec(line) ?? [];
      return name === undefined ? [] : [[name, rest ?? '']];
    });
  return lines.slice(lines.map(([name]) => name).lastIndexOf('FROM'));
}

test('the container runs the same program as nobody special, and writes in its volume alone', () => {
  const stage = lastStage(container);
  const all = (name: string) => stage.filter(([one]) => one === name).map(([, rest]) => rest);
  const env = variables(all('ENV').flatMap((line) => line.split(/\s+/)));
  expect(Object.keys(env).filter((name) => !KNOWN.has(name))).toEqual([]);
  expect(configurationProblems(env)).toEqual([]);
  const [volume] = all('VOLUME');
  for (const name of ['KITWRIGHT_DB', 'KITWRIGHT_BACKUPS'])
    expect(env[name]?.startsWith(`${volume}/`), name).toBe(true);
  expect(all('USER')).toEqual(['node']);
  expect(all('EXPOSE')).toEqual([env.PORT]);
  expect(all('STOPSIGNAL')).toEqual(['SIGTERM']);
  const command = JSON.parse(all('CMD').at(-1) ?? '[]') as string[];
  expect(`/usr/bin/${command.join(' ')}`).toBe(of(settings(service), 'ExecStart'));
  expect(all('WORKDIR')[0]).toBe(of(settings(service), 'WorkingDirectory'));
});

test('the container asks an address that is there whether it is well, and builds with a Node.js the program takes', () => {
  const asked = /127\.0\.0\.1:3000(\/[\w/]+)/.exec(container)?.[1];
  expect(`GET ${asked}` in ENDPOINTS).toBe(true);
  const versions = [...container.matchAll(/^FROM \S+\/node:(\d+)-/gm)].map(([, major]) => major);
  const { engines } = JSON.parse(read('package.json')) as { engines: { node: string } };
  expect(versions).toHaveLength(2);
  for (const major of versions) expect(Number(major)).toBe(Number(/\d+/.exec(engines.node)?.[0]));
});

test('the guide to running it names every file and variable as it is', () => {
  const guide = read('docs/running.md');
  for (const [, name] of guide.matchAll(/\b(KITWRIGHT_[A-Z_]+)\b/g))
    expect(KNOWN.has(name ?? ''), name).toBe(true);
  for (const [, path] of guide.matchAll(/\b((?:deploy|docs)\/[\w.-]+\w)/g))
    expect(existsSync(path ?? ''), path).toBe(true);
  const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
  for (const [, name] of guide.matchAll(/npm run (\w+)/g)) expect(scripts, name).toHaveProperty(name ?? '');
});
