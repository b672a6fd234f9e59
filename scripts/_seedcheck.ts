import { rmSync } from 'node:fs';
import { openDatabase } from '@/db/client';
import { migrate } from '@/db/migrate';
import { loadDemo } from '@/seed/load';

for (const e of ['', '-wal', '-shm']) rmSync('/tmp/seed.sqlite' + e, { force: true });
migrate('/tmp/seed.sqlite');
const db = openDatabase('/tmp/seed.sqlite');
const t = performance.now();
await loadDemo({ db, now: new Date() });
console.log('loaded', Math.round(performance.now() - t), 'ms');
db.close();
