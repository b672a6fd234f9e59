import type { Drive } from '@/lib/catalogue/item';

const standard = (
  threadForm: 'HA' | 'HB',
  threadMm: number,
  coreMm: number,
  pitchMm: number,
  headMm: number,
) => ({ threadForm, threadMm, coreMm, pitchMm, head: 'spherical', headMm }) as const;

// Threads, cores, pitches and heads as ISO 5835 has them (thread and core of HA 3.5, HA 4.5 and HB 6.5 seen in public
// copies, the rest from memory of the standard).
export const HA15 = standard('HA', 1.5, 1.1, 0.5, 3);
export const HA20 = standard('HA', 2, 1.3, 0.6, 4);
export const HA27 = standard('HA', 2.7, 1.9, 1, 5);
export const HA35 = standard('HA', 3.5, 2.4, 1.25, 6);
export const HA40 = standard('HA', 4, 2.9, 1.5, 6);
export const HA45 = standard('HA', 4.5, 3, 1.75, 8);
export const HB40 = standard('HB', 4, 1.9, 1.75, 6);
export const HB65 = standard('HB', 6.5, 3, 2.75, 8);

const lockingThread = (
  threadMm: number,
  coreMm: number,
  pitchMm: number,
  headMm: number,
  torqueNmm: number,
) => ({ threadForm: 'locking', threadMm, coreMm, pitchMm, head: 'threaded', headMm, torqueNmm }) as const;

// Locking threads are outside the standards: these sizes and torque classes are common practice, no source.
export const LOCK20 = lockingThread(2, 1.4, 0.6, 3, 400);
export const LOCK27 = lockingThread(2.7, 1.9, 1, 4, 800);
export const LOCK35 = lockingThread(3.5, 2.7, 0.8, 5.2, 1500);
export const LOCK50 = lockingThread(5, 4.2, 1, 6.6, 4000);

/** Drives: ISO 8319 by size across flats (as ISO 5835 gives them to its screws), ISO 10664 by number. */
export const hexagon = (mm: number): Drive => ({ form: 'hexagonSocket', acrossFlatsUm: mm * 1000 });
export const hexalobular = (number: number): Drive => ({ form: 'hexalobular', number });

/** Every length from one to another in equal steps. */
export const lengths = (from: number, to: number, step: number) =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);

export const locking = { screwKind: 'locking', tip: 'selfTapping', countersinkStated: false } as const;
