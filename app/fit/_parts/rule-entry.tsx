import Link from 'next/link';
import type { FitRule } from '@/lib/fit/rule';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { asSentence, conditionWords, ruleTitle, sourceWords } from '@/lib/wording/fit';
import styles from './rule-entry.module.css';
import { SeverityMark, StandingMark } from './rule-status';

/** A sentence with its placeholders as words: `{screw.threadUm}` is set apart as what will be filled in. */
export function RuleSentence({ sentence, words }: { sentence: string; words: (fact: string) => string }) {
  const parts = sentence.split(/\{([^{}]*)\}/);
  return (
    <>
      {parts.map((part, index) =>
        // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one sentence never move
        index % 2 ? <em key={index} className={styles.filled}>{`[${words(part)}]`}</em> : part,
      )}
    </>
  );
}

/** One rule in the list: what it requires, what it says when broken, where it comes from. */
export function RuleEntry({ rule, today }: { rule: FitRule; today: PlainDate }) {
  const always = 'all' in rule.appliesWhen && rule.appliesWhen.all.length === 0;
  return (
    <li className={styles.entry}>
      <div className={styles.marks}>
        <SeverityMark severity={rule.severity} />
        {rule.status === 'inForce' && rule.inForceUntil === null && !rule.withdrawalAskedBy ? null : (
          <StandingMark rule={rule} today={today} />
        )}
      </div>
      <div className={styles.body}>
        <h3 className={styles.title}>
          <Link href={`/fit/rules/${rule.code}`}>{ruleTitle(rule.code)}</Link>
        </h3>
        <p className={styles.spec}>
          <span className={styles.when}>Requires: </span>
          {asSentence(conditionWords(rule.relation, rule.requires), false)}
          {always ? null : (
            <span className={styles.when}>
              {' '}
              Only where {conditionWords(rule.relation, rule.appliesWhen)}.
            </span>
          )}
        </p>
        <p className={styles.source}>{sourceWords(rule.source)}</p>
      </div>
    </li>
  );
}
