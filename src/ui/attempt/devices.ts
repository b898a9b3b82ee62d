import type {
  Assessment,
  AudioInput,
  ExerciseChoice,
  Locale,
  Notice,
  PianoProfile,
} from '../../engine/index.ts';
import type { Analyst } from '../../io/analysis/index.ts';
import type { LiveMicrophone, Microphone } from '../../io/microphone/index.ts';
import type { Opened } from '../../io/opened/index.ts';
import type { Playback } from '../../io/playback/index.ts';
import type { Unfinished } from '../../io/unfinished/index.ts';
import type { EachFrame } from './player.svelte.ts';

/** A microphone to choose. */
export interface MicrophoneName {
  readonly deviceId: string;
  readonly label: string;
}

/** A microphone that is recorded from, whose sound can be laid aside meanwhile. */
export type RecordingMicrophone = Microphone &
  Pick<LiveMicrophone, 'sampleRateHz' | 'nowSec' | 'onBlock' | 'take'>;

/** A sound or video file → its sound, with what there is to remark of it. It may take the bytes away; the name is for messages. */
export type Decode = (
  bytes: ArrayBuffer,
  name: string,
) => Promise<AudioInput & { readonly remarks: readonly Notice[] }>;

/** The devices of the page, passed in so that the desk can be tested without them. */
export interface Devices {
  readonly analyst: Analyst;
  readonly decode: Decode;
  /** null: the system's choice */
  readonly openMicrophone: (deviceId: string | null) => Promise<RecordingMicrophone>;
  readonly listMicrophones: () => Promise<readonly MicrophoneName[]>;
  readonly createPlayback: (audio: AudioInput) => Playback;
  readonly eachFrame: EachFrame;
  /** what is known of the piano here; what is recorded teaches it, a file may come from any other */
  readonly piano?: {
    readonly known: PianoProfile | null;
    learnFrom(assessment: Assessment): void;
  };
  /** keeps what was opened, and what of a recording has sounded so far; left out: the page forgets both */
  readonly opened?: Opened;
  readonly unfinished?: Unfinished;
  /** passages of one's own that an attempt may be, where it is to be recognised; left out: none */
  readonly own?: () => readonly ExerciseChoice[];
  /** how a report's words are to be written; English where it is left out */
  readonly locale?: () => Locale;
}

/** What this browser lets the page do: what it does not is said before it is wanted. */
export interface Abilities {
  /** a microphone can be had */
  readonly listen: boolean;
  /** the screen is kept awake */
  readonly stayAwake: boolean;
  /** M4A files, most of them AAC, are read */
  readonly readAac: boolean;
}

/** An attempt that is part of the page: its sound and what was played in it. */
export interface Bundled {
  readonly name: string;
  readonly load: () => Promise<ArrayBuffer>;
  readonly choice: ExerciseChoice;
  readonly targetBpm: number;
}
