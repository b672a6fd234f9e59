import type { Tone } from '@/app/_ui/tone';
import type { ConfigurationVersion } from '@/lib/sets/configuration';

type Status = ConfigurationVersion['status'];

/** Where a version is in its life, as a word and a tone. */
export const VERSION_TONES: Record<Status, Tone> = {
  draft: 'attention',
  approved: 'attention',
  inForce: 'good',
  superseded: 'neutral',
};

export function versionWords(status: Status, from: string | null): string {
  switch (status) {
    case 'draft':
      return 'in draft';
    case 'approved':
      return `approved, in force from ${from ?? 'a day not stated'}`;
    case 'inForce':
      return 'in force';
    case 'superseded':
      return 'superseded';
  }
}
