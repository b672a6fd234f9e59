import { Section } from '@/app/_ui/section';
import { addressOf, type EmergencyAsked } from '@/lib/emergency/asked';
import { caseRegion, limb } from '@/lib/theatre/surgicalCase';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';
import styles from './emergency.module.css';
import { Tile } from './tile';

/** The first question: which bone, and which side. */
export function AskSite({ asked }: { asked: EmergencyAsked }) {
  const { region, side } = asked;
  const both = region !== null && side !== null;
  return (
    <Section title="1. Site and side" note={both ? undefined : 'press one of each'}>
      <div className={styles.tiles}>
        {caseRegion.options.map((one) => (
          <Tile
            key={one}
            href={addressOf({ ...asked, region: one, plan: null })}
            label={REGION_WORDS[one]}
            chosen={one === region}
            stay={side === null}
          />
        ))}
      </div>
      <div className={styles.sides}>
        {limb.options.map((one) => (
          <Tile
            key={one}
            href={addressOf({ ...asked, side: one, plan: null })}
            label={LIMB_WORDS[one]}
            chosen={one === side}
            stay={region === null}
          />
        ))}
      </div>
    </Section>
  );
}
