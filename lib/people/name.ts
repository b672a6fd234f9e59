/** A name as it is compared: whatever its capitals, spaces and accents' encoding, it is the same name. */
export function comparableName(name: string): string {
  return name.normalize('NFC').trim().replace(/\s+/g, ' ').toLocaleLowerCase('en-GB');
}
