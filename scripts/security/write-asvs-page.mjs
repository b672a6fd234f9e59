/** npm run asvs: writes docs/asvs.md out of docs/asvs.json. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../bootstrap/places.mjs';
import { asvsPage } from './asvsPage.mjs';

writeFileSync(
  join(ROOT, 'docs/asvs.md'),
  asvsPage(JSON.parse(readFileSync(join(ROOT, 'docs/asvs.json'), 'utf8'))),
);
