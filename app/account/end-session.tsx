'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';

export function EndSession({ id }: { id: string }) {
  const router = useRouter();
  const [pending, setPending] = useState(false);
  async function end() {
    setPending(true);
    const sent = await sendJson('/api/v1/people/account', { act: 'endSession', sessionId: id }).catch(
      () => null,
    );
    setPending(false);
    if (sent?.ok) router.refresh();
    else showToast({ tone: 'stop', word: 'Not signed out', text: sent?.sentence ?? NOT_REACHED });
  }
  return (
    <Button pending={pending} onClick={end}>
      Sign out there
    </Button>
  );
}
