import type { Expected, LiveEvent, LiveOptions, OwnSound, PianoProfile } from '../../engine/index.ts';
import type { Trouble } from '../troubles/index.ts';

/** What the page tells the live listener's worker. */
export type ToLiveListener =
  | {
      readonly kind: 'open';
      readonly sampleRateHz: number;
      readonly options: Partial<LiveOptions>;
    }
  | { readonly kind: 'block'; readonly channels: readonly Float32Array[] }
  | { readonly kind: 'own-sound'; readonly sound: OwnSound }
  | { readonly kind: 'piano'; readonly piano: PianoProfile }
  | { readonly kind: 'expected'; readonly expected: Expected }
  | { readonly kind: 'end' };

/** What it answers. */
export type FromLiveListener =
  | { readonly kind: 'events'; readonly events: readonly LiveEvent[] }
  | { readonly kind: 'failed'; readonly trouble: Trouble }
  /** everything pushed before `end` has been heard out */
  | { readonly kind: 'ended' };
