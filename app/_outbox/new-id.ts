/** A new id without `randomUUID`, which browsers keep from pages served over plain HTTP in a hospital's own network. */
export function newClientId<P extends string>(prefix: P): `${P}_${string}` {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return `${prefix}_${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
