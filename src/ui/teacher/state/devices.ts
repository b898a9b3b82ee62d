import type { AudioInput, Criteria, ExerciseChoice, Goals, Locale } from '../../../engine/index.ts';
import type { Analyst } from '../../../io/analysis/index.ts';
import type { Collection } from '../../../io/archive/index.ts';
import type { Microphone } from '../../../io/microphone/index.ts';
import type { Review, SoundFile } from '../../../io/review/index.ts';
import type { Settings } from '../../../io/settings/index.ts';
import type { Sorters } from '../../../io/sorting/index.ts';
import type { TeachingStore } from '../../../io/teaching/index.ts';
import type { Decode } from '../../attempt/devices.ts';
import type { Fingerings } from '../../attempt/fingerings.svelte.ts';
import type { Player } from '../../attempt/player.svelte.ts';
import type { Versions } from '../../attempt/retiming.ts';
import type { Sound } from '../../attempt/sound.ts';

/** What the teacher's page is made of; passed in, so that it can be tested without a browser. */
export interface TeachingDevices {
  readonly store: TeachingStore;
  readonly sorters: Sorters;
  readonly analyst: Analyst;
  readonly decode: Decode;
  /** sound → a small file that travels */
  readonly encode: (sound: AudioInput) => Promise<SoundFile>;
  /** the same for speech */
  readonly encodeVoice: (sound: AudioInput) => Promise<SoundFile>;
  readonly isArchive: (file: Blob) => Promise<boolean>;
  /** a zip → its files, unpacked when they are read */
  readonly openArchive: (zip: Blob) => Promise<Collection>;
  /** whether it means to be a review, or attempts from a student */
  readonly isReview: (file: Blob) => Promise<boolean>;
  readonly readReview: (file: Blob) => Promise<Review>;
  readonly writeReview: (review: Review) => Promise<Blob>;
  readonly openMicrophone: () => Promise<Microphone>;
  readonly playerOf: (sound: Sound, versions: Versions | null) => Player;
  readonly locale: () => Locale;
  /** what counts as ready, and where a trouble begins */
  readonly criteria: () => Criteria;
  /** the levels, and how fast each exercise is to be */
  readonly goals: () => Goals;
  /** what was typed and is not kept yet, by the field's name; it outlives the page */
  readonly drafts: Settings;
  /** passages of one's own */
  readonly own: () => readonly ExerciseChoice[];
  /** passages that came with a backup, whatever they are */
  readonly receive: (values: readonly unknown[]) => Promise<void>;
  /** fingers that are chosen once and kept */
  readonly fingerings: Fingerings;
  /** what tells the sound of a file from all other; null: not known */
  readonly printOf: (file: Blob) => Promise<string | null>;
  /** files → one zip of them */
  readonly writeFolder: (files: readonly { readonly name: string; readonly file: Blob }[]) => Promise<Blob>;
  /** ms since 1970 */
  readonly now: () => number;
}
