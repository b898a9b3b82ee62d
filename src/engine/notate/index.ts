export { splitHands } from './hands.ts';
export type { PlacedKey } from './hands.ts';
export { likelyKey } from './key.ts';
export { LAY_OUT_DEFAULTS, layOut } from './lay-out.ts';
export type { LaidOut, LayOutOptions } from './lay-out.ts';
