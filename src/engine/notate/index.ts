export { splitHands } from './hands.ts';
export type { PlacedKey } from './hands.ts';
export { likelyKey } from './key.ts';
