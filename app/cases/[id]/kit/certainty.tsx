import Link from 'next/link';
import type { CaseKit } from '@/lib/kits/caseKit';
import { proofWords, tieWords } from '@/lib/wording/kit';
import { CHAIN_WORDS, stepsWords } from '@/lib/wording/kit-parts';
import { listWords } from '@/lib/wording/numbers';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';

/** Why not fewer trays, other kits as good, and where one lost piece would stop the case. */
export function Certainty({ kit, names, caseId }: { kit: CaseKit; names: KitNames; caseId: string }) {
  return (
    <div className={styles.sure}>
      <div>
        <h3>Why not fewer</h3>
        <p>{proofWords(kit.proof)}</p>
        <ul className={styles.lines}>
          {kit.whyNotFewer.map((one) => (
            <li key={one.setId}>
              Without {one.code}: {missingWords(one.missing, kit)}.
            </li>
          ))}
        </ul>
        <p className={styles.aside}>
          The whole question, to vary or to repeat from outside:{' '}
          <Link href={`/calculations/fewest-trays?of=${caseId}`} prefetch={false}>
            fewest-trays
          </Link>
          ,{' '}
          <Link href={`/calculations/buildable?of=${caseId}`} prefetch={false}>
            buildable
          </Link>
          .
        </p>
      </div>
      <div>
        <h3>Other kits as small</h3>
        {kit.ties.length === 0 ? (
          <p>None: this is the only kit with so few trays and packs.</p>
        ) : (
          <ul className={styles.lines}>
            {kit.ties.map((tie) => (
              <li key={tie.setCodes.join()}>
                {listWords(tie.setCodes)}
                {tie.packs.length > 0
                  ? ` with ${listWords(tie.packs.map((pack) => `${pack.quantity} × ${names.item(pack.itemId)}`))}`
                  : ''}
                . {tieWords(tie)}
              </li>
            ))}
          </ul>
        )}
      </div>
      <div>
        <h3>Single points of failure</h3>
        {kit.singlePoints.length === 0 ? (
          <p>None: no single lost piece stops a step.</p>
        ) : (
          <details>
            <summary>
              {kit.singlePoints.length} {kit.singlePoints.length === 1 ? 'piece' : 'pieces'} whose loss stops
              a step
            </summary>
            <ul className={styles.lines}>
              {kit.singlePoints.map((point) => (
                <li key={point.itemId}>
                  {names.item(point.itemId)}: {stepsWords(point.steps, kit.needs)}.{' '}
                  <span className={styles.aside}>
                    {point.otherIn.length > 0
                      ? `Another is in ${listWords([...new Set(point.otherIn.slice(0, 3).map(names.source))])}.`
                      : 'There is no other in store.'}
                  </span>
                </li>
              ))}
            </ul>
          </details>
        )}
      </div>
      <div>
        <h3>Spare, step by step</h3>
        <p className={styles.aside}>
          Pieces that could be lost, whichever they are, before the step is stopped.
        </p>
        <ul className={styles.margins}>
          {[3, 2, 1, 0, -1].map((spare) => {
            const steps = kit.margins.filter((margin) => margin.spare === spare).map((margin) => margin.step);
            if (steps.length === 0) return null;
            return (
              <li key={spare}>
                <strong>{spare === -1 ? 'stopped' : spare === 3 ? '3 or more' : spare}</strong>{' '}
                {stepsWords(steps, kit.needs)}
              </li>
            );
          })}
        </ul>
      </div>
    </div>
  );
}

function missingWords(missing: CaseKit['whyNotFewer'][number]['missing'], kit: CaseKit): string {
  if (missing.length === 0) return 'nothing would be short, but another tray would have to be opened';
  const words = missing.map(({ needId, steps, role }) => {
    const chain = kit.needs.chains.find((one) => one.id === needId);
    const piece = kit.needs.pieces.find((one) => one.id === needId);
    const what = chain
      ? CHAIN_WORDS[chain.kind].toLowerCase()
      : piece?.what === 'plate'
        ? 'the plate'
        : 'a piece';
    const how =
      role === 'backUp'
        ? `no second bit for ${what}`
        : role === 'withoutCaution'
          ? `${what} only with a caution`
          : `no ${what.replace(/^(the|a) /, '')}`;
    return { how, steps };
  });
  const merged = new Map<string, string[]>();
  for (const { how, steps } of words) merged.set(how, [...(merged.get(how) ?? []), ...steps]);
  return [...merged]
    .slice(0, 5)
    .map(([how, steps]) => `${how} (${stepsWords([...new Set(steps)], kit.needs)})`)
    .join('; ');
}
