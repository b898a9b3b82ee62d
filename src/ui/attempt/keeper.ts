import type { Assessment, ExerciseChoice, Report } from '../../engine/index.ts';
import type { Sound } from './desk.svelte.ts';

/** What an attempt was meant to be. */
export interface Aim {
  /** null: to be recognised from the sound */
  readonly choice: ExerciseChoice | null;
  /** beats a minute; null: no aim */
  readonly targetBpm: number | null;
}

/** Where attempts are kept: each before it is analysed, so that nothing that goes wrong later loses it. */
export interface Keeper {
  /** Keeps a sound → how to add what it came to, once that is known. */
  keep(sound: Sound, aim: Aim): Promise<{ readonly complete: (assessment: Assessment) => Promise<void> }>;
  /** Reports of the same player so far, oldest first. */
  earlier(): Promise<readonly Report[]>;
}

/** Keeps the reports for as long as the page is open, and no sound. */
export function keepForThisVisit(): Keeper {
  let told: readonly Report[] = [];
  return {
    keep: () =>
      Promise.resolve({
        complete: (assessment) => {
          if (assessment.kind === 'report') told = [...told, assessment.report];
          return Promise.resolve();
        },
      }),
    earlier: () => Promise.resolve(told),
  };
}
