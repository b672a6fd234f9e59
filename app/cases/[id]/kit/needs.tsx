import { Disclosure } from '@/app/_ui/disclosure';
import { Glyph } from '@/app/_ui/glyph';
import { Status } from '@/app/_ui/status';
import type { CaseKit, ChosenChain } from '@/lib/kits/caseKit';
import { isCautioned } from '@/lib/kits/cautioned';
import type { ChainNeed, LinkVerdict } from '@/lib/kits/need';
import { RELATION_WORDS } from '@/lib/wording/fit';
import { basisWords, CHAIN_WORDS, SLOT_WORDS, stepsWords } from '@/lib/wording/kit-parts';
import styles from './kit.module.css';
import type { KitNames } from './kit-names';
import { Reasons } from './reasons';

/** Need by need: for which holes, met by what from where, and every answer it rests on. */
export function Needs({ kit, names }: { kit: CaseKit; names: KitNames }) {
  return (
    <>
      <h3>What is implanted</h3>
      <ul className={`${styles.plainList} ${styles.folds}`}>
        {pieceGroups(kit).map((group) => (
          <li key={group.key}>
            <PieceGroup group={group} kit={kit} names={names} />
          </li>
        ))}
      </ul>
      <h3>Instruments, chain by chain</h3>
      <ul className={`${styles.plainList} ${styles.folds}`}>
        {kit.needs.chains.map((need) => (
          <li key={need.id}>
            <Chain
              need={need}
              chosen={kit.chains.find((chain) => chain.chainId === need.id)}
              kit={kit}
              names={names}
            />
          </li>
        ))}
      </ul>
    </>
  );
}

interface Group {
  key: string;
  title: string;
  steps: string[];
  sources: string[];
  basis: string | null;
  tone: 'good' | 'stop' | 'unknown';
  answers: LinkVerdict[];
}

function pieceGroups(
  kit: CaseKit,
): (Group & { itemId: CaseKit['packs'][number]['itemId'] | null; count: number })[] {
  const groups = new Map<string, ReturnType<typeof pieceGroups>[number]>();
  for (const need of kit.needs.pieces) {
    const given = kit.steps
      .find((step) => step.step === need.step)
      ?.pieces.find((piece) => piece.needId === need.id);
    const itemId =
      given?.itemId ??
      need.accepts[0]?.itemId ??
      need.notEstablished[0]?.itemId ??
      need.refused[0]?.itemId ??
      null;
    const unknown =
      need.length?.kind === 'notStated' || kit.notEstablished.some((one) => one.needId === need.id);
    const tone = given ? 'good' : unknown ? 'unknown' : 'stop';
    const basis = need.length ? basisWords(need.length) : null;
    const key = `${itemId}|${tone}|${basis}`;
    const group = groups.get(key) ?? {
      key,
      title: '',
      steps: [],
      sources: [],
      basis,
      tone,
      answers: [],
      itemId,
      count: 0,
    };
    group.steps.push(need.step);
    group.count += 1;
    if (given)
      group.sources.push(
        given.from.kind === 'set' ? `set:${given.from.setId}` : `pack:${given.from.stockId}`,
      );
    const answers = given?.answers ?? need.refused[0]?.answers ?? need.notEstablished[0]?.answers ?? [];
    if (group.answers.length === 0) group.answers.push(...answers);
    groups.set(key, group);
  }
  return [...groups.values()];
}

const STATE = {
  good: 'Met',
  stop: 'Short',
  unknown: 'Not established',
  attention: 'With a caution',
} as const;

