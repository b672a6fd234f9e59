import type { LinkVerdict } from './need';

/** The cautions among answers: rules that are not met but do not stop. */
export function cautionsOf(answers: readonly LinkVerdict[]): LinkVerdict[] {
  return answers.filter(isCautioned);
}

export function isCautioned({ verdict }: LinkVerdict): boolean {
  return verdict.findings.some(
    (finding) => finding.severity === 'caution' && finding.answer === 'notMet' && !finding.outranked,
  );
}
