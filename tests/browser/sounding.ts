import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { fixtureSound } from './sounds.ts';

/**
 * To be run before the page, for tests of what it makes of what it hears: the microphone is opened as ever, but a WAV (its path;
 * float, mono) sounds into the page's own sound in its place. On a busy machine Chromium's fake microphone swallows sound and tells
 * nobody; this comes later then, but whole. Unless `asked` it begins when the microphone is opened; else each time it is played.
 * `again`: it goes round and round.
 */
export async function hearWhole(page: Page, wav: string, asked = false, again = false): Promise<void> {
  await page.exposeFunction('heardByTheTest', (other: string | null) =>
    readFileSync(other ?? wav).toString('base64'),
  );
  await page.addInitScript(
    ([onlyAsked, loop]) => {
      // As encodeWav writes it: the rate at 24, the samples from 58 on.
      const HEADER_BYTES = 58;
      const { heardByTheTest } = window as unknown as {
        heardByTheTest: (other: string | null) => Promise<string>;
      };
      const read = async (other: string | null): Promise<ArrayBuffer> =>
        Uint8Array.from(atob(await heardByTheTest(other)), (letter) => letter.charCodeAt(0)).buffer;
      const known = new Map<string | null, Promise<ArrayBuffer>>();
      const bytesOf = (other: string | null): Promise<ArrayBuffer> => {
        const bytes = known.get(other) ?? read(other);
        known.set(other, bytes);
        return bytes;
      };
      // On a busy machine the page's sound falls behind the clock, by which the page knows what a device loses. Here none is lost, and
      // of a muted device the page does not ask the clock.
      Object.defineProperty(MediaStreamTrack.prototype, 'muted', { get: () => true });
      AudioContext.prototype.createMediaStreamSource = function (this: AudioContext) {
        // A silence that never ends, so that there is an input when the sound is over.
        const silence = new ConstantSourceNode(this, { offset: 0 });
        const heard = new GainNode(this);
        silence.connect(heard);
        silence.start();
        let playing: AudioBufferSourceNode | null = null;
        const play = async (other: string | null = null): Promise<void> => {
          const bytes = await bytesOf(other);
          const frames = new Float32Array(bytes.slice(HEADER_BYTES));
          const buffer = this.createBuffer(1, frames.length, new DataView(bytes).getUint32(24, true));
          buffer.copyToChannel(frames, 0);
          playing = new AudioBufferSourceNode(this, { buffer, loop });
          playing.connect(heard);
          playing.start();
        };
        // As where the device goes away: what was still to come is not heard later.
        const hush = (): void => playing?.stop();
        Object.assign(window, { play, hush });
        // Read beforehand, so that it sounds as soon as it is asked for: what waits for it may lose patience.
        void (onlyAsked ? bytesOf(null) : play());
        return heard as unknown as MediaStreamAudioSourceNode;
      };
    },
    [asked, again] as const,
  );
}

/** Lets the WAV of `hearWhole` sound, or another one (its path), from its beginning. */
export function play(page: Page, other: string | null = null): Promise<void> {
  return page.evaluate(
    (wav) => (window as unknown as { play: (wav: string | null) => Promise<void> }).play(wav),
    other,
  );
}

interface Sounding {
  /** what the page opened, in order */
  readonly soundings: AudioContext[];
}

/** To be run before the page: keeps hold of the sound that it opens. */
export function followSound(page: Page): Promise<unknown> {
  return page.addInitScript(() => {
    const soundings: AudioContext[] = [];
    Object.assign(window, { soundings });
    const Opened = window.AudioContext;
    window.AudioContext = class extends Opened {
      constructor(options?: AudioContextOptions) {
        super(options);
        soundings.push(this);
      }
    };
  });
}

/** Waits until the page has lived through so many seconds more of sound: what it hears is counted, not the time on the wall. */
export async function moreSound(page: Page, seconds: number): Promise<void> {
  const now = await page.evaluate(() =>
    (window as unknown as Sounding).soundings.map(({ currentTime }) => currentTime),
  );
  await page.waitForFunction(
    ({ was, more }) =>
      (window as unknown as Sounding).soundings.some(
        ({ currentTime }, at) => currentTime >= (was[at] ?? 0) + more,
      ),
    { was: now, more: seconds },
  );
}

/** From Start, once the microphone is on, to Stop, once the page has recorded a fixture (`microphoneWav`, heard by `hearWhole` when asked). */
export async function recordWhole(page: Page, name: string): Promise<void> {
  const { channels, sampleRateHz } = await fixtureSound(name);
  await page.getByRole('button', { name: 'Start' }).click();
  await recordFor(page, channels[0]!.length / sampleRateHz + 3);
}

/** While it records, to Stop, once it has recorded so many seconds of the WAV of `hearWhole`. */
export async function recordFor(page: Page, wholeSec: number): Promise<void> {
  await page.getByRole('button', { name: 'Stop' }).waitFor();
  await play(page);
  await page.waitForFunction((sec) => {
    const [minutes = 0, seconds = 0] =
      document.querySelector('.recorder .time')?.textContent.split(':').map(Number) ?? [];
    return 60 * minutes + seconds >= sec;
  }, wholeSec);
  await page.getByRole('button', { name: 'Stop' }).click();
}
