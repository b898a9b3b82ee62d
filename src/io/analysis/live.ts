import type { Expected, LiveEvent, LiveOptions, OwnSound, PianoProfile } from '../../engine/index.ts';
import type { Trouble } from '../troubles/index.ts';
import type { FromLiveListener, ToLiveListener } from './messages.ts';

/** A live listener at work in its own worker. */
export interface LiveListening {
  /** One array a channel, copied; always the same number of channels. */
  push(block: readonly Float32Array[]): void;
  onEvent(callback: (event: LiveEvent) => void): void;
  /** Called once when the ear has failed (a fault of ours); it hears nothing from then on. */
  onFailure(callback: (trouble: Trouble) => void): void;
  /** The device makes a sound of its own, in seconds of the sound pushed; to be told before it sounds. */
  mute(sound: OwnSound): void;
  /** From here on: this piano, as the last attempt or the room check told it. */
  usePiano(piano: PianoProfile): void;
  /** From here on this is to be played. */
  expect(expected: Expected): void;
  /** Hears out what is open (an attempt under way is ended), then ends the worker. */
  stop(): Promise<void>;
  /** Ends the worker at once. */
  close(): void;
}

/** Opens a live listener for sound at this rate. */
export function openLiveListener(sampleRateHz: number, options: Partial<LiveOptions> = {}): LiveListening {
  const worker = new Worker(new URL('./live.worker.ts', import.meta.url), { type: 'module' });
  const tell = (message: ToLiveListener): void => worker.postMessage(message);
  let onEvent: (event: LiveEvent) => void = () => undefined;
  let onFailure: (trouble: Trouble) => void = () => undefined;
  let onEnd = (): void => undefined;

  const fail = (trouble: Trouble): void => {
    worker.terminate();
    onEnd();
    onFailure(trouble);
    onFailure = () => undefined;
  };
  worker.addEventListener('message', ({ data }: MessageEvent<FromLiveListener>) => {
    if (data.kind === 'events') for (const event of data.events) onEvent(event);
    else if (data.kind === 'failed') fail(data.trouble);
    else onEnd();
  });
  worker.addEventListener('error', () => fail({ trouble: 'listening-not-loaded' }));
  tell({ kind: 'open', sampleRateHz, options });

  return {
    push: (channels) => tell({ kind: 'block', channels }),
    onEvent: (callback) => void (onEvent = callback),
    onFailure: (callback) => void (onFailure = callback),
    mute: (sound) => tell({ kind: 'own-sound', sound }),
    usePiano: (piano) => tell({ kind: 'piano', piano }),
    expect: (expected) => tell({ kind: 'expected', expected }),
    stop: () =>
      new Promise((resolve) => {
        onEnd = () => {
          worker.terminate();
          resolve();
        };
        tell({ kind: 'end' });
      }),
    close: () => worker.terminate(),
  };
}
