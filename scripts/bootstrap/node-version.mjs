// Loaded before anything else, by any Node.js that can read modules at all: keep the syntax old.

export const OLDEST_NODE = '20.9.0';

/**
 * What is wrong with a Node.js version, as one sentence, or null.
 * @param {string} version as in `process.versions.node`, e.g. "20.9.0"
 * @returns {string | null}
 */
export function nodeProblem(version) {
  const have = version.split('.').map(Number);
  const need = OLDEST_NODE.split('.').map(Number);
  for (let part = 0; part < need.length; part += 1) {
    if (have[part] > need[part]) return null;
    if (have[part] < need[part]) {
      return `Kitwright needs Node.js 20.9 or newer and this is ${version}: install a newer Node.js and start again.`;
    }
  }
  return null;
}
