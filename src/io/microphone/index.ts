export type { MicrophoneFailure } from './errors.ts';
export type { Level } from './take.ts';
import { MicrophoneError, microphoneError } from './errors.ts';
import type { FromRecorder, ToRecorder } from './messages.ts';
import recorderUrl from './recorder.worklet.ts?worker&url';
import { Take } from './take.ts';
import type { Level } from './take.ts';

/** A take, as the microphone gave it. */
export interface Recording {
  readonly channels: readonly Float32Array[];
  readonly sampleRateHz: number;
  /** changes that the device or browser made although asked not to, e.g. "noise suppression" */
  readonly processing: readonly string[];
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

export interface MicrophoneOptions {
  /** from listMicrophones; null: the system's choice */
  readonly deviceId: string | null;
  /** how much of what came before `start` belongs to the take, seconds: nobody presses a button on the first note */
  readonly preRollSec: number;
}
export const MICROPHONE_DEFAULTS: MicrophoneOptions = { deviceId: null, preRollSec: 0.3 };

/** Ways in which browsers and devices change speech for the better and music for the worse. */
const PROCESSING = {
  echoCancellation: 'echo cancellation',
  noiseSuppression: 'noise suppression',
  autoGainControl: 'automatic gain',
} as const;

/** How long the sound thread may take to hand over its last block, ms. */
const FLUSH_MS = 500;

/** Microphones by name. Browsers tell the names only after the first one has been opened. */
export async function listMicrophones(): Promise<
  readonly { readonly deviceId: string; readonly label: string }[]
> {
  const devices = (await navigator.mediaDevices?.enumerateDevices()) ?? [];
  return devices
    .filter(({ kind }) => kind === 'audioinput')
    .map(({ deviceId, label }, index) => ({ deviceId, label: label || `Microphone ${index + 1}` }));
}

/** Opens the microphone with all processing off as far as the device lets it. Throws MicrophoneError. */
export async function openMicrophone(options: Partial<MicrophoneOptions> = {}): Promise<Microphone> {
  const { deviceId, preRollSec } = { ...MICROPHONE_DEFAULTS, ...options };
  if (typeof AudioWorkletNode === 'undefined' || navigator.mediaDevices === undefined) {
    throw new MicrophoneError('unsupported');
  }
  const stream = await askFor(deviceId);
  const context = new AudioContext({ latencyHint: 'interactive' });
  const close = (): void => {
    for (const track of stream.getTracks()) track.stop();
    if (context.state !== 'closed') void context.close();
  };
  try {
    await context.audioWorklet.addModule(recorderUrl);
    await context.resume();
  } catch (cause) {
    close();
    throw microphoneError(cause);
  }
  const take = new Take(context.sampleRate, preRollSec);
  const recorder = new AudioWorkletNode(context, 'recorder');
  const flush = listenTo(recorder, take);
  // Connected to the loudspeaker, though it gives silence: a node that leads nowhere is not run by every browser.
  context.createMediaStreamSource(stream).connect(recorder).connect(context.destination);

  const track = stream.getAudioTracks()[0]!;
  return {
    deviceLabel: track.label,
    level: () => take.level(),
    start: () => take.start(),
    stop: async () => {
      await flush();
      return { channels: take.stop(), sampleRateHz: context.sampleRate, processing: processingOf(track) };
    },
    onEnded: (callback) => track.addEventListener('ended', callback, { once: true }),
    close,
  };
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
function processingOf(track: MediaStreamTrack): string[] {
  const settings = track.getSettings();
  return (Object.keys(PROCESSING) as (keyof typeof PROCESSING)[])
    .filter((name) => settings[name] === true || typeof settings[name] === 'string')
    .map((name) => PROCESSING[name]);
}

/** Feeds the take; returns a function that waits for everything that has sounded so far. */
function listenTo(recorder: AudioWorkletNode, take: Take): () => Promise<void> {
  let nextId = 0;
  const waiting = new Map<number, () => void>();
  recorder.port.onmessage = ({ data }: MessageEvent<FromRecorder>) => {
    if (data.kind === 'block') take.push(data.channels);
    else waiting.get(data.id)?.();
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
      recorder.port.postMessage({ id } satisfies ToRecorder);
    });
}
