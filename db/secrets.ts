import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';

/** Argon2id with what the OWASP Password Storage Cheat Sheet asks at the least: 19 MiB, two passes, one lane. */
const ARGON2ID = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** What a person remembers, as it is kept. */
export function hashSecret(secret: string): Promise<string> {
  return hash(secret.normalize('NFC'), ARGON2ID);
}

/** A hash of a secret nobody knows: what is checked where there is nothing to check, so that both take as long. */
let nobodys: Promise<string> | null = null;

/** Whether this is the secret. Takes as long when there is none to compare with. */
export async function isSecret(kept: string | null, secret: string): Promise<boolean> {
  nobodys ??= hashSecret(randomBytes(32).toString('base64url'));
  const right = await verify(kept ?? (await nobodys), secret.normalize('NFC'));
  return kept !== null && right;
}

/** 32 random bytes as text, for what a browser keeps. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** A password made up for somebody, in groups that can be read out; 80 random bits, to be changed at once. */
export const newPassword = (): string => grouped(randomBytes(16));

/** The code that names the first administrator: 60 random bits for an hour. */
export const newOneTimeCode = (): string => grouped(randomBytes(12));

/** Letters and digits that are not taken for one another. */
const READABLE = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';
const grouped = (bytes: Uint8Array): string =>
  [...bytes].map((byte, at) => `${at > 0 && at % 4 === 0 ? '-' : ''}${READABLE[byte % 32]}`).join('');

/** A random code as it is kept: it has too many bits to be guessed, so a fast hash will do. */
export const hashCode = (code: string): string => createHash('sha256').update(code).digest('hex');

export function isCode(keptHash: string, code: string): boolean {
  return timingSafeEqual(Buffer.from(keptHash), Buffer.from(hashCode(code)));
}

/** The ticket of a session follows from its token, so that a page can be given it and nothing more need be kept. */
export const ticketOf = (token: string): string =>
  createHmac('sha256', token).update('ticket').digest('base64url');
