/** Where the description of the API is kept, from the root of the repository. */
export const DOCUMENT_PLACE = 'app/api-docs/openapi.json';
/** Where the types of the client that are made from it are kept. */
export const CLIENT_TYPES_PLACE = 'clients/typescript/types.ts';
