'use client';

import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import { Status } from '@/app/_ui/status';
import type { KitLine } from '@/db/queries/caseLife/kitLines';

/**
 * The next thing to fetch, for somebody with gloves and a trolley: where, what, and one large press. A scan does the same.
 * Another copy is offered only where the kit says it serves exactly as well; never another design.
 */
export function NextThing({
  line,
  count,
  onHave,
}: {
  line: KitLine;
  count: { left: number; of: number };
  onHave: (line: KitLine, setId?: string) => void;
  now: string;
}) {
  const pieces = line.wanted - line.pickedPieces;
  const usable = line.problems.length === 0;
  return (
    <section className={kitStyles.next} aria-label="Next thing to fetch">
      <p className={kitStyles.walk}>{`Next, ${count.of - count.left + 1} of ${count.of}`}</p>
      <p className={kitStyles.where}>
        {line.place?.name ?? 'Place not stated'}
        {line.place ? <span className={kitStyles.walk}>{`, ${line.place.metres} m`}</span> : null}
      </p>
      <div>
        <p className={kitStyles.what}>{pieces > 1 ? `${pieces} × ${line.name}` : line.name}</p>
        <p>{line.detail}</p>
      </div>
      <dl className={kitStyles.facts}>
        <div>
          <dt>Use-by</dt>
          <dd>{line.useBy ?? 'none stated'}</dd>
        </div>
        <div>
          <dt>In theatre</dt>
          <dd>{line.role === 'open' ? 'open' : 'hold, unopened'}</dd>
        </div>
      </dl>
      {line.problems.map((sentence) => (
        <p key={sentence}>
          <Status tone="stop" look="plain">
            Not this one
          </Status>{' '}
          {sentence}
        </p>
      ))}
      {usable ? (
        <Button kind="primary" size="bench" className={kitStyles.have} onClick={() => onHave(line)}>
          {pieces > 1 ? `I have all ${pieces}` : 'I have it'}
        </Button>
      ) : null}
      {line.alike.length > 0 ? (
        <div>
          <p className={kitStyles.walk}>Or a copy that serves just as well:</p>
          <div className={kitStyles.acts}>
            {line.alike.slice(0, 3).map(({ setId, code, place }) => (
              <Button key={setId} size="bench" onClick={() => onHave(line, setId)}>
                {`I have ${code}${place === null ? '' : ` (${place})`}`}
              </Button>
            ))}
          </div>
        </div>
      ) : null}
    </section>
  );
}
