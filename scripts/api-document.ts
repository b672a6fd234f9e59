import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { clientTypes } from './api/client-types';
import { CLIENT_TYPES_PLACE, DOCUMENT_PLACE } from './api/place';

/** Writes the description of the API as it is now, and the types of the client. Tests compare what is kept with what this would write. */
const root = process.cwd();
// the routes are loaded by no server here: the mark that keeps them out of a browser has nothing to say
const { resolve, cache } = createRequire(import.meta.url);
const mark = resolve('server-only');
cache[mark] = { id: mark, filename: mark, loaded: true, exports: {} } as NodeModule;
const { makeDocument } = await import('./api/document');
const described = JSON.stringify(await makeDocument(root), null, 1);
writeFileSync(join(root, DOCUMENT_PLACE), `${described}\n`);
writeFileSync(join(root, CLIENT_TYPES_PLACE), clientTypes(JSON.parse(described)));
