/** Kinds of item that may stay in a patient: bone plates and screws, what goes with them, wires, and what is used up. */
const MAY_STAY: ReadonlySet<string> = new Set(['plate', 'screw', 'washer', 'guideWire', 'consumable']);

/** Whether a thing of that kind can be said to be implanted. An instrument never is. */
export const mayStay = (kind: string): boolean => MAY_STAY.has(kind);
