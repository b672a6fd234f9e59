import { noSuch } from '@/app/_server/outcome-answer';

/** What no other route of the API answers is told so as everything else of it is, and not by a page. */
const nothing = () => noSuch('address in this API: /api-docs lists them');

export { nothing as DELETE, nothing as GET, nothing as PATCH, nothing as POST, nothing as PUT };
