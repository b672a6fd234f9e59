'use client';

import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { KitLine, PickedThing } from '@/db/queries/caseLife/kitLines';
import { momentWords } from '@/lib/wording/sets';

/** One line of the list: what it is, where it is or who has fetched it, and what is wrong with it. */
export function LineRow({
  line,
  pending,
  now,
  onHave = null,
  onPutBack,
}: {
  line: KitLine;
  pending: boolean;
  now: string;
  onHave?: (() => void) | null;
  onPutBack?: ((pickId: string) => void) | undefined;
}) {
  const pieces = line.wanted > 1 ? `${line.wanted} × ${line.name}` : line.name;
  const complete = line.pickedPieces >= line.wanted;
  const problems = [...line.problems, ...line.picked.flatMap((thing) => thing.problems)];
  const by = line.picked[0];
  return (
    <li className={kitStyles.row} data-pending={pending || undefined}>
      <div>
        <p className={kitStyles.name}>{pieces}</p>
        <p className={kitStyles.under}>{line.detail}</p>
      </div>
      <div>
        {complete && by ? (
          <p>
            <Status tone={problems.length > 0 ? 'stop' : 'good'}>
              {problems.length > 0 ? 'look' : 'picked'}
            </Status>{' '}
            {by.name === line.name ? '' : `${by.name}, `}
            {`${momentWords(by.at, now)}, ${by.by}`}
          </p>
        ) : (
          <p>
            {line.place?.name ?? 'place not stated'}
            {line.readyAt ? `; comes ${momentWords(line.readyAt, now)}` : ''}
            {line.pickedPieces > 0 ? `; ${line.pickedPieces} of ${line.wanted} picked` : ''}
          </p>
        )}
        <p className={kitStyles.under}>
          {`${line.role === 'open' ? 'open' : 'hold'} · use-by ${line.useBy ?? 'none stated'}`}
        </p>
      </div>
      <div className={kitStyles.acts}>
        {pending ? <Status tone="unknown">pending</Status> : null}
        {!complete && onHave && line.problems.length === 0 && !pending ? (
          <Button size="bench" onClick={onHave} aria-label={`I have ${pieces}`}>
            I have it
          </Button>
        ) : null}
        {onPutBack
          ? line.picked
              .filter(({ out }) => !out)
              .map(({ pickId, name }) => (
                <Button
                  key={pickId}
                  kind="quiet"
                  size="bench"
                  onClick={() => onPutBack(pickId)}
                  aria-label={`Put ${name} back`}
                >
                  Put back
                </Button>
              ))
          : null}
      </div>
      {problems.length > 0 ? (
        <ul className={kitStyles.problems}>
          {problems.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : null}
    </li>
  );
}

/** Something that goes back to where it came from. */
export function PutBackRow({
  thing,
  pending,
  onPutBack,
}: {
  thing: PickedThing;
  pending: boolean;
  onPutBack: (() => void) | null;
}) {
  return (
    <li className={kitStyles.row} data-pending={pending || undefined}>
      <p className={kitStyles.name}>
        {thing.quantity > 1 ? `${thing.quantity} × ${thing.name}` : thing.name}
      </p>
      <p>{`back to ${thing.place ?? 'its place, which is not stated'}`}</p>
      {pending ? (
        <Status tone="unknown">pending</Status>
      ) : onPutBack ? (
        <Button size="bench" onClick={onPutBack} aria-label={`${thing.name} is back`}>
          It is back
        </Button>
      ) : null}
    </li>
  );
}
