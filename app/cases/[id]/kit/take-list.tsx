import Link from 'next/link';
import { Status } from '@/app/_ui/status';
import type { CaseKit, ChosenPack, ChosenSet } from '@/lib/kits/caseKit';
import { writeGrams } from '@/lib/quantities/mass';
import { readyWords, stepsWords } from '@/lib/wording/kit-parts';
import { listWords } from '@/lib/wording/numbers';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';

/** Trays to open and packs to fetch, each with its place, its use-by, and why it is taken. */
export function TakeList({ kit, names }: { kit: CaseKit; names: KitNames }) {
  if (kit.sets.length + kit.packs.length === 0) return <p>Nothing in store serves this plan.</p>;
  return (
    <ul className={styles.take} aria-label="Trays and packs to take">
      {kit.sets.map((set) => (
        <Tray key={set.setId} set={set} kit={kit} />
      ))}
      {kit.packs.map((pack) => (
        <Pack key={pack.stockId} pack={pack} kit={kit} names={names} />
      ))}
    </ul>
  );
}

function Tray({ set, kit }: { set: ChosenSet; kit: CaseKit }) {
  const only = stepsOf(set.onlyItMeets, kit);
  const all = stepsOf(set.meets, kit);
  return (
    <li className={styles.takeRow}>
      <div className={styles.takeRole}>
        <Status tone={set.role === 'open' ? 'good' : 'neutral'}>
          {set.role === 'open' ? 'Open' : 'Hold'}
        </Status>
      </div>
      <div>
        <p className={styles.takeName}>
          <Link href={`/sets/${set.setId}`}>{set.code}</Link> {set.configurationName}
        </p>
        <p className={styles.aside}>
          {set.role === 'hold'
            ? `Unopened, for the back-up it holds${all ? `: ${all}` : ''}.`
            : only
              ? `Only it meets what ${only} ${only.includes(' and ') || only.includes('–') ? 'need' : 'needs'}.`
              : `Serves ${all || 'the plan'}.`}
        </p>
        {set.promisedTo.length > 0 ? (
          <p>
            <Status tone="attention" look="plain">
              Promised to {listWords(set.promisedTo)}
            </Status>
            {kit.keepingPromises
              ? `. Without breaking that promise: ${listWords(kit.keepingPromises.setCodes)}${kit.keepingPromises.packs.length > 0 ? ` with ${kit.keepingPromises.packs.length} single packs` : ''}.`
              : '. No other kit in store meets as much.'}
          </p>
        ) : null}
      </div>
      <dl className={styles.takeFacts}>
        <div>
          <dt>Place</dt>
          <dd>
            {set.readyAt ? `comes back at ${readyWords(set.readyAt)}` : (set.place?.name ?? 'not stated')}
          </dd>
        </div>
        <div>
          <dt>Use-by</dt>
          <dd>{set.useBy ?? 'none stated'}</dd>
        </div>
        <div>
          <dt>Mass</dt>
          <dd>{set.massGrams === null ? 'not stated' : writeGrams(set.massGrams)}</dd>
        </div>
      </dl>
    </li>
  );
}

function Pack({ pack, kit, names }: { pack: ChosenPack; kit: CaseKit; names: KitNames }) {
  const steps = stepsOf(pack.meets, kit);
  return (
    <li className={styles.takeRow}>
      <div className={styles.takeRole}>
        <Status tone={pack.role === 'open' ? 'good' : 'neutral'}>
          {pack.role === 'open' ? 'Fetch' : 'Hold'}
        </Status>
      </div>
      <div>
        <p className={styles.takeName}>
          {pack.quantity} × {names.item(pack.itemId)}
        </p>
        <p className={styles.aside}>
          {pack.form === 'pouch' ? 'Pouch' : 'Sterile pack'}
          {pack.owner === 'consignment' ? ', consignment' : ''}
          {pack.role === 'hold' ? ', unopened: a second one' : ''}
          {steps ? `, for ${steps}` : ''}.
        </p>
      </div>
      <dl className={styles.takeFacts}>
        <div>
          <dt>Place</dt>
          <dd>{names.place(pack.place)}</dd>
        </div>
        <div>
          <dt>Use-by</dt>
          <dd>{pack.useBy ?? 'none stated'}</dd>
        </div>
        <div>
          <dt>Lot</dt>
          <dd>{pack.lot ?? 'none stated'}</dd>
        </div>
      </dl>
    </li>
  );
}

function stepsOf(needIds: string[], { needs }: CaseKit): string {
  const steps = new Set(
    needIds.flatMap((id) => {
      const chain = needs.chains.find((one) => one.id === id);
      const piece = needs.pieces.find((one) => one.id === id);
      return chain ? chain.steps : piece ? [piece.step] : [];
    }),
  );
  return stepsWords([...steps], needs);
}
