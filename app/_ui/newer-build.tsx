'use client';

import { usePathname } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import { ConfirmDialog } from './confirm-dialog';
import { useNewestBuild } from './newest-build';
import { showToast } from './toast';

/**
 * Says on an open page that a newer program is serving, and offers to load it. It never loads by itself: what is half
 * entered stays until its person says so.
 *
 * @param build the build this page came from
 */
export function NewerBuild({ build }: { build: string }) {
  const newest = useNewestBuild();
  const [asking, setAsking] = useState(false);
  const path = usePathname();
  const typedAt = useRef<string | null>(null);
  const present = useRef(path);
  const isNewer = build !== '' && newest !== null && newest !== build;

  useEffect(() => {
    present.current = path;
  }, [path]);

  useEffect(() => {
    const onInput = () => {
      typedAt.current = present.current;
    };
    document.addEventListener('input', onInput, { passive: true });
    return () => document.removeEventListener('input', onInput);
  }, []);

  const offer = useCallback(
    () =>
      showToast({
        tone: 'attention',
        word: 'Newer program',
        text: 'Kitwright was updated while this page was open. It goes on working; load it when it suits you.',
        action: {
          label: 'Load it',
          // what was scanned or counted is kept in this browser and sent; what stands in a field is not
          onPress: () => (typedAt.current === present.current ? setAsking(true) : location.reload()),
        },
      }),
    [],
  );
  useEffect(() => {
    if (isNewer) offer();
  }, [isNewer, offer]);

  return (
    <ConfirmDialog
      title="Load the newer program?"
      confirm="Load it"
      cancel="Stay on this page"
      open={asking}
      onOpen={(open) => {
        setAsking(open);
        if (!open) offer();
      }}
      onConfirm={() => {
        location.reload();
        return undefined;
      }}
    >
      <p>
        Something was entered on this page. If it is not saved yet, save it first: loading leaves it behind.
        Scans and counts are kept either way.
      </p>
    </ConfirmDialog>
  );
}
