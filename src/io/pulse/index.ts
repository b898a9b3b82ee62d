export { GROUP_BEATS } from './grid.ts';
import { clickSamples } from './click.ts';
import { beatAt, beatsBetween, GROUP_BEATS, type Grid } from './grid.ts';

/** An even pulse that is seen and, if wanted, heard. Times are of the page's clock (performance.now), ms. */
export interface Pulse {
  /** Begins a pulse with beat 0 a moment from now; one that runs is ended. */
  start(bpm: number): void;
  stop(): void;
  /** Whether it is heard from now on; a click that was set and has not sounded falls away. */
  sound(on: boolean): void;
  /** beats since the pulse began, with their fraction (below 0 just before); null: no pulse */
  beatNow(): number | null;
  /** Told of every click before it sounds: when it will leave the loudspeaker. */
  onClick(callback: (atMs: number) => void): void;
  close(): void;
}

/** The first beat falls this long after `start`, ms: time to set its click. */
const LEAD_MS = 200;
/** Clicks are set this far ahead, ms: a page in the background is woken only once a second. */
const AHEAD_MS = 1300;
const LOOK_MS = 100;

interface Set {
  readonly source: AudioBufferSourceNode;
  readonly atMs: number;
}

/** The loudspeaker is opened with the first click, after a touch: browsers keep one silent that opens by itself. */
export function createPulse(): Pulse {
  const callbacks: ((atMs: number) => void)[] = [];
  let context: AudioContext | null = null;
  let grid: Grid | null = null;
  let heard = false;
  let setUpToMs = 0;
  let ahead: readonly Set[] = [];
  let timer: ReturnType<typeof setInterval> | undefined;

  const buffers = new Map<boolean, AudioBuffer>();
  const bufferOf = (audio: AudioContext, first: boolean): AudioBuffer => {
    const known = buffers.get(first);
    if (known !== undefined) return known;
    const samples = clickSamples(audio.sampleRate, first);
    const buffer = audio.createBuffer(1, samples.length, audio.sampleRate);
    buffer.copyToChannel(samples, 0);
    buffers.set(first, buffer);
    return buffer;
  };

  const look = (): void => {
    const nowMs = performance.now();
    ahead = ahead.filter(({ atMs }) => atMs > nowMs);
    if (grid === null || !heard || context === null || context.state !== 'running') return;
    const untilMs = nowMs + AHEAD_MS;
    for (const { beat, atMs } of beatsBetween(grid, Math.max(setUpToMs, nowMs + 10), untilMs)) {
      const source = new AudioBufferSourceNode(context, {
        buffer: bufferOf(context, beat % GROUP_BEATS === 0),
      });
      source.connect(context.destination);
      source.start(contextSec(context, atMs));
      ahead = [...ahead, { source, atMs }];
      for (const callback of callbacks) callback(atMs);
    }
    setUpToMs = Math.max(setUpToMs, untilMs);
  };
  const silence = (): void => {
    for (const { source } of ahead) source.stop();
    ahead = [];
    setUpToMs = 0;
  };

  return {
    start: (bpm) => {
      silence();
      grid = { startMs: performance.now() + LEAD_MS, bpm };
      timer ??= setInterval(look, LOOK_MS);
      look();
    },
    stop: () => {
      silence();
      clearInterval(timer);
      timer = undefined;
      grid = null;
    },
    sound: (on) => {
      heard = on;
      if (!on) return silence();
      context ??= new AudioContext({ latencyHint: 'interactive' });
      void context.resume().then(look);
    },
    beatNow: () => (grid === null ? null : beatAt(grid, performance.now())),
    onClick: (callback) => void callbacks.push(callback),
    close: () => {
      silence();
      clearInterval(timer);
      grid = null;
      void context?.close();
      context = null;
    },
  };
}

/** Time by the page's clock → time of the sound's clock at which to start what is to be heard then, seconds. */
function contextSec(context: AudioContext, atMs: number): number {
  const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp();
  const known = performanceTime > 0;
  const fromSec = known ? contextTime : context.currentTime - (context.outputLatency || 0);
  const fromMs = known ? performanceTime : performance.now();
  return Math.max(fromSec + (atMs - fromMs) / 1000, context.currentTime);
}