function PieceGroup({
  group,
  kit,
  names,
}: {
  group: ReturnType<typeof pieceGroups>[number];
  kit: CaseKit;
  names: KitNames;
}) {
  const lengthOpen = group.basis === 'length not stated';
  const title =
    group.itemId === null
      ? 'A length that is not made'
      : lengthOpen
        ? 'Screw, length not stated'
        : names.item(group.itemId);
  const from = [...new Set(group.sources)].map((key) => {
    const [kind, id] = key.split(':') as ['set' | 'pack', never];
    return names.source(kind === 'set' ? { kind, setId: id } : { kind, stockId: id });
  });
  return (
    <Disclosure
      summary={
        <span className={styles.summary}>
          <Status tone={group.tone} look="plain">
            {STATE[group.tone]}
          </Status>
          <span className={styles.summaryName}>
            {group.count} × {title}
          </span>
          <span className={styles.aside}>
            {stepsWords(group.steps, kit.needs)}
            {from.length > 0 ? ` · from ${from.join(' and ')}` : ''}
          </span>
        </span>
      }
    >
      {group.basis ? <p>Length {group.basis.replace(/^length /, '')}.</p> : null}
      <Reasons label={`Answers for ${title}`} answers={group.answers} names={names} />
    </Disclosure>
  );
}

function Chain({
  need,
  chosen,
  kit,
  names,
}: {
  need: ChainNeed;
  chosen: ChosenChain | undefined;
  kit: CaseKit;
  names: KitNames;
}) {
  const unknown = kit.notEstablished.some((one) => one.needId === need.id);
  const cautioned = chosen?.links.some((link) => link.answers.some(isCautioned)) ?? false;
  const tone = chosen ? (cautioned ? 'attention' : 'good') : unknown ? 'unknown' : 'stop';
  return (
    <Disclosure
      summary={
        <span className={styles.summary}>
          <Status tone={tone} look="plain">
            {STATE[tone]}
          </Status>
          <span className={styles.summaryName}>{CHAIN_WORDS[need.kind]}</span>
          <span className={styles.aside}>{stepsWords(need.steps, kit.needs)}</span>
        </span>
      }
    >
      <p>
        For {names.item(need.forItemId)} in {stepsWords(need.steps, kit.needs)}.
      </p>
      {chosen ? <ChainLine chosen={chosen} names={names} /> : <MissingChain need={need} />}
      {chosen ? (
        <Reasons
          label={`Answers for ${CHAIN_WORDS[need.kind]}`}
          answers={chosen.links.flatMap((link) => link.answers)}
          names={names}
        />
      ) : null}
    </Disclosure>
  );
}

/** The chain as a line: each link a piece, and between two of them the answer that joins them. */
function ChainLine({ chosen, names }: { chosen: ChosenChain; names: KitNames }) {
  return (
    <ol className={styles.chain} aria-label="The chain, link by link">
      {chosen.links.map((link, at) => {
        const joint =
          at === 0
            ? null
            : link.answers.find(
                (answer) =>
                  answer.itemIds.length === 2 &&
                  chosen.links.some((other) => other !== link && answer.itemIds.includes(other.itemId)),
              );
        const caution = joint ? isCautioned(joint) : false;
        return (
          <li key={`${link.slot}-${link.itemId}`} className={styles.link}>
            {at === 0 ? null : (
              <span className={styles.joint} data-tone={caution ? 'attention' : 'good'}>
                <Glyph tone={caution ? 'attention' : 'good'} />
                <span>{joint ? RELATION_WORDS[joint.verdict.relation].between : 'then'}</span>
              </span>
            )}
            <span className={styles.part}>
              <span className={styles.partSlot}>{SLOT_WORDS[link.slot]}</span>
              <span className={styles.partName}>{names.item(link.itemId)}</span>
              <span className={styles.partFrom}>
                {link.endIndex !== null ? `end ${link.endIndex + 1}, ` : ''}
                {names.source(link.from)}
              </span>
            </span>
          </li>
        );
      })}
    </ol>
  );
}

function MissingChain({ need }: { need: ChainNeed }) {
  return (
    <ol className={styles.chain} aria-label="The chain, link by link">
      {need.slots.map((slot) => (
        <li key={slot.name} className={styles.link}>
          <span className={styles.part} data-open="yes">
            <span className={styles.partSlot}>{SLOT_WORDS[slot.name]}</span>
            <span className={styles.partName}>
              {slot.candidates.length === 0
                ? 'nothing in the catalogue'
                : `${slot.candidates.length} in the catalogue would suit`}
            </span>
          </span>
        </li>
      ))}
    </ol>
  );
}
