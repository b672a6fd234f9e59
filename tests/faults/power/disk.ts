import { random, wholeBelow } from '../random';

/**
 * A disk as a program must expect it, from what it was told and in which order.
 *
 * The model, and why:
 * - What a file held when it was last synced (`fsync`, `fdatasync`) is there. What was written since may be there or not,
 *   sector by sector and in any order: the cache of the system and that of the disk write as they like.
 * - A sector (512 bytes, the smallest a disk writes at once) may be torn: its beginning new, its end old. That is more than
 *   disks do that promise whole sectors; the engine is to bear it in what it was writing, for its log carries checksums.
 * - A byte that nobody was writing stays what it was ("powersafe overwrite", which the engine relies on as it is built).
 * - A file's length is any that it had since it was last synced. Where it grew and the new sectors were not written, there are
 *   zeros or what lay there before, which is noise to us: systems of files that write names and lengths in a log of their own
 *   and contents beside it do that.
 * - That a file exists, has another name or is gone is in its folder, and durable only when the folder is synced. Before, the
 *   changes of a folder are there up to any of them, in order: they go through the log of the file system.
 * - A sync that returned was obeyed. A disk that lies about that keeps no promise of anybody's.
 */
export const SECTOR = 512;

/** What a program told the disk, in order; paths are whole. `told`: what it told others meanwhile. */
export type DiskEvent =
  | { kind: 'write'; path: string; at: number; bytes: Buffer }
  | { kind: 'length'; path: string; length: number }
  | { kind: 'sync'; path: string }
  | { kind: 'create'; path: string }
  | { kind: 'remove'; path: string }
  | { kind: 'rename'; path: string; to: string }
  | { kind: 'told'; text: string };

type Change = Extract<DiskEvent, { kind: 'write' | 'length' }>;
type Naming = Extract<DiskEvent, { kind: 'create' | 'remove' | 'rename' }>;

/** What a file is apart from its name. */
interface Body {
  kept: Buffer;
  since: Change[];
}

const folderOf = (path: string) => path.slice(0, path.lastIndexOf('/')) || '/';

export class Disk {
  /** Names as they are now, and as they surely are on the disk. */
  #names = new Map<string, Body>();
  #keptNames = new Map<string, Body>();
  /** Changes of names since their folder was synced, in order, with the body of what was made. */
  #namings: { naming: Naming; body: Body }[] = [];

  constructor(files: ReadonlyMap<string, Buffer>) {
    for (const [path, kept] of files) this.#names.set(path, { kept, since: [] });
    this.#keptNames = new Map(this.#names);
  }

  take(event: DiskEvent): void {
    switch (event.kind) {
      case 'write':
      case 'length':
        this.#body(event.path).since.push(event);
        return;
      case 'sync':
        this.#sync(event.path);
        return;
      case 'create': {
        const body = { kept: Buffer.alloc(0), since: [] };
        this.#names.set(event.path, body);
        this.#namings.push({ naming: event, body });
        return;
      }
      case 'remove':
      case 'rename': {
        const body = this.#body(event.path);
        this.#namings.push({ naming: event, body });
        named(this.#names, event, body);
        return;
      }
      case 'told':
        return;
    }
  }

  /** What is there if the power never fails. */
  files(): Map<string, Buffer> {
    return contents(this.#names, (body) => whole(body.kept, body.since));
  }

  /** What is there if the power fails now. */
  cut(draw: () => number): Map<string, Buffer> {
    const names = new Map(this.#keptNames);
    const upTo = wholeBelow(draw, this.#namings.length + 1);
    for (const { naming, body } of this.#namings.slice(0, upTo)) named(names, naming, body);
    return contents(names, (body) => cutBody(body, draw));
  }

  #body(path: string): Body {
    const body = this.#names.get(path);
    if (!body) throw new Error(`the program wrote to ${path}, which is not there`);
    return body;
  }

  #sync(path: string): void {
    const body = this.#names.get(path);
    if (body) {
      body.kept = whole(body.kept, body.since);
      body.since = [];
      return;
    }
    const isHere = ({ naming }: { naming: Naming }) =>
      folderOf(naming.path) === path || (naming.kind === 'rename' && folderOf(naming.to) === path);
    for (const { naming, body: made } of this.#namings.filter(isHere)) named(this.#keptNames, naming, made);
    this.#namings = this.#namings.filter((one) => !isHere(one));
  }
}

function named(names: Map<string, Body>, naming: Naming, body: Body): void {
  if (naming.kind === 'create') names.set(naming.path, body);
  else names.delete(naming.path);
  if (naming.kind === 'rename') names.set(naming.to, body);
}

const contents = (names: ReadonlyMap<string, Body>, read: (body: Body) => Buffer): Map<string, Buffer> =>
  new Map([...names].map(([path, body]) => [path, read(body)]));

const lengthAfter = (length: number, change: Change): number =>
  change.kind === 'length' ? change.length : Math.max(length, change.at + change.bytes.length);

/** The content after all changes, in order. */
function whole(kept: Buffer, changes: readonly Change[]): Buffer {
  if (changes.length === 0) return kept;
  let length = kept.length;
  let most = length;
  for (const change of changes) {
    length = lengthAfter(length, change);
    most = Math.max(most, length);
  }
  const all = Buffer.alloc(most);
  kept.copy(all);
  length = kept.length;
  for (const change of changes) {
    const after = lengthAfter(length, change);
    if (change.kind === 'write') change.bytes.copy(all, change.at);
    // what was cut off and is there again later is zeros
    else all.fill(0, change.length);
    length = after;
  }
  return all.subarray(0, length);
}

const drawNoise = random(952);
const NOISE = Buffer.from(Array.from({ length: 64 * SECTOR }, () => wholeBelow(drawNoise, 256)));

/** How likely a sector that was written since the last sync is there, drawn for each file of each cut: also none, and all. */
const LIKELY = [0, 0.1, 0.5, 0.9, 1];
const TORN = 0.1;

function cutBody({ kept, since }: Body, draw: () => number): Buffer {
  if (since.length === 0) return kept;
  const likely = LIKELY[wholeBelow(draw, LIKELY.length)] ?? 1;
  const lengths = [kept.length];
  for (const change of since) lengths.push(lengthAfter(lengths.at(-1) ?? 0, change));
  const length = lengths[wholeBelow(draw, lengths.length)] ?? 0;
  const there = Buffer.alloc(Math.max(length, ...lengths));
  kept.copy(there);
  if (draw() < 0.5) there.fill(NOISE.subarray(wholeBelow(draw, SECTOR)), kept.length);
  for (const change of since) if (change.kind === 'write') writeSectors(there, change, likely, draw);
  return there.subarray(0, length);
}

function writeSectors(
  there: Buffer,
  { at, bytes }: Extract<Change, { kind: 'write' }>,
  likely: number,
  draw: () => number,
): void {
  for (let from = 0; from < bytes.length; ) {
    const to = Math.min(bytes.length, from + SECTOR - ((at + from) % SECTOR));
    if (draw() < likely) {
      const end = draw() < TORN ? from + wholeBelow(draw, to - from) : to;
      bytes.copy(there, at + from, from, end);
    }
    from = to;
  }
}
