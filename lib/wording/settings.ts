/** What is said when a local setting is changed, or is not. */
export const settingWords = {
  notPermitted: (name: string) =>
    `${name} may read the local settings and not change them: a decontamination lead, a theatre manager or an administrator may.`,
  reason: (most: number) => `Say why in a few words: 8 to ${most} characters.`,
  changed: 'Somebody else changed this setting meanwhile. Nothing was saved: look at it as it stands now.',
  same: 'Nothing differs from what stands, so there is nothing to save.',
};
