import { z } from 'zod';
import { LAYOUTS } from './layouts';

/** What is known of the scanner at one screen: found out on its set-up page, kept in that browser. */
export const scannerSetting = z.object({
  /** The keyboard it pretends to be. */
  layout: z.enum(LAYOUTS).default('us'),
  /** It turns capitals and small letters round while Caps Lock is on, so that the computer turns them back. */
  minds: z.enum(['nothing', 'capsLock']).default('nothing'),
  /** What ends a scan. `unknown`: Enter, Tab, or silence where nobody types. */
  ends: z.enum(['unknown', 'enter', 'tab', 'silence']).default('unknown'),
  /** Keys further apart than this do not belong to one scan. */
  gapMs: z.number().int().min(20).max(250).default(50),
  /** It was seen to pass on the separator of GS1, so that a code without one needed none. */
  separators: z.enum(['mayBeLost', 'sent']).default('mayBeLost'),
  /** It was seen to send the symbology identifier before a code. */
  symbology: z.enum(['unknown', 'sent']).default('unknown'),
  /** When it was tried last; `null` is never. */
  triedAt: z.string().nullable().default(null),
});
export type ScannerSetting = z.output<typeof scannerSetting>;

export const UNTRIED_SCANNER: ScannerSetting = scannerSetting.parse({});
