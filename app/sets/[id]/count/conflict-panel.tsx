'use client';

import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { type CountDraft, differingLines, type HeldNow } from '@/lib/sets/countDraft';
import { wallClock } from '@/lib/theatre/localTime';
import styles from './count.module.css';
import type { CountLine } from './count-subject';

/** What the set holds by another's doing, as the refusal says it. */
export interface HeldByOther {
  revision: number;
  lines: HeldNow[];
  countedBy: string | null;
  countedAt: string | null;
}

/** A count that began before somebody else changed the set: both values, line by line, and the ways on. */
export function ConflictPanel({
  draft,
  theirs,
  lines,
  onDiscard,
  onRecount,
}: {
  draft: CountDraft;
  theirs: HeldByOther;
  lines: ReadonlyMap<string, CountLine>;
  onDiscard: () => void;
  onRecount: () => void;
}) {
  const differing = differingLines(draft, theirs.lines);
  const when = theirs.countedAt ? ` at ${wallClock(theirs.countedAt).time}` : '';
  return (
    <Section title="The set was changed since this count began" look="sheet">
      <p>
        <Status tone="stop">Nothing was saved</Status>
      </p>
      <p>
        {theirs.countedBy ? `Last counted by ${theirs.countedBy}${when}. ` : ''}
        {differing.length === 0
          ? 'What you entered is the same as what stands now.'
          : `${differing.length} of your lines differ from what stands now.`}
      </p>
      {differing.length > 0 ? (
        <table className={styles.both}>
          <caption className={styles.hidden}>Lines that differ</caption>
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">You found</th>
              <th scope="col">Stands now</th>
            </tr>
          </thead>
          <tbody>
            {differing.map(({ lineId, mine, theirs: held }) => (
              <tr key={lineId}>
                <th scope="row">{lines.get(lineId)?.name ?? lineId}</th>
                <td>{figures(mine.found, mine.unsound)}</td>
                <td>{held === null ? 'not counted' : figures(String(held.found), String(held.unsound))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <ButtonRow>
        <Button kind="primary" size="bench" onClick={onRecount}>
          {differing.length === 0 ? 'Go on with this count' : 'Count the differing lines again'}
        </Button>
        <ConfirmDialog
          title="Discard your count?"
          confirm="Discard mine"
          danger
          trigger={{ label: 'Discard mine, keep what stands', size: 'bench' }}
          onConfirm={() => {
            onDiscard();
            return undefined;
          }}
        >
          <p>What you entered is lost; what the other person recorded stays.</p>
        </ConfirmDialog>
      </ButtonRow>
    </Section>
  );
}

const figures = (found: string, unsound: string) =>
  Number(unsound) > 0 ? `${found}, and ${unsound} put aside` : found;
