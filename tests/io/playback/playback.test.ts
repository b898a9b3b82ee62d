import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createPlayback } from '../../../src/io/playback/index.ts';

const RATE_HZ = 1000;
/** Two channels of two seconds, each sample telling its place. */
const SOUND = {
  sampleRateHz: RATE_HZ,
  channels: [1, -1].map((sign) => Float32Array.from({ length: 2000 }, (_, i) => (sign * (i + 1)) / 4000)),
};

interface Started {
  readonly buffer: {
    readonly channels: readonly Float32Array[];
    readonly length: number;
    readonly rateHz: number;
  };
  readonly loop: boolean;
  readonly to: unknown;
  stopped: boolean;
  readonly end: () => void;
}
/** What the page would hear of the system's sound (Web Audio API, W3C), with its clock in the test's hand. */
const heard = { now: 10, latency: 0.25, contexts: 0, closed: 0, resumed: 0, started: [] as Started[] };

class Context {
  readonly destination = 'loudspeaker';
  readonly outputLatency = heard.latency;
  constructor() {
    heard.contexts += 1;
  }
  get currentTime(): number {
    return heard.now;
  }
  resume = () => Promise.resolve(void (heard.resumed += 1));
  close = () => Promise.resolve(void (heard.closed += 1));
  createBuffer = (count: number, length: number, rateHz: number) => {
    const channels = Array.from({ length: count }, () => new Float32Array(length));
    const copyToChannel = (from: Float32Array, to: number): void => channels[to]!.set(from);
    return { channels, length, rateHz, copyToChannel };
  };
}
class Source {
  #to: unknown = null;
  #ended: () => void = () => undefined;
  #started: Started | null = null;
  readonly options: { readonly buffer: Started['buffer']; readonly loop: boolean };
  constructor(_: Context, options: Source['options']) {
    this.options = options;
  }
  connect = (to: unknown): void => void (this.#to = to);
  addEventListener = (name: string, act: () => void): void => {
    if (name === 'ended') this.#ended = act;
  };
  start = (): void => {
    this.#started = { ...this.options, to: this.#to, stopped: false, end: () => this.#ended() };
    heard.started.push(this.#started);
  };
  // As the standard has it, a source that is stopped tells that it has ended, too.
  stop = (): void => {
    this.#started!.stopped = true;
    this.#ended();
  };
}

beforeEach(() => {
  Object.assign(heard, { now: 10, latency: 0.25, contexts: 0, closed: 0, resumed: 0, started: [] });
  vi.stubGlobal('AudioContext', Context);
  vi.stubGlobal('AudioBufferSourceNode', Source);
});
afterEach(() => void vi.unstubAllGlobals());

/** A playback and how often it said that a stretch was over. */
function opened() {
  const playback = createPlayback(SOUND);
  const ends = vi.fn();
  playback.onEnd(ends);
  return { playback, ends };
}

describe('a recording that is played', () => {
  it('opens the sound of the page by the first play alone', () => {
    const { playback } = opened();
    expect([heard.contexts, playback.positionSec()]).toEqual([0, null]);
    playback.play(0);
    playback.play(0.5);
    expect([heard.contexts, heard.resumed, heard.started.length]).toEqual([1, 2, 2]);
  });

  it('sounds in all channels from one place to another, faded over 5 ms at either end', () => {
    opened().playback.play(0.5, 1.5);
    const [{ buffer, loop, to }] = heard.started as [Started];
    expect([buffer.length, buffer.rateHz, loop, to]).toEqual([1000, RATE_HZ, false, 'loudspeaker']);
    expect([...buffer.channels[0]!.subarray(5, 995)]).toEqual([...SOUND.channels[0]!.subarray(505, 1495)]);
    expect([...buffer.channels[1]!.subarray(5, 995)]).toEqual([...SOUND.channels[1]!.subarray(505, 1495)]);
    expect([buffer.channels[0]![0], buffer.channels[0]![999]]).toEqual([0, 0]);
  });

  it.each([
    [[0, undefined], 2000],
    [[-1, 0.5], 500],
    [[1.5, 9], 500],
  ] as const)('keeps within the recording: from %j', ([from, to], frames) => {
    opened().playback.play(from, to);
    expect(heard.started[0]!.buffer.length).toBe(frames);
  });

  it.each([
    [1, 1],
    [1.5, 1],
    [3, 4],
  ])('is over at once where nothing lies between %s and %s', (from, to) => {
    const { playback, ends } = opened();
    playback.play(from, to);
    expect([heard.started.length, ends.mock.calls.length, playback.positionSec()]).toEqual([0, 1, null]);
  });

  it('knows the place that sounds now: what left the page a latency ago, never beyond its end', () => {
    const { playback } = opened();
    playback.play(0.5, 1.5);
    expect(playback.positionSec()).toBe(0.5);
    heard.now = 10.75;
    expect(playback.positionSec()).toBeCloseTo(1, 9);
    heard.now = 14;
    expect(playback.positionSec()).toBe(1.5);
  });

  it('takes no latency for none', () => {
    Object.assign(heard, { latency: undefined });
    const { playback } = opened();
    playback.play(0.5);
    heard.now = 10.75;
    expect(playback.positionSec()).toBeCloseTo(1.25, 9);
  });

  it('tells its end once, and then nothing sounds', () => {
    const { playback, ends } = opened();
    playback.play(0, 1);
    heard.started[0]!.end();
    expect([ends.mock.calls.length, playback.positionSec()]).toEqual([1, null]);
    heard.started[0]!.end();
    playback.stop();
    expect([ends.mock.calls.length, heard.started[0]!.stopped]).toEqual([1, false]);
  });

  it('tells no end when it is stopped, or when another stretch takes its place', () => {
    const { playback, ends } = opened();
    playback.play(0, 1);
    playback.play(1, 2);
    expect(heard.started.map(({ stopped }) => stopped)).toEqual([true, false]);
    heard.started[0]!.end();
    expect(playback.positionSec()).toBe(1);
    playback.stop();
    expect([ends.mock.calls.length, playback.positionSec(), heard.started[1]!.stopped]).toEqual([
      0,
      null,
      true,
    ]);
  });

  it('goes round with a breath of 0.35 s in between, and knows its place in each round', () => {
    const { playback } = opened();
    playback.play(0.5, 1.5, { loop: true });
    expect([heard.started[0]!.loop, heard.started[0]!.buffer.length]).toEqual([true, 1350]);
    expect(Math.max(...heard.started[0]!.buffer.channels[0]!.subarray(1000))).toBe(0);
    heard.now = 10 + 0.25 + 1.35 + 0.5;
    expect(playback.positionSec()).toBeCloseTo(1, 9);
    heard.now = 10 + 0.25 + 1.35 - 0.1;
    expect(playback.positionSec()).toBe(1.5);
  });

  it('takes twice as long at half the speed, and places stay those of the recording', () => {
    const { playback } = opened();
    playback.play(0.5, 1.5, { speed: 0.5 });
    expect(heard.started[0]!.buffer.length).toBe(2000);
    heard.now = 10 + 0.25 + 1;
    expect(playback.positionSec()).toBeCloseTo(1, 2);
  });

  it('closes the sound of the page, and opens it anew', () => {
    const { playback, ends } = opened();
    playback.close();
    expect(heard.closed).toBe(0);
    playback.play(0);
    playback.close();
    expect([heard.closed, heard.started[0]!.stopped, playback.positionSec()]).toEqual([1, true, null]);
    playback.play(0);
    expect([heard.contexts, ends.mock.calls.length]).toEqual([2, 0]);
  });
});
