export type * from './types.ts';
export { LIVE_DEFAULTS } from './types.ts';
export { checkRoom, measureSilence } from './room-check.ts';
export type { RoomCheck, RoomFinding, RoomFindingKind, Silence } from './room-check.ts';
import { RATE_HZ, SampleHistory } from '../listen/audio/index.ts';
import { Resampler } from '../listen/audio/resample.ts';
import type { NetworkNote } from '../listen/network/index.ts';
import type { PianoProfile } from '../listen/index.ts';
import { AttemptWatch } from './attempts.ts';
import { Hearing } from './hearing.ts';
import { LevelWatch } from './level.ts';
import { OneChannel } from './one-channel.ts';
import { LIVE_DEFAULTS } from './types.ts';
import type { LiveEvent, LiveOptions, OwnSound } from './types.ts';

/** seconds of sound the ear itself remembers */
const HISTORY_SEC = 6;
/** what has not come to an end by then is as good as ended: own sounds are forgotten after so long */
const FORGET_SEC = 10;

/** An ear beside the playing. What it tells depends on the sound alone, not on how it was cut into blocks. */
export interface LiveEar {
  /** Takes one Float32Array a channel, all of one length; returns what came to be known by it. */
  push(block: readonly Float32Array[]): readonly LiveEvent[];
  /** The device makes a sound of its own; to be told before that sound is pushed. */
  mute(sound: OwnSound): void;
  /** From here on: this piano. */
  usePiano(piano: PianoProfile): void;
  /** Hears out what is still open, as if silence followed; ends an attempt that is under way. */
  flush(): readonly LiveEvent[];
}

/** Opens an ear at the sound's own rate. */
export function createLiveEar(
  format: { readonly sampleRateHz: number; readonly channels: number },
  options: Partial<LiveOptions> = {},
): LiveEar {
  const { silenceSec, beforeSec, piano } = { ...LIVE_DEFAULTS, ...options };
  const history = new SampleHistory(HISTORY_SEC * RATE_HZ);
  const hearing = new Hearing(history, piano?.tuningCents.value ?? null);
  const attempts = new AttemptWatch({ silenceSec, beforeSec });
  const levels = new LevelWatch();
  const channel = new OneChannel(format.channels);
  let events: LiveEvent[] = [];
  let muted: OwnSound[] = [];
  let nextId = 0;

  const certain = ({ timeSec, midi, levelDb }: NetworkNote): void => {
    if (muted.some((own) => own.kind === 'voice' && timeSec >= own.fromSec && timeSec < own.toSec)) return;
    events.push({ kind: 'struck', id: nextId++, timeSec, midi, levelDb, final: true });
    events.push(...attempts.note(timeSec));
  };
  const resampler = new Resampler(format.sampleRateHz, RATE_HZ, (block, length) => {
    for (let i = 0; i < length; i++) {
      const level = levels.take(block[i]!);
      if (level !== null) events.push({ kind: 'level', timeSec: (history.end + i + 1) / RATE_HZ, ...level });
    }
    history.append(block, 0, length);
    for (const note of hearing.push(block, 0, length)) certain(note);
    const nowSec = history.end / RATE_HZ;
    events.push(...attempts.pass(hearing.certainSec, nowSec));
    muted = muted.filter(({ toSec }) => toSec > nowSec - FORGET_SEC);
  });

  const told = (): readonly LiveEvent[] => {
    const all = events;
    events = [];
    return all;
  };
  return {
    push(block) {
      const { samples, length } = channel.take(block);
      resampler.push(samples, length);
      return told();
    },
    mute: (sound) => void muted.push(sound),
    usePiano: (known) => hearing.useTuning(known.tuningCents.value),
    flush() {
      const silence = Array.from(
        { length: format.channels },
        () => new Float32Array(Math.ceil((silenceSec + 1) * format.sampleRateHz)),
      );
      resampler.push(channel.take(silence).samples, silence[0]!.length);
      return told();
    },
  };
}
