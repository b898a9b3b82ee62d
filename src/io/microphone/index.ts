export type { Level } from './level.ts';
export type { MicrophoneTrouble } from './troubles.ts';
import type { Notice } from '../../engine/index.ts';
import { MicrophoneError, microphoneError } from './errors.ts';
import { LevelMeter } from './level.ts';
import type { Level } from './level.ts';
import type { FromRecorder, ToRecorder } from './messages.ts';
import recorderUrl from './recorder.worklet.ts?worker&url';
import { Tape } from './tape.ts';
import { watchTroubles } from './watch.ts';
import type { MicrophoneTrouble } from './troubles.ts';

/** A take, as the microphone gave it. */
export interface Recording {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
  /** changes that the device or browser made although asked not to, e.g. "noise suppression" */
  readonly processing: readonly Notice[];
}

/** An open microphone. Listens (for the level) until closed. */
export interface Microphone {
  readonly deviceLabel: string;
  level(): Level;
  start(): void;
  /** Ends the take. After the device has gone, what came before is given. */
  stop(): Promise<Recording>;
  /** Called once when the device goes away by itself: unplugged, or taken by a telephone call. */
  onEnded(callback: () => void): void;
  close(): void;
}

/** The same microphone for listening while somebody plays. Times: seconds of sound since it was opened. */
export interface LiveMicrophone extends Microphone {
  readonly sampleRateHz: number;
  /** see `Recording`; empty: none that the browser tells of */
  processing(): readonly Notice[];
  /** seconds of sound taken so far */
  nowSec(): number;
  /**
   * Every sample once, in order, in blocks of about 10 ms, always two channels; sound that was lost is silence where the device
   * tells of it. The arrays are used again: copy what is kept. Returns a function that ends it.
   */
  onBlock(callback: (channels: readonly Float32Array[], firstSample: number) => void): () => void;
  /** Keep everything from here on (the last 30 s are kept anyway); null: no longer. */
  keepFrom(sec: number | null): void;
  /** An attempt cut from the stream, as far as it is kept. */
  take(startSec: number, endSec: number): Recording;
  /** Told whenever something happens to the microphone. Returns a function that ends it. */
  onTrouble(callback: (trouble: MicrophoneTrouble) => void): () => void;
  /** Goes on after `asleep`; to be called by a touch. */
  resume(): Promise<void>;
}

/** So much of what came before `start` belongs to the take, seconds: nobody presses a button on the first note. */
const PRE_ROLL_SEC = 0.3;

/** Ways in which browsers and devices change speech for the better and music for the worse. */
const PROCESSING = {
  echoCancellation: 'echo-cancellation',
  noiseSuppression: 'noise-suppression',
  autoGainControl: 'automatic-gain',
} as const;

/** Firefox never starts its sound where there is no loudspeaker, and tells nobody; after so long it does not, ms. */
const START_MS = 10_000;
/** How long the sound thread may take to hand over its last block, ms. */
const FLUSH_MS = 500;
/** the past that is kept without a mark, seconds */
const PAST_SEC = 30;

/** Microphones by name. Browsers tell the names only after the first one has been opened. */
export async function listMicrophones(): Promise<
  readonly { readonly deviceId: string; readonly label: string }[]
> {
  const devices = (await navigator.mediaDevices?.enumerateDevices()) ?? [];
  return devices
    .filter(({ kind }) => kind === 'audioinput')
    .map(({ deviceId, label }, index) => ({ deviceId, label: label || `Microphone ${index + 1}` }));
}

/** Whether this browser lets this page have a microphone at all: an old one has no worklets, a page without https no devices. */
export const canListen = (): boolean =>
  typeof AudioWorkletNode !== 'undefined' && navigator.mediaDevices !== undefined;

/**
 * Opens a microphone of listMicrophones, or the one that the system chooses, with all processing off as far as the device lets it.
 * Throws MicrophoneError.
 */
