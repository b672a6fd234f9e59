import { Status } from '@/app/_ui/status';
import { isCautioned } from '@/lib/kits/cautioned';
import type { LinkVerdict } from '@/lib/kits/need';
import { RELATION_WORDS, sourceWords } from '@/lib/wording/fit';
import { outcomeWord } from '@/lib/wording/outcome-words';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';

/** Every answer that a need rests on: what was asked of what, how it came out, and each rule's word with its source. */
export function Reasons({
  answers,
  names,
  label,
}: {
  answers: readonly LinkVerdict[];
  names: KitNames;
  label: string;
}) {
  const groups = grouped(answers, names);
  if (groups.length === 0) return <p className={styles.aside}>No rule is asked about it.</p>;
  return (
    <ul className={styles.reasons} aria-label={label}>
      {groups.map(({ key, subject, answer }) => (
        <li key={key}>
          <p className={styles.reasonHead}>
            <Status tone={toneOf(answer)} look="plain">
              {isCautioned(answer) && answer.verdict.outcome === 'fits'
                ? 'Fits, with a caution'
                : outcomeWord(answer.verdict.outcome, 'stops')}
            </Status>{' '}
            <strong>{RELATION_WORDS[answer.verdict.relation].name}</strong>: {subject}
          </p>
          <ul className={styles.reasonLines}>
            {answer.verdict.findings
              .filter((finding) => !finding.outranked)
              .map((finding) => (
                <li key={finding.sentence} data-answer={finding.answer}>
                  {finding.answer === 'met' || finding.severity === 'stops'
                    ? ''
                    : `${outcomeWord('doesNotFit', finding.severity)}: `}
                  {finding.sentence}
                  {finding.source ? (
                    <span className={styles.reasonSource}> {sourceWords(finding.source)}</span>
                  ) : null}
                </li>
              ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

function toneOf(answer: LinkVerdict): 'good' | 'attention' | 'stop' | 'unknown' {
  if (answer.verdict.outcome === 'doesNotFit') return 'stop';
  if (answer.verdict.outcome === 'notEstablished') return 'unknown';
  return isCautioned(answer) ? 'attention' : 'good';
}

/** The same words about several lengths of one design are said once. */
function grouped(answers: readonly LinkVerdict[], names: KitNames) {
  const groups = new Map<string, { key: string; subject: string; answer: LinkVerdict }>();
  for (const answer of answers) {
    const { relation, outcome, findings } = answer.verdict;
    const key = [relation, outcome, answer.itemIds[0], ...findings.map((finding) => finding.sentence)].join(
      '|',
    );
    const subject =
      answer.itemIds.map(names.item).join(' with ') + (answer.holeId ? `, hole ${answer.holeId}` : '');
    if (!groups.has(key)) groups.set(key, { key, subject, answer });
  }
  return [...groups.values()];
}
