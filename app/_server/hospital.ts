import 'server-only';

/** What the hospital is called on screens and sheets; the demo's name until one is set. */
export function hospitalName(): string {
  return process.env.KITWRIGHT_HOSPITAL ?? 'Larkmoor Infirmary';
}
