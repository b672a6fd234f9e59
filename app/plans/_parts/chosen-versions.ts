/**
 * Two versions asked for in an address; what is not asked for, or is none of them, is the newest and the one before it.
 *
 * @param versions the newest first
 */
export function chosenVersions<V extends { version: number }>(
  versions: readonly V[],
  asked: { from?: string | undefined; to?: string | undefined },
): { before: V; after: V } | null {
  const of = (text: string | undefined) => versions.find(({ version }) => String(version) === text);
  const after = of(asked.to) ?? versions[0];
  const before = of(asked.from) ?? versions[1] ?? versions[0];
  return before && after ? { before, after } : null;
}
