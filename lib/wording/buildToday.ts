/** Whether a saved start can be built from what is in store today. */
export const buildTodayWords = {
  onlyWith: (kinds: number) => `Ready only with ${kinds} ${kinds === 1 ? 'kind' : 'kinds'} of single pack`,
  pack: (quantity: number, name: string) => `${quantity} × ${name}`,
  short: (name: string, sentence: string) => `${name}. ${sentence}`,
};
