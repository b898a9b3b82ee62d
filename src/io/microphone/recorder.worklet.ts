/** Runs on the sound thread: hands the microphone's samples to the page in blocks, every sample once and in order. */
import type { FromRecorder, ToRecorder } from './messages.ts';

/** AudioWorkletGlobalScope (Web Audio API, W3C, section 1.32) is not in TypeScript's DOM library. */
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** 43 ms at 48 kHz: a steady meter, and few messages. */
const BLOCK_FRAMES = 2048;

class Recorder extends AudioWorkletProcessor {
  #block: Float32Array[] = [];
  #filled = 0;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<ToRecorder>) => {
      this.#post();
      this.port.postMessage({ kind: 'flushed', id: data.id } satisfies FromRecorder);
    };
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const input = inputs[0];
    const frames = input?.[0]?.length ?? 0;
    if (input === undefined || frames === 0) return true;
    if (input.length !== this.#block.length || this.#filled + frames > BLOCK_FRAMES) this.#post();
    if (this.#filled === 0) this.#block = input.map(() => new Float32Array(BLOCK_FRAMES));
    input.forEach((channel, i) => this.#block[i]!.set(channel, this.#filled));
    this.#filled += frames;
    return true;
  }

  #post(): void {
    if (this.#filled === 0) return;
    const channels = this.#block.map((channel) => channel.slice(0, this.#filled));
    this.port.postMessage(
      { kind: 'block', channels } satisfies FromRecorder,
      channels.map(({ buffer }) => buffer),
    );
    this.#filled = 0;
  }
}

registerProcessor('recorder', Recorder);
