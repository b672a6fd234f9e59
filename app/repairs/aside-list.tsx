import Link from 'next/link';
import type { AsidePiece } from '@/db/queries/turns/asidePieces';
import { ASIDE_OUTCOME_WORDS, ASIDE_ROUTE_WORDS } from '@/lib/wording/aside';
import { capitalised } from '@/lib/wording/numbers';
import { CONDITION_WORDS, momentWords } from '@/lib/wording/sets';
import styles from './repairs.module.css';

/** Pieces put aside, one line each: what, why, from where, and what became of it. */
export function AsideList({
  pieces,
  now,
  children,
}: {
  pieces: readonly AsidePiece[];
  now: string;
  /** What can be done with a piece. */
  children?: (piece: AsidePiece) => React.ReactNode;
}) {
  return (
    <ul className={styles.list} aria-label="Pieces put aside">
      {pieces.map((piece) => (
        <li key={piece.id}>
          <div>
            <p>
              <strong>{`${piece.quantity} × `}</strong>
              <Link href={`/catalogue/${piece.item.id}`}>{piece.item.name}</Link>
              <span className={styles.soft}>{` ${piece.item.code}`}</span>
            </p>
            <p>
              {capitalised(CONDITION_WORDS[piece.condition])}
              {piece.route === null ? '' : `, ${ASIDE_ROUTE_WORDS[piece.route]}`}
              <span className={styles.soft}>
                {`; put aside ${momentWords(piece.foundAt, now)} by ${piece.foundBy}`}
                {piece.set === null ? null : (
                  <>
                    {' from '}
                    <Link href={`/sets/${piece.set.id}`}>{piece.set.code}</Link>
                  </>
                )}
              </span>
            </p>
            {piece.settled === null ? null : (
              <p>{`${capitalised(ASIDE_OUTCOME_WORDS[piece.settled.outcome])}, ${momentWords(piece.settled.at, now)}, ${piece.settled.by}.`}</p>
            )}
          </div>
          {children?.(piece)}
        </li>
      ))}
    </ul>
  );
}
