declare const carries: unique symbol;

/**
 * An HTTP answer that says in its type what it carries as JSON when all is well, and under which status. The description of
 * the API is made of these types, so what is described is what the handler answers. Nothing of it exists at run time.
 */
export type Answer<T, S extends number = 200> = Response & { readonly [carries]: { value: T; status: S } };

/** An answer that carries a problem (RFC 9457) or nothing of its own. */
export type Refused = Answer<never, never>;

/** Marks an answer that is made by hand. */
export const carrying = <T, S extends number = 200>(response: Response): Answer<T, S> =>
  response as Answer<T, S>;

/** Done, and nothing to say. */
export const nothingToSay = (): Answer<null, 204> => carrying(new Response(null, { status: 204 }));
