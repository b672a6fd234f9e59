import { config } from 'zod';

// Runs in the browser before anything else of ours. The content policy lets no text become code, and the library that checks
// data would try it, to be a little quicker, wherever it is not told otherwise.
config({ jitless: true });