export async function openMicrophone(deviceId: string | null = null): Promise<LiveMicrophone> {
  if (!canListen()) throw new MicrophoneError('unsupported');
  const stream = await askFor(deviceId);
  const context = new AudioContext({ latencyHint: 'interactive' });
  const closeDevice = (): void => {
    for (const track of stream.getTracks()) track.stop();
    if (context.state !== 'closed') void context.close();
  };
  try {
    await context.audioWorklet.addModule(recorderUrl);
    await started(context);
  } catch (cause) {
    closeDevice();
    throw microphoneError(cause);
  }
  const { sampleRate: sampleRateHz } = context;
  const tape = new Tape({ channels: 2, reelFrames: sampleRateHz, pastFrames: PAST_SEC * sampleRateHz });
  const meter = new LevelMeter(sampleRateHz);
  const blockListeners = new Set<(channels: readonly Float32Array[], firstSample: number) => void>();
  const recorder = new AudioWorkletNode(context, 'recorder');
  const track = stream.getAudioTracks()[0]!;
  const troubles = watchTroubles(context, track);
  const flush = listenTo(recorder, (channels, frames, missing) => {
    const firstSample = tape.end;
    tape.push(channels, frames);
    meter.push(channels, frames);
    const whole = frames === channels[0]!.length ? channels : channels.map((one) => one.slice(0, frames));
    for (const listener of blockListeners) listener(whole, firstSample);
    troubles.took(tape.end, missing);
  });
  // Connected to the loudspeaker, though it gives silence: a node that leads nowhere is not run by every browser.
  context.createMediaStreamSource(stream).connect(recorder).connect(context.destination);

  const cut = (from: number, to: number): Recording => ({
    channels: tape.take(from, to),
    sampleRateHz,
    processing: processingOf(track),
  });
  let takeFrom: number | null = null;
  return {
    deviceLabel: track.label,
    sampleRateHz,
    level: () => meter.level(),
    start: () => {
      takeFrom = Math.max(0, tape.end - Math.round(PRE_ROLL_SEC * sampleRateHz));
      tape.keepFrom(takeFrom);
    },
    stop: async () => {
      await flush();
      const recording = cut(takeFrom ?? tape.end, tape.end);
      takeFrom = null;
      tape.keepFrom(null);
      return recording;
    },
    processing: () => processingOf(track),
    nowSec: () => tape.end / sampleRateHz,
    onBlock: (callback) => {
      blockListeners.add(callback);
      return () => void blockListeners.delete(callback);
    },
    keepFrom: (sec) => tape.keepFrom(sec === null ? null : Math.floor(sec * sampleRateHz)),
    take: (startSec, endSec) => cut(Math.round(startSec * sampleRateHz), Math.round(endSec * sampleRateHz)),
    onTrouble: troubles.onTrouble,
    resume: () => context.resume(),
    onEnded: (callback) => track.addEventListener('ended', callback, { once: true }),
    close: () => {
      troubles.close();
      closeDevice();
    },
  };
}

/** Waits until the sound runs. Throws MicrophoneError where it does not. */
async function started(context: AudioContext): Promise<void> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const never = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new MicrophoneError('mute')), START_MS);
  });
  try {
    await Promise.race([context.resume(), never]);
  } finally {
    clearTimeout(timer);
  }
}

async function askFor(deviceId: string | null): Promise<MediaStream> {
  const audio: MediaTrackConstraints = {
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    ...(deviceId === null ? {} : { deviceId: { exact: deviceId } }),
  };
  try {
    return await navigator.mediaDevices.getUserMedia({ audio });
  } catch (cause) {
    throw microphoneError(cause);
  }
}

/** Constraints may be accepted and ignored; only the settings tell. */
function processingOf(track: MediaStreamTrack): readonly Notice[] {
  const settings = track.getSettings();
  return (Object.keys(PROCESSING) as (keyof typeof PROCESSING)[])
    .filter((name) => settings[name] === true || typeof settings[name] === 'string')
    .map((name) => ({ notice: 'device-processing', by: PROCESSING[name] }));
}

/** Hands on each block, then its memory back; returns a function that waits for everything that has sounded so far. */
function listenTo(
  recorder: AudioWorkletNode,
  onBlock: (channels: readonly Float32Array[], frames: number, missing: number) => void,
): () => Promise<void> {
  let nextId = 0;
  const waiting = new Map<number, () => void>();
  const tell = (message: ToRecorder, transfer: Transferable[] = []): void =>
    recorder.port.postMessage(message, transfer);
  recorder.port.onmessage = ({ data }: MessageEvent<FromRecorder>) => {
    if (data.kind === 'flushed') return waiting.get(data.id)?.();
    const { channels, frames, missing } = data;
    onBlock(channels, frames, missing);
    tell(
      { kind: 'spare', channels },
      channels.map(({ buffer }) => buffer),
    );
  };
  return () =>
    new Promise((resolve) => {
      const id = nextId++;
      const done = (): void => {
        waiting.delete(id);
        clearTimeout(timer);
        resolve();
      };
      const timer = setTimeout(done, FLUSH_MS);
      waiting.set(id, done);
      tell({ kind: 'flush', id });
    });
}
