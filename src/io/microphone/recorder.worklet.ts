/**
 * Runs on the sound thread: hands the microphone's samples to the page in blocks, every sample once and in order. The blocks'
 * memory comes back and is used again, and nothing else is made here while it runs: no garbage, so no pause to clear it away.
 */
import type { ToRecorder } from './messages.ts';

/** AudioWorkletGlobalScope (Web Audio API, W3C, section 1.32) is not in TypeScript's DOM library. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;
declare const sampleRate: number;

/** Frames that the sound thread hands over at once (Web Audio API, section 1.1: render quantum). */
const QUANTUM = 128;
const CHANNELS = 2;
/** a block is the whole number of quanta nearest to this: soon enough to draw a note while it is struck, seconds */
const BLOCK_SEC = 0.01;
const BLOCK_FRAMES = QUANTUM * Math.max(1, Math.round((BLOCK_SEC * sampleRate) / QUANTUM));
/** blocks under way at most before new memory is asked for: the page may be busy for 0.6 s */
const SPARES = 64;

const freshBlock = (): Float32Array[] =>
  Array.from({ length: CHANNELS }, () => new Float32Array(BLOCK_FRAMES));

class Recorder extends AudioWorkletProcessor {
  readonly #spares = Array.from({ length: SPARES }, freshBlock);
  readonly #transfer: ArrayBuffer[] = [];
  /** one message, told again and again: posting copies it */
  readonly #message = { kind: 'block', channels: freshBlock(), frames: 0, missing: 0 };
  #filled = 0;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<ToRecorder>) => {
      if (data.kind === 'spare') {
        if (this.#spares.length < SPARES) this.#spares.push(data.channels);
        return;
      }
      this.#post();
      this.port.postMessage({ kind: 'flushed', id: data.id });
    };
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const input = inputs[0];
    const { channels } = this.#message;
    for (let i = 0; i < CHANNELS; i++) {
      // One channel is both; none (the device gives nothing) is silence, so that time goes on.
      const channel = input?.[i] ?? input?.[0];
      if (channel === undefined) channels[i]!.fill(0, this.#filled, this.#filled + QUANTUM);
      else channels[i]!.set(channel, this.#filled);
    }
    if (input?.[0] === undefined) this.#message.missing += QUANTUM;
    this.#filled += QUANTUM;
    if (this.#filled === BLOCK_FRAMES) this.#post();
    return true;
  }

  #post(): void {
    if (this.#filled === 0) return;
    const message = this.#message;
    message.frames = this.#filled;
    for (let i = 0; i < CHANNELS; i++) this.#transfer[i] = message.channels[i]!.buffer as ArrayBuffer;
    this.port.postMessage(message, this.#transfer);
    message.channels = this.#spares.pop() ?? freshBlock();
    this.#filled = 0;
  }
}

registerProcessor('recorder', Recorder);
