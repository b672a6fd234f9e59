/**
 * One thing wrong with what was entered.
 *
 * `path` names the field as dotted text, e.g. `lengthMm` or `holes.3.alongMm`; an empty path is about the whole form.
 * `sentence` is written for people and names the way out.
 */
export type FieldProblem = { path: string; sentence: string };

/** The DOM id of the field with this name or path: `holes.3.alongMm` becomes `field-holes-3-alongMm`. */
export function fieldId(path: string): string {
  return `field-${path.replace(/[^A-Za-z0-9]+/g, '-')}`;
}

/** The sentences that belong to one field, for its `problems` prop. */
export function problemsAt(problems: readonly FieldProblem[], path: string): string[] {
  return problems.filter((problem) => problem.path === path).map((problem) => problem.sentence);
}
