export type * from './types.ts';
export { REVIEW_LIMITS } from './manifest.ts';
export { ReviewError, withExamples } from './whole.ts';
export { isReview } from './names.ts';
export { readReview } from './read.ts';
export { writeReview } from './write.ts';
