/** A sentence of the description: what it has between backticks is shown as code. */
export function Coded({ text }: { text: string | null | undefined }) {
  const parts = (text ?? '').split('`');
  return parts.map((part, at) => {
    // what stands between two of them is every second part
    if (at % 2 === 0 || at === parts.length - 1) return part;
    // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one sentence never change their order
    return <code key={at}>{part}</code>;
  });
}
