import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import type { LoanClaim, LoanOnScreen } from '@/db/queries/loans/loanOnScreen';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { loanReturnWords } from '@/lib/wording/loan-paper';
import { CLAIM_STATE_TONES, CLAIM_STATE_WORDS, lastThereWords, stageWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords } from '@/lib/wording/sets';
import styles from '../loans.module.css';
import { ClaimDialog, SettleDialog } from './claim-forms';

/** What is not as it should be, and what came of saying so. A person opens each claim, and a person ends it. */
export function Claims({ found, person, at }: { found: LoanOnScreen; person: { role: Role }; at: string }) {
  const { loan, claims, unclaimed, lines } = found;
  if (claims.length + unclaimed.length === 0) return null;
  const seen = { id: loan.id, number: loan.number, revision: loan.revision };
  const keeps = may(person, 'keepLoans');
  const nameOf = (lineId: string) => lines.find(({ id }) => id === lineId)?.name ?? '';
  return (
    <>
      {unclaimed.length === 0 ? null : (
        <Section title="Not as it should be" note="and not put to the lender yet">
          <ul className={styles.plain} aria-label="Not put to the lender yet">
            {unclaimed.map(({ lineId, stage, kind, quantity }) => {
              const what = `${quantity} × ${nameOf(lineId)}, ${loanReturnWords.kinds[kind]} ${stageWords(stage)}`;
              return (
                <li key={`${lineId} ${stage} ${kind}`}>
                  <span>{what}</span>
                  {keeps ? <ClaimDialog loan={seen} found={{ lineId, stage, kind, what }} /> : null}
                </li>
              );
            })}
          </ul>
        </Section>
      )}
      {claims.length === 0 ? null : (
        <Section title="Claims">
          <ul className={styles.plain} aria-label="Claims">
            {claims.map((claim) => (
              <li key={claim.id}>
                <Status tone={CLAIM_STATE_TONES[claim.state]}>
                  {capitalised(CLAIM_STATE_WORDS[claim.state])}
                </Status>
                <strong>{whatOf(claim)}</strong>
                <span>{`Last there ${lastThereWords(claim.lastThere.step, claim.lastThere.at === null ? null : momentWords(claim.lastThere.at, at))}.`}</span>
                <span
                  className={styles.soft}
                >{`${claim.openedBy}, ${momentWords(claim.openedAt, at)}: ${claim.words}`}</span>
                {claim.saidBy === null ? null : <span>{`${claim.saidBy}: ${claim.saidWords}`}</span>}
                {keeps && (claim.state === 'open' || claim.state === 'disputed') ? (
                  <SettleDialog loan={seen} claim={{ id: claim.id, what: whatOf(claim) }} />
                ) : null}
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}

const whatOf = ({ quantity, line, kind, stage }: LoanClaim) =>
  `${quantity} × ${line}, ${loanReturnWords.kinds[kind]} ${stageWords(stage)}`;
