/**
 * Whether what a reader has is what there is: `If-None-Match` by weak comparison (RFC 9110, 13.1.2 and 8.8.3.2).
 *
 * @param field the header as sent; `null` where there is none
 * @param tag   the entity tag of the present answer, quotes included
 */
export function hasAlready(field: string | null, tag: string): boolean {
  if (field === null) return false;
  if (field.trim() === '*') return true;
  // a comma may stand inside the quotes, so the tags are looked for and not split off
  const sent = field.match(/(?:W\/)?"[\x21\x23-\x7e\x80-\xff]*"/g) ?? [];
  return sent.some((one) => opaque(one) === opaque(tag));
}

const opaque = (tag: string) => tag.replace(/^W\//, '');
