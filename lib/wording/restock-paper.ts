/** The words of the paper of an order. */
export const supplyOrderWords = {
  facts: {
    to: 'To',
    ordered: 'Ordered',
    orderedBy: 'Approved by',
    of: 'Of proposal',
    expected: 'Expected',
    value: 'Value',
    state: 'Stands',
  },
  ofProposal: (number: string, by: string) => `${number}, worked out by ${by}`,
  notKnown: 'not known: please state a date',
  closed: (because: string | null) => (because === null ? 'closed: all came' : `closed: ${because}`),
  please: 'Please send us',
  lines: (count: number) => (count === 1 ? 'one line' : `${count} lines`),
  caption: 'Lines ordered',
  columns: { code: 'Code', gtin: 'GTIN', name: 'Item', pieces: 'Pieces', packs: 'Packs', unit: 'Each, £' },
  conditions: 'How it should come',
  perPart: 'State lot and use-by of every part: each is put on record by itself as it comes.',
  useBy: 'What is past its use-by as it comes is not taken in.',
  notAll: 'Say at once what you cannot send, and by when you can.',
  signed: { hospital: 'For the hospital', maker: 'For the maker: can be sent by' },
};
