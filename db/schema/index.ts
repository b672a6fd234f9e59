export * from './catalogue';
export * from './hospital';
export * from './sets';
