'use client';

import { useRef } from 'react';
import { fieldId } from '@/app/_ui/field-problem';
import { isScrewFill } from '@/lib/plans/chosenHoles';
import type { HoleFill, PlannedPlate } from '@/lib/plans/plan';
import type { Planner } from './use-planner';

const PURPOSE_OF_KEY: Record<string, HoleFill['purpose']> = {
  e: 'empty',
  n: 'neutral',
  o: 'offset',
  g: 'lag',
  l: 'locked',
  w: 'temporaryWire',
};
/** Digits typed within this time are one number. */
const NUMBER_MS = 900;

/**
 * Keys on the chosen holes. Letters set a purpose, digits a length, `b` turns cortices over, `r` repeats the surgeon's
 * own last fill, Delete takes back. Nothing is ever filled in that the surgeon did not state.
 */
export function useShortcuts(
  planner: Planner,
  planned: PlannedPlate,
  chosen: readonly string[],
  onPending: (purpose: HoleFill['purpose'] | null) => void,
): (key: string) => boolean {
  const digits = useRef({ text: '', at: 0 });
  const plateKey = planned.key;
  const fills = chosen.map((id) => planned.fills[id]);
  const allScrews = chosen.length > 0 && fills.every(isScrewFill);

  function setPurpose(purpose: HoleFill['purpose']) {
    if (purpose === 'empty') {
      planner.edit({ do: 'fillHoles', plateKey, holeIds: chosen, fill: { purpose } });
      onPending(null);
    } else if (purpose !== 'temporaryWire' && allScrews) {
      planner.edit({ do: 'changeScrews', plateKey, holeIds: chosen, part: { purpose } });
      onPending(null);
    } else {
      onPending(purpose);
      // The family or wire must be named next: lead there once it is on screen.
      setTimeout(() => {
        const id = purpose === 'temporaryWire' ? fieldId('wire') : fieldId('family-filter');
        document.getElementById(id)?.focus();
      }, 0);
    }
  }

  return (key) => {
    if (planner.readOnly || chosen.length === 0) return false;
    const purpose = PURPOSE_OF_KEY[key.toLowerCase()];
    if (purpose) setPurpose(purpose);
    else if (/^\d$/.test(key)) {
      if (!allScrews) return false;
      const now = Date.now();
      const before = now - digits.current.at < NUMBER_MS ? digits.current.text : '';
      digits.current = { text: (before + key).slice(-3), at: now };
      const mm = Number(digits.current.text);
      if (mm > 0 && mm <= 200) {
        planner.edit(
          { do: 'changeScrews', plateKey, holeIds: chosen, part: { length: { kind: 'exact', mm } } },
          `length ${chosen.join(' ')}`,
        );
      }
    } else if (key === 'b' || key === 'B') {
      if (!allScrews) return false;
      const [first] = fills.filter(isScrewFill);
      planner.edit({
        do: 'changeScrews',
        plateKey,
        holeIds: chosen,
        part: { cortices: first?.cortices === 2 ? 1 : 2 },
      });
    } else if (key === 'r' || key === 'R') {
      if (!planner.lastFill) return false;
      planner.edit({ do: 'fillHoles', plateKey, holeIds: chosen, fill: planner.lastFill });
      onPending(null);
    } else if (key === 'Delete' || key === 'Backspace') {
      planner.edit({ do: 'fillHoles', plateKey, holeIds: chosen, fill: null });
      onPending(null);
    } else return false;
    return true;
  };
}
