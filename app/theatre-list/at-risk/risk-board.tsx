import Link from 'next/link';
import { now } from '@/app/_server/clock';
import type { Access } from '@/app/_server/enter';
import { namesOfPieces } from '@/app/_server/names-of-pieces';
import { pageFirst } from '@/app/_server/page-first';
import { factsToTell, plannedList } from '@/app/_server/theatre-planning';
import { Disclosure } from '@/app/_ui/disclosure';
import { EmptyState } from '@/app/_ui/empty-state';
import { listCases } from '@/db/queries/cases';
import { readSetting } from '@/db/queries/settings';
import { loadWantedTurns } from '@/db/queries/turns/wantedTurns';
import { may } from '@/lib/people/permissions';
import { addDays } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { type RiskLine, riskLines } from '@/lib/theatre/planning/risk';
import { boardWords, fineWords } from '@/lib/wording/at-risk';
import styles from './at-risk.module.css';
import { GiveSetsButton } from './give-sets-button';
import { RiskList } from './risk-list';
import { riskRow } from './risk-rows';

type Stretch = 'today' | 'tomorrow' | 'week';

const STRETCHES: readonly { id: Stretch; label: string }[] = [
  { id: 'today', label: 'Today' },
  { id: 'tomorrow', label: 'Tomorrow' },
  { id: 'week', label: 'All that is planned ahead' },
];

/** The cases of a stretch of days as the plan has them now: counted, then those at risk, then those that are fine. */
export async function RiskBoard({ access, day }: { access: Access; day: Stretch }) {
  await pageFirst();
  const { db, person } = access;
  const at = now();
  const today = wallClock(at).date;
  const { horizonDays } = await readSetting(db.read, 'planning');
  const [{ facts: all, answer }, listed, called, wanted] = await Promise.all([
    plannedList(db),
    listCases(db, addDays(today, -1), addDays(today, horizonDays + 1)),
    namesOfPieces(db),
    loadWantedTurns(db, at),
  ]);
  const facts = await factsToTell(db, all);
  const caseOf = new Map<string, (typeof listed)[number]>(listed.map((one) => [one.id, one]));
  const codeOf = new Map<string, string>(facts.sets.map(({ id, code }) => [id, code]));
  const known = riskLines(facts, answer).filter((line) => caseOf.has(line.case.id));
  const within = (stretch: Stretch) => known.filter((line) => isWithin(line, stretch, today));
  const lines = within(day);
  const rowOf = (line: RiskLine) =>
    riskRow(line, caseOf.get(line.case.id) as (typeof listed)[number], {
      now: facts.now,
      ...called,
      asked: wanted
        .filter(({ forCase }) => forCase.id === line.case.id)
        .map(({ setId, ...one }) => ({ ...one, set: codeOf.get(setId) ?? setId })),
    });
  const atRisk = lines.filter(({ level }) => level !== 'fine');
  const fine = lines.filter(({ level }) => level === 'fine').map(rowOf);
  const count = (level: RiskLine['level']) => lines.filter((line) => line.level === level).length;
  const unkept = lines.some(({ notPromised, givenUp }) => notPromised.length + givenUp.length > 0);
  return (
    <div className={styles.board}>
      <nav aria-label="Days" className={styles.days}>
        <ul>
          {STRETCHES.map(({ id, label }) => (
            <li key={id}>
              <Link
                href={id === 'today' ? '/theatre-list/at-risk' : `/theatre-list/at-risk?day=${id}`}
                aria-current={id === day ? 'page' : undefined}
              >
                {`${label}: ${within(id).filter(({ level }) => level !== 'fine').length}`}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <div className={styles.summary}>
        <p id="at-risk-summary" tabIndex={-1}>
          {boardWords(count('stops'), count('notSure'), count('fine'))}
        </p>
        {unkept && may(person, 'keepTheatreList') ? <GiveSetsButton /> : null}
      </div>
      {atRisk.length > 0 ? (
        <RiskList rows={atRisk.map(rowOf)} />
      ) : (
        <EmptyState title={lines.length === 0 ? 'No case to come' : 'No case is at risk'}>
          {lines.length === 0
            ? 'Nothing is booked, or what is booked has begun.'
            : 'Every case has its sets in the sterile store and a confirmed plan.'}
        </EmptyState>
      )}
      {fine.length > 0 ? (
        <Disclosure summary={fineWords(fine.length)}>
          <ul className={styles.fine}>
            {fine.map((row) => (
              <li key={row.id}>
                <Link href={`/cases/${row.id}`}>{row.reference}</Link>
                <span>{` ${row.when}, ${row.theatre}. ${row.sentence} ${row.besides.join(' ')}`}</span>
              </li>
            ))}
          </ul>
        </Disclosure>
      ) : null}
    </div>
  );
}

function isWithin(
  { case: { startsAt } }: RiskLine,
  stretch: Stretch,
  today: ReturnType<typeof wallClock>['date'],
) {
  const { date } = wallClock(startsAt);
  // what should have begun yesterday is today's worry
  if (stretch === 'today') return date <= today;
  return stretch === 'week' || date === addDays(today, 1);
}
