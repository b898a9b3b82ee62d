import type { Assessment, ExerciseChoice, LiveOptions, Locale } from '../../../engine/index.ts';
import type { Analyst, LiveListening } from '../../../io/analysis/index.ts';
import type { LiveMicrophone } from '../../../io/microphone/index.ts';
import type { Pulse } from '../../../io/pulse/index.ts';
import type { Screen } from '../../../io/screen/index.ts';
import type { Settings } from '../../../io/settings/index.ts';
import type { Speech } from '../../../io/speech/index.ts';
import type { Unfinished } from '../../../io/unfinished/index.ts';
import type { MicrophoneName } from '../../attempt/current-attempt.svelte.ts';
import type { Fingerings } from '../../attempt/fingerings.svelte.ts';
import type { Journal } from '../../attempt/journal.svelte.ts';
import type { ThisPiano } from './this-piano.ts';

/** The devices that the stand listens with, passed in so that it can be tested without them. */
export interface SittingDevices {
  readonly analyst: Pick<Analyst, 'analyse'>;
  /** in which language the verdict is told; left out: English */
  readonly locale?: () => Locale;
  /** passages of one's own that an attempt may be, where it is to be recognised */
  readonly own?: () => readonly ExerciseChoice[];
  /** keeps each attempt before it is analysed */
  readonly journal: Pick<Journal, 'holds' | 'keep' | 'complete' | 'past' | 'standards'>;
  readonly openMicrophone: (deviceId: string | null) => Promise<LiveMicrophone>;
  readonly listMicrophones: () => Promise<readonly MicrophoneName[]>;
  /** told when a device is plugged in or out */
  readonly onDevicesChange: (callback: () => void) => void;
  readonly openLiveListener: (sampleRateHz: number, options: Partial<LiveOptions>) => LiveListening;
  readonly pulse: Pulse;
  readonly screen: Screen;
  readonly settings: Settings;
  readonly speech: Speech;
  /** what is said aloud of an attempt */
  readonly spoken: (assessment: Assessment) => Promise<string>;
  readonly unfinished: Unfinished;
  readonly piano: ThisPiano;
  /** fingers that are chosen once and kept */
  readonly fingerings: Fingerings;
}
