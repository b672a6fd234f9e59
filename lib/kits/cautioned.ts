import type { LinkVerdict } from './need';

/** The cautions among answers: rules that are not met but do not stop. */
export function cautionsOf(answers: readonly LinkVerdict[]): LinkVerdict[] {
  return answers.filter(isCautioned);
}

const known = new WeakMap<LinkVerdict['verdict'], boolean>();

export function isCautioned({ verdict }: LinkVerdict): boolean {
  const before = known.get(verdict);
  if (before !== undefined) return before;
  const cautioned = verdict.findings.some(
    (finding) => finding.severity === 'caution' && finding.answer === 'notMet' && !finding.outranked,
  );
  known.set(verdict, cautioned);
  return cautioned;
}
