import { expect, it } from 'vitest';
import { standingOnList } from '@/lib/wording/readiness';

const TONES = ['good', 'attention', 'unknown', 'stop'] as const;
const said = (by: string, tone: (typeof TONES)[number]) => ({ tone, word: `${by} ${tone}`, sentence: by });

it('a case stands as the worse of its kit and of the plan of sets says, and by its kit where both are as bad', () => {
  // our own order: what stops comes before what is not known, that before what may still come right
  TONES.forEach((kit, at) => {
    TONES.forEach((planned, other) => {
      const shown = standingOnList(said('kit', kit), said('plan', planned));
      expect(shown.tone, `${kit}, ${planned}`).toBe(TONES[Math.max(at, other)]);
      expect(shown.sentence, `${kit}, ${planned}`).toBe(other > at ? 'plan' : 'kit');
    });
    expect(standingOnList(said('kit', kit), null)).toEqual(said('kit', kit));
  });
});
