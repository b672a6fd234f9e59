'use client';

import { Disclosure } from '@/app/_ui/disclosure';
import { Status } from '@/app/_ui/status';
import { FINDING_GROUPS, type PlanFinding } from '@/lib/plans/planFinding';
import { asksForALook } from '@/lib/plans/remarks';
import { sourceWords } from '@/lib/wording/fit';
import { GROUP_MEANINGS, GROUP_WORDS, placeWords, planFindingSentence } from '@/lib/wording/planFindings';
import { GROUP_TONES } from './finding-tones';
import styles from './planner.module.css';

/** Everything there is to say about the plan, grouped by what it asks; the same sentence for several holes is said once. */
export function FindingPanel({
  findings,
  onGo,
}: {
  findings: readonly PlanFinding[];
  /** Leads to the place a finding is about. */
  onGo: (finding: PlanFinding) => void;
}) {
  const counts = FINDING_GROUPS.filter((group) => group !== 'note').map((group) => ({
    group,
    all: findings.filter((one) => one.group === group),
  }));
  const notes = findings.filter(({ group }) => group === 'note');
  return (
    <div className={styles.findings}>
      <p className={styles.counts} role="status">
        {counts.map(({ group, all }) => (
          <Status key={group} tone={all.length > 0 ? GROUP_TONES[group] : 'neutral'} look="plain">
            {`${GROUP_WORDS[group]}: ${group === 'remark' ? all.filter(asksForALook).length : all.length}`}
          </Status>
        ))}
      </p>
      {counts
        .filter(({ all }) => all.length > 0)
        .map(({ group, all }) => (
          <section key={group} className={styles.group} aria-label={GROUP_WORDS[group]}>
            <h3>
              <Status tone={GROUP_TONES[group]}>{GROUP_WORDS[group]}</Status>
              <span className={styles.soft}>{GROUP_MEANINGS[group]}</span>
            </h3>
            <FindingLines findings={group === 'remark' ? all.filter(asksForALook) : all} onGo={onGo} />
            {group === 'remark' && all.some((one) => !asksForALook(one)) ? (
              <Disclosure summary={`Other figures (${all.filter((one) => !asksForALook(one)).length})`}>
                <FindingLines findings={all.filter((one) => !asksForALook(one))} onGo={onGo} />
              </Disclosure>
            ) : null}
          </section>
        ))}
      {notes.length > 0 ? (
        <Disclosure summary={`${GROUP_WORDS.note}s (${together(notes).length}): ${GROUP_MEANINGS.note}`}>
          <FindingLines findings={notes} onGo={onGo} />
        </Disclosure>
      ) : null}
    </div>
  );
}

function FindingLines({
  findings,
  onGo,
}: {
  findings: readonly PlanFinding[];
  onGo: (finding: PlanFinding) => void;
}) {
  return (
    <ul>
      {together(findings).map(({ sentence, source, findings: same }) => (
        <li key={sentence}>
          <span className={styles.places}>
            {same.map((finding) => (
              <button
                key={`${finding.path.join('/')} ${finding.code}`}
                type="button"
                className={styles.place}
                onClick={() => onGo(finding)}
              >
                {placeWords(finding.at)}
              </button>
            ))}
          </span>
          <span>{sentence}</span>
          {source ? <span className={styles.soft}>Source: {source}</span> : null}
        </li>
      ))}
    </ul>
  );
}

function together(findings: readonly PlanFinding[]) {
  const said = new Map<string, { sentence: string; source: string | null; findings: PlanFinding[] }>();
  for (const finding of findings) {
    const sentence = planFindingSentence(finding);
    const same = said.get(sentence);
    if (same) same.findings.push(finding);
    else said.set(sentence, { sentence, source: sourceOf(finding), findings: [finding] });
  }
  return [...said.values()];
}

function sourceOf(finding: PlanFinding): string | null {
  if (finding.code === 'remark') return finding.source;
  if (finding.code === 'fit' && finding.finding.source) return sourceWords(finding.finding.source);
  return null;
}
