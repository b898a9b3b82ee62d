import { Standards } from '../../../src/ui/attempt/standards.svelte.ts';
import type { Assessment, LiveEvent, OwnSound } from '../../../src/engine/index.ts';
import type { MicrophoneTrouble } from '../../../src/io/microphone/index.ts';
import { createSettings } from '../../../src/io/settings/index.ts';
import { Fingerings } from '../../../src/ui/attempt/fingerings.svelte.ts';
import { Plan } from '../../../src/ui/attempt/plan.svelte.ts';
import type { SittingDevices } from '../../../src/ui/sitting/state/devices.ts';
import { Sitting } from '../../../src/ui/sitting/state/sitting.svelte.ts';
import { ThisPiano } from '../../../src/ui/sitting/state/this-piano.ts';
import { invent, INVENTED } from '../support/invent.ts';
import { storageIn } from '../../support/storage.ts';

const RATE_HZ = 48_000;
const { exercise, report } = invent(INVENTED.lateThumb);
export const TOLD: Assessment = {
  kind: 'report',
  heard: {
    notes: [],
    tuning: { cents: 0, a4Hz: 440, sdCents: 1, strays: [] },
    findings: [],
    passages: [],
    durationSec: 6,
    sampleRateHz: RATE_HZ,
    onsetSdMs: 2,
  },
  rechecks: [],
  alignment: {
    exercise,
    octaveShift: 0,
    semitoneShift: 0,
    matched: [],
    extras: [],
    remarks: [],
    run: { startSec: 0, endSec: 6 },
    fit: 1,
  },
  report,
};

/** A stand with invented devices: what they were asked is written into `log`, in order; `hear` is the live ear speaking. */
export function rig(changed: Partial<SittingDevices> = {}) {
  const log: string[] = [];
  const muted: OwnSound[] = [];
  const kept = new Map<string, string>();
  let onEvent: (event: LiveEvent) => void = () => undefined;
  let onTrouble: (trouble: MicrophoneTrouble) => void = () => undefined;
  let onBlock: (channels: readonly Float32Array[], firstSample: number) => void = () => undefined;
  let onClick: (atMs: number) => void = () => undefined;
  let onSeen: (seen: boolean) => void = () => undefined;
  let onDevices: () => void = () => undefined;
  let frames = 0;
  /** lets so much sound come in */
  const pass = (sec: number): void => {
    const channels = [new Float32Array(Math.round(sec * RATE_HZ))];
    onBlock(channels, frames);
    frames += channels[0]!.length;
  };
  const take = (startSec: number, endSec: number) => ({
    channels: [new Float32Array(Math.round((endSec - startSec) * RATE_HZ))],
    sampleRateHz: RATE_HZ,
    processing: [],
  });
  const settings = createSettings(() => storageIn(kept));
  const devices: SittingDevices = {
    analyst: {
      analyse: (sound, choice, { targetBpm }) => {
        const sec = sound.channels[0]!.length / RATE_HZ;
        log.push(`analyse ${sec.toFixed(1)} s of ${choice?.key ?? 'anything'} at ${targetBpm}`);
        return Promise.resolve(TOLD);
      },
    },
    journal: {
      holds: () => Promise.resolve(false),
      keep: (sound) => {
        log.push(`keep ${(sound.channels[0]!.length / RATE_HZ).toFixed(1)} s`);
        return Promise.resolve('an id');
      },
      complete: (id) => {
        log.push(`complete ${id}`);
        return Promise.resolve();
      },
      past: () => Promise.resolve({ earlier: [], sitting: 0, daysBefore: [] }),
      standards: new Standards(() => Promise.resolve()),
    },
    spoken: () => Promise.resolve('the verdict'),
    openMicrophone: () => {
      log.push('open');
      return Promise.resolve({
        deviceLabel: 'invented',
        sampleRateHz: RATE_HZ,
        level: () => ({ rmsDb: -30, peakDb: -20, heldPeakDb: -20, clipped: false }),
        start: () => undefined,
        stop: () => Promise.resolve(take(0, 0)),
        processing: () => [],
        nowSec: () => frames / RATE_HZ,
        onBlock: (callback) => {
          onBlock = callback;
          return () => undefined;
        },
        keepFrom: () => undefined,
        take,
        onTrouble: (callback) => {
          onTrouble = callback;
          return () => undefined;
        },
        resume: () => {
          log.push('resume');
          return Promise.resolve();
        },
        onEnded: () => undefined,
        close: () => void log.push('close'),
      });
    },
    listMicrophones: () => Promise.resolve([]),
    onDevicesChange: (callback) => void (onDevices = callback),
    openLiveListener: (_rate, options) => {
      log.push(`ear ${options.silenceSec} s`);
      return {
        push: () => undefined,
        onEvent: (callback) => void (onEvent = callback),
        onFailure: () => undefined,
        mute: (sound) => void muted.push(sound),
        usePiano: () => undefined,
        expect: (expected) =>
          void log.push(`expects ${typeof expected === 'string' ? expected : expected.key}`),
        stop: () => Promise.resolve(),
        close: () => undefined,
      };
    },
    pulse: {
      start: (bpm) => void log.push(`pulse ${bpm}`),
      stop: () => void log.push('pulse stops'),
      sound: (on) => void log.push(on ? 'click' : 'no click'),
      beatNow: () => 0,
      onClick: (callback) => void (onClick = callback),
      close: () => undefined,
    },
    screen: {
      keepAwake: () => void log.push('awake'),
      letSleep: () => void log.push('asleep'),
      onSeen: (callback) => void (onSeen = callback),
    },
    settings,
    speech: {
      available: true,
      say: (text) => {
        log.push(`say ${text}`);
        return new Promise(() => undefined);
      },
      stop: () => undefined,
    },
    unfinished: {
      begin: () => {
        log.push('unfinished begins');
        return {
          id: 'an id',
          add: ([channel]) => void log.push(`lay aside ${(channel!.length / RATE_HZ).toFixed(1)} s`),
          end: () => void log.push('unfinished ends'),
        };
      },
      recover: () => Promise.resolve([]),
    },
    piano: new ThisPiano(settings),
    fingerings: new Fingerings(),
    ...changed,
  };
  const sitting = new Sitting(devices, new Plan());
  return {
    sitting,
    devices,
    log,
    muted,
    pass,
    hear: (event: LiveEvent) => onEvent(event),
    suffer: (trouble: MicrophoneTrouble) => onTrouble(trouble),
    click: (atMs: number) => onClick(atMs),
    seen: (now: boolean) => onSeen(now),
    devicesChange: () => onDevices(),
    /** an attempt of two notes from `fromSec`, heard and ended */
    attempt: (fromSec: number, firstId: number): void => {
      const note = (id: number, timeSec: number): LiveEvent => ({
        kind: 'struck',
        id,
        timeSec,
        midi: 60 + id,
        levelDb: -20,
        final: true,
      });
      onEvent(note(firstId, fromSec));
      onEvent(note(firstId + 1, fromSec + 0.4));
      onEvent({ kind: 'started', timeSec: fromSec, cutSec: fromSec - 1 });
      pass(3);
      onEvent({ kind: 'ended', startSec: fromSec - 1, endSec: fromSec + 2.9, notes: 2 });
    },
  };
}

/** Lets everything run that waits for nothing from outside. */
export const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
