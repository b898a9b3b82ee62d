import type { ExerciseChoice, Intention, Language } from '../engine/index.ts';
import type { AsExercise } from './as-exercise.ts';

/** One of so many parts of an archive, counted from 1. */
export interface Shard {
  readonly part: number;
  readonly of: number;
}

/** An archive of any size, told a line a recording. */
export interface Archive {
  /** a line a recording, gone on with; '-': standard output; null: all of it at the end */
  readonly linesFile: string | null;
  /** only this part of the recordings; null: all */
  readonly shard: Shard | null;
  /** a file with more paths, one a line; '-': standard input; null: none */
  readonly listFile: string | null;
}

/** What is asked of every command. */
interface Said {
  /** of all words, and of pages that are written */
  readonly language: Language;
  readonly json: boolean;
}
/** … and of those that write files, or take long. */
interface Writing extends Said {
  /** files of somebody else's may be written over */
  readonly force: boolean;
  readonly quiet: boolean;
}

/** What somebody asked the command to do. */
export type Command =
  | { readonly kind: 'help'; readonly about: CommandName | null; readonly language: Language }
  | { readonly kind: 'version' }
  | (Writing & {
      readonly kind: 'analyse';
      readonly files: readonly string[];
      /** null: recognise it from the sound */
      readonly choice: ExerciseChoice | null;
      /** what of it was to be practised; null: all of it, once */
      readonly intention: Intention | null;
      /** measure that, even where it was surely another that was played */
      readonly asChosen: boolean;
      /** passages of one's own that a recording may be, besides the set; null: none */
      readonly amongFile: string | null;
      readonly targetBpm: number | null;
      /** variation of time that is even at seven notes a second, %; null: as by default */
      readonly evennessPercent: number | null;
      /** where what is known of the piano is kept from call to call; null: nowhere */
      readonly pianoFile: string | null;
      /** a teacher's levels: how fast an exercise is to be before it counts as ready; null: none */
      readonly levelsFile: string | null;
      readonly archive: Archive;
    })
  | (Writing & {
      readonly kind: 'transcribe';
      readonly files: readonly string[];
      /** '-': standard output, in place of the table */
      readonly midiFile: string | null;
      /** what was played is laid out as a passage; null: it is not */
      readonly asExercise: AsExercise | null;
    })
  | (Writing & {
      readonly kind: 'desk';
      /** folders, recordings and zips of recordings */
      readonly paths: readonly string[];
      /** '-': standard output, in place of the list */
      readonly csvFile: string | null;
      readonly htmlFolder: string | null;
      /** who is known, and what their recordings are called by; null: nobody */
      readonly studentsFile: string | null;
      /** passages of one's own that a recording may be, besides the set; null: none */
      readonly amongFile: string | null;
      readonly archive: Archive;
      readonly targetBpm: number | null;
      /** variation of time that is even at seven notes a second, %; null: as by default */
      readonly evennessPercent: number | null;
      /** null: as many as the machine has cores for */
      readonly workers: number | null;
      readonly fresh: boolean;
    })
  | (Said & {
      readonly kind: 'review';
      readonly files: readonly string[];
      /** where its page is written to; null: nowhere; '-': standard output, in place of the words */
      readonly htmlFile: string | null;
      readonly force: boolean;
    })
  | (Said & {
      readonly kind: 'exercises';
      readonly what: 'all' | { readonly key: string } | ExerciseChoice;
    });

export const COMMAND_NAMES = ['analyse', 'desk', 'transcribe', 'review', 'exercises'] as const;
export type CommandName = (typeof COMMAND_NAMES)[number];
