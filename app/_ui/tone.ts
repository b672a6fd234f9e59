/**
 * How something stands, for people. Never a colour alone: `Status` pairs it with a shape, and the caller with a word.
 * `unknown` is "not established"; `neutral` is a plain fact that is neither good nor bad.
 */
export type Tone = 'good' | 'attention' | 'stop' | 'unknown' | 'neutral';
