import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { Inflate } from 'fflate';

/** An entry of a zip as its directory has it. */
interface ZipEntry {
  name: string;
  method: number;
  packed: number;
  at: number;
}

/** A zip on disk, read entry by entry without holding any whole. */
export interface ZipFile {
  names: string[];
  /** The text of an entry, line by line, as it is unpacked; throws where it is not in order. */
  lines(name: string): Generator<Uint8Array>;
  close(): void;
}

/** Signatures and sizes of the records: PKWARE APPNOTE 4.3.7, 4.3.12 and 4.3.16. */
const LOCAL = { signature: 0x04034b50, size: 30 };
const CENTRAL = { signature: 0x02014b50, size: 46 };
const END = { signature: 0x06054b50, size: 22 };
const LONGEST_COMMENT = 65_535;
const [STORED, DEFLATED] = [0, 8];
const PART = 1 << 20;

/** Opens a zip by its directory; `null` where the file is none. Of the kinds of packing only what this program writes is read. */
export function openZip(path: string): ZipFile | null {
  const file = openSync(path, 'r');
  const { size } = fstatSync(file);
  const read = (at: number, length: number): Buffer => {
    const part = Buffer.alloc(Math.max(0, Math.min(length, size - at)));
    let got = 0;
    while (got < part.length) {
      const now = readSync(file, part, got, part.length - got, at + got);
      if (now === 0) break;
      got += now;
    }
    return part.subarray(0, got);
  };
  const entries = directory(read, size);
  if (entries === null) {
    closeSync(file);
    return null;
  }
  return {
    names: entries.map(({ name }) => name),
    *lines(name) {
      const entry = entries.find((one) => one.name === name);
      if (!entry) throw new Error(`there is no ${name}`);
      yield* unpacked(read, entry);
    },
    close: () => closeSync(file),
  };
}

type Read = (at: number, length: number) => Buffer;

function directory(read: Read, size: number): ZipEntry[] | null {
  const from = Math.max(0, size - END.size - LONGEST_COMMENT);
  const tail = read(from, size - from);
  let end = -1;
  for (let at = tail.length - END.size; at >= 0 && end < 0; at -= 1)
    if (tail.readUInt32LE(at) === END.signature) end = at;
  if (end < 0) return null;
  const [count, length, start] = [
    tail.readUInt16LE(end + 10),
    tail.readUInt32LE(end + 12),
    tail.readUInt32LE(end + 16),
  ];
  const all = read(start, length);
  const entries: ZipEntry[] = [];
  for (let at = 0; entries.length < count; ) {
    if (at + CENTRAL.size > all.length || all.readUInt32LE(at) !== CENTRAL.signature) return null;
    const names = all.readUInt16LE(at + 28);
    entries.push({
      name: all.toString('utf8', at + CENTRAL.size, at + CENTRAL.size + names),
      method: all.readUInt16LE(at + 10),
      packed: all.readUInt32LE(at + 20),
      at: all.readUInt32LE(at + 42),
    });
    at += CENTRAL.size + names + all.readUInt16LE(at + 30) + all.readUInt16LE(at + 32);
  }
  return entries;
}

function* unpacked(read: Read, { name, method, packed, at }: ZipEntry): Generator<Uint8Array> {
  const head = read(at, LOCAL.size);
  if (head.length < LOCAL.size || head.readUInt32LE(0) !== LOCAL.signature)
    throw new Error(`${name} is not in its place`);
  if (method !== STORED && method !== DEFLATED)
    throw new Error(`${name} is packed in a way that is not read`);
  const start = at + LOCAL.size + head.readUInt16LE(26) + head.readUInt16LE(28);
  const parts: Uint8Array[] = [];
  const inflate = new Inflate((part) => parts.push(part));
  for (let done = 0; done < packed; ) {
    const part = read(start + done, Math.min(PART, packed - done));
    if (part.length === 0) throw new Error(`${name} is cut off`);
    done += part.length;
    if (method === STORED) parts.push(part);
    else inflate.push(part, done === packed);
    yield* parts.splice(0);
  }
}
