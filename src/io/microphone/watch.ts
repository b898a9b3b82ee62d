import { GapWatch, happened } from './troubles.ts';
import type { MicrophoneTrouble } from './troubles.ts';

/** What is watched of an open microphone besides its sound. */
export interface TroubleWatch {
  /** So many frames have come in all, so many of them silence because the device gave nothing. */
  took(frames: number, missing: number): void;
  onTrouble(callback: (trouble: MicrophoneTrouble) => void): () => void;
  close(): void;
}

/** Follows the device, the page's sound and the clock; wakes the sound when the page is seen again. */
export function watchTroubles(context: AudioContext, track: MediaStreamTrack): TroubleWatch {
  const listeners = new Set<(trouble: MicrophoneTrouble) => void>();
  const tell = (kind: MicrophoneTrouble['kind'], lostSec = 0): void => {
    const trouble = happened(kind, lostSec);
    for (const listener of listeners) listener(trouble);
  };
  const gaps = new GapWatch(context.sampleRate);
  const ending = new AbortController();
  const on = (target: EventTarget, name: string, act: () => void): void =>
    target.addEventListener(name, act, { signal: ending.signal });
  let asleepSinceMs: number | null = null;

  on(track, 'ended', () => tell('gone'));
  on(track, 'mute', () => tell('silenced'));
  on(track, 'unmute', () => tell('back'));
  on(context, 'statechange', () => {
    if (context.state === 'running') {
      if (asleepSinceMs === null) return;
      const lostSec = (performance.now() - asleepSinceMs) / 1000;
      asleepSinceMs = null;
      gaps.restart();
      tell('back', lostSec);
    } else if (context.state !== 'closed') {
      asleepSinceMs ??= performance.now();
      tell('asleep');
    }
  });
  on(document, 'visibilitychange', () => {
    if (document.visibilityState === 'visible' && context.state !== 'running' && context.state !== 'closed')
      context.resume().catch(() => undefined);
  });

  return {
    took: (frames, missing) => {
      const lostSec = gaps.look(frames - missing, performance.now() / 1000);
      // A device that is silenced, or gone, tells so itself.
      if (lostSec > 0 && !track.muted && track.readyState === 'live') tell('gap', lostSec);
    },
    onTrouble: (callback) => {
      listeners.add(callback);
      return () => void listeners.delete(callback);
    },
    close: () => ending.abort(),
  };
}
