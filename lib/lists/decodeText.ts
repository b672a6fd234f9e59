import { decodeWindows1252 } from './windows1252';

/** How the letters of a text file are written. */
export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof ENCODINGS)[number];

/** `mark`: the file says it itself; `bytes`: its bytes allow nothing else that is read here; `person`: somebody said so. */
export type Decoded =
  | { ok: true; text: string; encoding: Encoding; by: 'mark' | 'bytes' | 'person' }
  | { ok: false };

const begins = (bytes: Uint8Array, ...first: number[]) => first.every((byte, at) => bytes[at] === byte);

/**
 * The text of a file: in the encoding its mark names; else in the one a person named; else UTF-8 where its bytes are that;
 * else Windows-1252, where every byte is a letter of it. What has letters in none of them is no text.
 */
export function decodeText(bytes: Uint8Array, asked: Encoding | null): Decoded {
  const marked = markOf(bytes);
  if (marked !== null) return decoded(bytes, marked, 'mark');
  if (asked !== null) return decoded(bytes, asked, 'person');
  const utf8 = decoded(bytes, 'utf-8', 'bytes');
  if (utf8.ok) return utf8;
  return decoded(bytes, 'windows-1252', 'bytes');
}

function markOf(bytes: Uint8Array): Encoding | null {
  if (begins(bytes, 0xef, 0xbb, 0xbf)) return 'utf-8';
  if (begins(bytes, 0xff, 0xfe)) return 'utf-16le';
  return begins(bytes, 0xfe, 0xff) ? 'utf-16be' : null;
}

function decoded(bytes: Uint8Array, encoding: Encoding, by: 'mark' | 'bytes' | 'person'): Decoded {
  try {
    const text =
      encoding === 'windows-1252'
        ? decodeWindows1252(bytes)
        : new TextDecoder(encoding, { fatal: true }).decode(bytes);
    // a file of two-byte letters without its mark is full of nothing
    return text === null || hasControls(text) ? { ok: false } : { ok: true, text, encoding, by };
  } catch {
    return { ok: false };
  }
}

/** Controls other than tabs and ends of lines, which no list is written with. */
function hasControls(text: string): boolean {
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code < 32 ? code !== 9 && code !== 10 && code !== 13 : code >= 127 && code < 160) return true;
  }
  return false;
}
