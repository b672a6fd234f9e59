#!/usr/bin/env node
/**
 * Checks an exported ledger by itself: it needs Node.js and nothing of the program that wrote the ledger.
 *
 *   node standalone-verify.mjs ledger.jsonl [--heads heads.jsonl] [--head "12345:3f9a0c1e77b2d004"]
 *
 * `--heads` is the file in which the program wrote the newest entry's hash at a second place; `--head` is one head as it
 * is printed at the foot of a sheet: the entry's number, and 16 digits of its hash or more. Without either, entries that
 * were cut off at the end, and a ledger that was written anew from its first entry, cannot be seen.
 *
 * Exit code 0: nothing wrong. 1: something is. 2: it could not be checked.
 *
 * How an entry's hash is made, in SHA-256 over UTF-8, as 64 small hexadecimal digits:
 *   form 2  the JSON array ["kitwright ledger 2", previousHash, seq, doneAt, enteredAt, personId, action, subjectKind,
 *           subjectId, detail], without blanks, `detail` being the stored text as a string
 *   form 1  previousHash, then the JSON array [seq, doneAt, enteredAt, personId, action, subjectKind, subjectId, detail],
 *           `detail` being read, with the members of its objects sorted by name
 * The first entry follows 64 zeros. Entries of form 1 are closed by one named "seal-earlier-entries", whose digest is made
 * by d = SHA-256(d + seq + ":" + detail) over all of them, from 64 zeros on.
 */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const MEMBERS = 'action,detail,doneAt,enteredAt,form,hash,personId,previousHash,seq,subjectId,subjectKind';
const ZEROS = '0'.repeat(64);

/** @param {string} text */
const sha256 = (text) => createHash('sha256').update(Buffer.from(text, 'utf8')).digest('hex');

/**
 * @typedef {{ seq: number, form: number, doneAt: string, enteredAt: string, personId: string | null, action: string,
 *   subjectKind: string, subjectId: string, detail: string, previousHash: string, hash: string }} Entry
 * @typedef {{ seq: number, hash: string, ledger?: string, at?: string }} Head
 */

/**
 * @param {{ ledger: Uint8Array, heads?: string, known?: Head[] }} given
 * @returns {{ entries: number, head: { seq: number, hash: string } | null, heads: number, faults: string[] }}
 */
export function verifyLedger({ ledger, heads = '', known = [] }) {
  /** @type {string[]} */
  const faults = [];
  const { entries, problem } = readEntries(ledger);
  if (problem) faults.push(problem);
  let previous = ZEROS;
  let number = 0;
  let form = 1;
  let digest = ZEROS;
  for (const entry of entries) {
    const name = `entry ${entry.seq}`;
    if (entry.seq !== number + 1) faults.push(`${name} stands where entry ${number + 1} should be`);
    if (entry.previousHash !== previous) faults.push(`${name} does not follow from the entry before it`);
    if (entry.form < form || (entry.form !== 1 && entry.form !== 2)) {
      faults.push(`${name} is of a form it cannot be of`);
    } else if (hashOf(entry) !== entry.hash) {
      faults.push(`${name} was changed after it was written`);
    }
    if (entry.form === 1) {
      digest = sha256(`${digest}${entry.seq}:${entry.detail}`);
      if (!rewritesTo(entry.detail, entry.detail)) faults.push(`the text of ${name} was changed`);
    } else if (form === 1) {
      if (
        number > 0 &&
        !(entry.action === 'seal-earlier-entries' && parse(entry.detail)?.digest === digest)
      ) {
        faults.push(`the text of an entry before entry ${entry.seq} was changed, or their seal is not there`);
      }
      form = entry.form;
    }
    previous = entry.hash;
    number = entry.seq;
  }
  const read = readHeads(heads);
  faults.push(...read.faults, ...headFaults([...read.heads, ...known], entries));
  const last = entries.at(-1);
  return {
    entries: entries.length,
    head: last ? { seq: last.seq, hash: last.hash } : null,
    heads: read.heads.length + known.length,
    faults,
  };
}

/** @param {Entry} entry */
function hashOf(entry) {
  const { seq, doneAt, enteredAt, personId, action, subjectKind, subjectId, detail, previousHash } = entry;
  const said = [seq, doneAt, enteredAt, personId, action, subjectKind, subjectId];
  if (entry.form === 2) return sha256(JSON.stringify(['kitwright ledger 2', previousHash, ...said, detail]));
  const value = parse(detail);
  return value === undefined ? null : sha256(previousHash + JSON.stringify([...said, sorted(value)]));
}

/** @param {any} value @returns {any} */
function sorted(value) {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  const names = Object.keys(value).sort();
  return Object.fromEntries(names.map((name) => [name, sorted(value[name])]));
}

/** Every byte counts: a line must be exactly what writing its entry again gives. @param {Uint8Array} bytes */
function readEntries(bytes) {
  /** @type {Entry[]} */
  const entries = [];
  let text;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return { entries, problem: 'the file is not UTF-8' };
  }
  const lines = text.split('\n');
  if (lines.pop() !== '') return { entries, problem: 'the file does not end after a whole line' };
  for (const [at, line] of lines.entries()) {
    const entry = parse(line);
    if (!isEntry(entry) || !rewritesTo(line, line) || /\p{Surrogate}/u.test(line)) {
      return { entries, problem: `line ${at + 1} is not an entry as it is exported` };
    }
    entries.push(entry);
  }
  return { entries, problem: null };
}

