'use client';

import { useRouter } from 'next/navigation';
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useRef,
  useSyncExternalStore,
} from 'react';
import { type Acting, actingNow, onActing, setActing } from './acting-store';

interface ActingPlace {
  /** The session of the page as it was sent; `null` where nobody is signed in. */
  sent: Acting | null;
  /** The enrolled workstation this browser is, by name. */
  workstation: string | null;
  idleMinutes: number;
  /** Takes over from whoever acted: the page stays as it is, and asks the server for what the new person may. */
  change: (next: Acting) => void;
}

const Place = createContext<ActingPlace | null>(null);

/** Other tabs of this browser share its session. */
const CHANNEL = 'kitwright-acting';

/** Tells everything inside who acts. Stands in the shell, once. */
export function ActingProvider({
  sent,
  workstation,
  idleMinutes,
  children,
}: {
  sent: Acting | null;
  workstation: string | null;
  idleMinutes: number;
  children: ReactNode;
}) {
  const router = useRouter();
  const channel = useRef<BroadcastChannel | null>(null);

  // what the server sends is the truth of the moment: also after a change of person in another tab
  useEffect(() => setActing(sent), [sent]);

  useEffect(() => {
    const own = new BroadcastChannel(CHANNEL);
    channel.current = own;
    own.onmessage = () => router.refresh();
    return () => {
      channel.current = null;
      own.close();
    };
  }, [router]);

  const change = useCallback(
    (next: Acting) => {
      setActing(next);
      channel.current?.postMessage('changed');
      router.refresh();
    },
    [router],
  );
  return <Place value={{ sent, workstation, idleMinutes, change }}>{children}</Place>;
}

export function useActingPlace(): ActingPlace {
  const place = useContext(Place);
  if (!place) throw new Error('outside of ActingProvider');
  return place;
}

/** Who acts now: changes with a badge, and is nobody once the session is over. */
export function useActing(): Acting | null {
  const { sent } = useActingPlace();
  return useSyncExternalStore(onActing, actingNow, () => sent);
}
