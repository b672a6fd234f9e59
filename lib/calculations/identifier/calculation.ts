import { identifierWords } from '@/lib/wording/identifier';
import { defineCalculation } from '../calculation';
import { identifier } from './identifier';
import { identifierInput, identifierOutput } from './schema';

export const identifierCalculation = defineCalculation({
  name: 'identifier',
  ...identifierWords,
  input: identifierInput,
  output: identifierOutput,
  example: {
    text: ']d20109521234543213172706001024A7{GS}211234',
    currentYear: 2026,
    separators: 'mayBeLost',
  },
  run: identifier,
});
