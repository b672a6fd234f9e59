export const MINUTE = 60_000;
export const DAY = 86_400_000;

export const iso = (ms: number) => new Date(ms).toISOString();
export const day = (ms: number) => iso(ms).slice(0, 10);
