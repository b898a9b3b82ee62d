import type { Review, WithExample } from './types.ts';

/** What a review speaks of → the student's own attempts in their order, each with the teacher's example beside it. */
export function withExamples({ attempts }: Pick<Review, 'attempts'>): readonly WithExample[] {
  return attempts
    .filter(({ exampleFor }) => exampleFor === undefined)
    .map((attempt) => ({
      attempt,
      example: attempts.find(({ exampleFor }) => exampleFor === attempt.id) ?? null,
    }));
}