/** @param {any} value @returns {value is Entry} */
function isEntry(value) {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return false;
  if (Object.keys(value).join(',') !== MEMBERS) return false;
  const { seq, form, personId, ...texts } = value;
  return (
    Number.isSafeInteger(seq) &&
    Number.isSafeInteger(form) &&
    (personId === null || typeof personId === 'string') &&
    Object.values(texts).every((text) => typeof text === 'string')
  );
}

/** @param {string} text @param {string} expected */
function rewritesTo(text, expected) {
  const value = parse(text);
  return value !== undefined && JSON.stringify(value) === expected;
}

/** `undefined` where it is not JSON. @param {string} text @returns {any} */
function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** @param {string} text */
function readHeads(text) {
  /** @type {Head[]} */
  const heads = [];
  const faults = [];
  const lines = text.split('\n');
  // what follows the last line feed was cut short by a crash, if there is anything
  lines.pop();
  for (const [at, line] of lines.entries()) {
    const head = parse(line);
    if (
      Number.isSafeInteger(head?.seq) &&
      /^[0-9a-f]{64}$/.test(head.hash) &&
      /^[0-9a-f]{64}$/.test(head.ledger)
    ) {
      heads.push(head);
    } else if (line !== '' && !(line.startsWith('{"at":"'.slice(0, line.length)) && !line.endsWith('}'))) {
      faults.push(`line ${at + 1} of the heads cannot be read`);
    }
  }
  return { heads, faults };
}

/** @param {Head[]} heads @param {Entry[]} entries */
function headFaults(heads, entries) {
  const faults = [];
  const bySeq = new Map(entries.map((entry) => [entry.seq, entry]));
  const last = entries.at(-1)?.seq ?? 0;
  const highest = new Map();
  for (const head of heads) {
    const when = head.at
      ? `the head of entry ${head.seq} written at ${head.at}`
      : `the head of entry ${head.seq}`;
    if (head.ledger && head.ledger !== entries[0]?.hash) {
      faults.push(`${when} is of a ledger with another first entry`);
      continue;
    }
    if (head.seq > last)
      faults.push(`${when} lies beyond the end: entries ${last + 1} to ${head.seq} are gone`);
    else if (!bySeq.get(head.seq)?.hash.startsWith(head.hash))
      faults.push(`${when} is of another entry ${head.seq}`);
    if (head.ledger && head.at) {
      const before = highest.get(head.ledger) ?? 0;
      if (head.seq < before) faults.push(`${when} comes after the head of entry ${before}`);
      highest.set(head.ledger, Math.max(before, head.seq));
    }
  }
  return faults;
}

/** `12345:3f9a 0c1e …` or `12,345 · 3f9a 0c1e …`. @param {string} text @returns {Head | null} */
function readPrinted(text) {
  const match = /^\s*([\d, ]+)\s*[:·]\s*([0-9a-f ]+)$/i.exec(text);
  const seq = Number(match?.[1]?.replaceAll(/[, ]/g, ''));
  const hash = match?.[2]?.replaceAll(' ', '').toLowerCase() ?? '';
  return seq >= 1 && Number.isSafeInteger(seq) && hash.length >= 16 && hash.length <= 64
    ? { seq, hash }
    : null;
}

/** @param {string[]} words @returns {number} exit code */
function main(words) {
  let heads = '';
  /** @type {Head[]} */
  const known = [];
  let file = null;
  try {
    for (let at = 0; at < words.length; at += 1) {
      if (words[at] === '--heads') heads += readFileSync(words[++at] ?? '', 'utf8');
      else if (words[at] === '--head') {
        const head = readPrinted(words[++at] ?? '');
        if (!head)
          throw new Error('a head is written as 12345:3f9a0c1e77b2d004, with 16 digits of the hash or more');
        known.push(head);
      } else file = words[at] ?? null;
    }
    if (file === null) throw new Error('name the exported ledger: node standalone-verify.mjs ledger.jsonl');
    const {
      entries,
      head,
      faults,
      heads: compared,
    } = verifyLedger({ ledger: readFileSync(file), heads, known });
    for (const fault of faults.slice(0, 50)) console.log(`WRONG: ${fault}.`);
    if (faults.length > 50) console.log(`WRONG: ${faults.length - 50} more.`);
    console.log(`${entries} entries read, ${compared} heads compared.`);
    if (head) console.log(`The newest is entry ${head.seq}, hash ${head.hash}.`);
    if (compared === 0) console.log('Without heads, entries cut off at the end cannot be seen.');
    console.log(faults.length === 0 ? 'Nothing was changed.' : 'This ledger is not as it was written.');
    return faults.length === 0 ? 0 : 1;
  } catch (error) {
    console.error(`Not checked: ${error instanceof Error ? error.message : error}.`);
    return 2;
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href)
  process.exitCode = main(process.argv.slice(2));
