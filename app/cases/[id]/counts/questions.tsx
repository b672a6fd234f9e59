import Link from 'next/link';
import kitStyles from '@/app/_kit/kit.module.css';
import { Status } from '@/app/_ui/status';
import type { TheatreQuestion } from '@/db/queries/theatreCounts/questions';
import { momentWords } from '@/lib/wording/sets';
import { QUESTION_ACT_WORDS, questionWords, SETTLED_AS_WORDS } from '@/lib/wording/theatre-counts';
import { QuestionActs } from './question-acts';

/** Figures that did not come out: what was done about each, and how two people settled it. */
export function Questions({
  questions,
  mayWork,
  maySettleAsNotFound,
  now,
}: {
  questions: readonly TheatreQuestion[];
  mayWork: boolean;
  maySettleAsNotFound: boolean;
  now: string;
}) {
  return (
    <ul className={kitStyles.list} aria-label="Open questions">
      {questions.map((question) => (
        <li key={question.id} className={kitStyles.row}>
          <div>
            <p className={kitStyles.name}>{questionWords(question)}</p>
            <p className={kitStyles.under}>
              {question.set ? (
                <Link href={`/sets/${question.set.id}`}>{question.set.code}</Link>
              ) : (
                'added at the table'
              )}
              {`, opened ${momentWords(question.openedAt, now)}`}
            </p>
            <p>
              {question.settled ? (
                <Status tone={question.settled.as === 'accountedFor' ? 'good' : 'attention'}>
                  {SETTLED_AS_WORDS[question.settled.as]}
                </Status>
              ) : (
                <Status tone="stop">
                  {question.unaccounted === 0
                    ? 'open, all accounted for'
                    : `open, ${question.unaccounted} unaccounted for`}
                </Status>
              )}
            </p>
          </div>
          <div>
            {question.acts.map(({ id, kind, pieces, note, by, at }) => (
              <p key={id}>
                {`${QUESTION_ACT_WORDS[kind]}${pieces === null ? '' : ` ${pieces}`}, ${momentWords(at, now)}, ${by}`}
                {note === null ? '' : `: ${note}`}
              </p>
            ))}
            {question.settled ? (
              <p>
                {`${momentWords(question.settled.at, now)}, ${question.settled.by} with ${question.settled.with}: ${question.settled.because}`}
              </p>
            ) : null}
          </div>
          {question.settled === null && mayWork ? (
            <QuestionActs
              question={{ id: question.id, thing: question.thing, unaccounted: question.unaccounted }}
              maySettleAsNotFound={maySettleAsNotFound}
            />
          ) : null}
        </li>
      ))}
    </ul>
  );
}
