import { Status } from '@/app/_ui/status';

/** What a second person's agreement still waits for, or that it can be given. */
export function Waits({ sentence, by }: { sentence: string | null; by: string | null }) {
  return (
    <p>
      <Status tone={sentence === null ? 'good' : 'attention'}>
        {sentence === null ? 'You can approve' : 'Waits for a second person'}
      </Status>{' '}
      {sentence ?? `You have seen what it does; ${by ?? 'nobody'} took the first step.`}
    </p>
  );
}
