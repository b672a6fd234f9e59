/** An address longer than this may be cut by browsers or proxies on its way. */
export const LONGEST_IN_ADDRESS = 6000;

/** What an address brings with it: an input, nothing, or something that cannot be read. */
export type SharedInput = { kind: 'none' } | { kind: 'read'; input: unknown } | { kind: 'unreadable' };

/** Reads `?input=`: JSON as it is, or base64url of it. */
export function readSharedInput(text: string | string[] | undefined): SharedInput {
  if (text === undefined || text === '') return { kind: 'none' };
  if (Array.isArray(text)) return { kind: 'unreadable' };
  for (const read of [() => text, () => fromBase64Url(text)]) {
    try {
      return { kind: 'read', input: JSON.parse(read()) };
    } catch {
      // not in this form: the next one, or unreadable
    }
  }
  return { kind: 'unreadable' };
}

function fromBase64Url(text: string): string {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return new TextDecoder('utf-8', { fatal: true }).decode(
    Uint8Array.from(binary, (byte) => byte.charCodeAt(0)),
  );
}

/** The address that repeats an input, or `null` where it would be too long. */
export function sharedAddress(name: string, input: unknown): string | null {
  const address = `/calculations/${name}?input=${encodeURIComponent(JSON.stringify(input))}`;
  return address.length > LONGEST_IN_ADDRESS ? null : address;
}
