import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { healthLights } from '@/app/_server/health';
import { Page } from '@/app/_ui/page';
import { Status } from '@/app/_ui/status';
import type { Tone } from '@/app/_ui/tone';
import { type LightState, worst } from '@/lib/running/lights';
import { runningWords as words } from '@/lib/wording/running';
import styles from './health.module.css';

export const metadata: Metadata = { title: 'Health' };
export const dynamic = 'force-dynamic';

const TONE: Record<LightState, Tone> = { well: 'good', look: 'attention', wrong: 'stop', unknown: 'unknown' };
const FIRST: LightState[] = ['wrong', 'unknown', 'look', 'well'];

/** How the running program stands, the worst first, each with what to do about it. */
export default async function HealthPage() {
  await enter('/health');
  const lights = await healthLights();
  const state = worst(lights);
  const ordered = FIRST.flatMap((wanted) => lights.filter((one) => one.state === wanted));
  return (
    <Page title={words.title} lead={words.lead}>
      <p>
        <Status tone={TONE[state]} look="strong">
          {state === 'well' ? words.allWell : words.state[state]}
        </Status>
      </p>
      <ul className={styles.lights}>
        {ordered.map((one) => (
          <li key={one.name} className={styles.light}>
            <h2>{words.name[one.name] ?? one.name}</h2>
            <Status tone={TONE[one.state]}>{words.state[one.state]}</Status>
            <p>{one.says}</p>
            {one.remedy === null ? null : (
              <p className={styles.remedy}>
                <strong>{words.toDo}:</strong> {one.remedy}
              </p>
            )}
          </li>
        ))}
      </ul>
      <p>{words.sayMore}</p>
    </Page>
  );
}
