export * from './catalogue';
export * from './changes';
export * from './hospital';
export * from './ledger';
export * from './packs';
export * from './people';
export * from './sets';
export * from './turns';
