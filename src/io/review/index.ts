export type * from './types.ts';
export { ReviewError } from './errors.ts';
export type { ReviewFailure } from './errors.ts';
export { REVIEW_LIMITS } from './limits.ts';
export { withExamples } from './examples.ts';
export { isReview } from './names.ts';
export { readReview } from './read.ts';
export { writeReview } from './write.ts';
