import type { Pulse } from '../../../io/pulse/index.ts';
import type { Speech } from '../../../io/speech/index.ts';
import type { LiveMicrophoneEar } from './ear.ts';
import type { SittingSettings } from './settings.ts';

/** After an attempt the pulse keeps still for so long, to let the verdict be read, ms. */
const REST_MS = 6000;
/** What the voice leaves ringing in the room, and how far ahead it is said that it goes on, seconds. */
const VOICE_TAIL_SEC = 0.4;
/** A click and what the room makes of it, with the delays of loudspeaker and microphone, which differ by device, seconds. */
const CLICK_AROUND_SEC = { before: 0.03, after: 0.25 } as const;

/** What the device itself makes sound, click and voice; the ear is told of each, so that it takes neither for playing. */
export class OwnSounds {
  readonly available: boolean;
  readonly #pulse: Pulse;
  readonly #speech: Speech;
  #ear: LiveMicrophoneEar | null = null;
  #click: SittingSettings['click'] = 'off';
  #playing = false;
  #speaking = false;
  #resting: ReturnType<typeof setTimeout> | null = null;

  constructor(pulse: Pulse, speech: Speech) {
    this.#pulse = pulse;
    this.#speech = speech;
    this.available = speech.available;
    pulse.onClick((atMs) => {
      const sec = this.#ear?.secAt(atMs);
      if (sec === undefined) return;
      const { before, after } = CLICK_AROUND_SEC;
      this.#ear?.mute({ fromSec: sec - before, toSec: sec + after, kind: 'click' });
    });
  }

  open(settings: SittingSettings, bpm: number | null): void {
    this.#click = bpm === null ? 'off' : settings.click;
    if (bpm !== null) this.#pulse.start(bpm);
    this.#sound();
  }

  /** The pulse goes on at another tempo; null: as it is. */
  keepTempo(bpm: number | null): void {
    if (bpm === null || this.#pulse.beatNow() === null) return;
    this.#pulse.start(bpm);
    this.#sound();
  }

  /** From here on this ear is told. */
  attach(ear: LiveMicrophoneEar): void {
    this.#ear = ear;
  }

  /** beats since the pulse began; null: there is none, or it rests */
  beatNow(): number | null {
    return this.#quiet ? null : this.#pulse.beatNow();
  }

  /** Somebody plays, or does not any more. */
  playing(now: boolean): void {
    if (now === this.#playing) return;
    this.#playing = now;
    this.#sound();
  }

  /** An attempt is over: quiet for a while. */
  rest(): void {
    this.#playing = false;
    if (this.#resting !== null) clearTimeout(this.#resting);
    this.#resting = setTimeout(() => this.#rested(), REST_MS);
    this.#sound();
  }

  /** Said once its words have come; where they cannot be had, or come when the sitting is over, nothing is. */
  async say(coming: Promise<string>): Promise<void> {
    const words = await coming.catch(() => null);
    if (words === null || this.#ear === null) return;
    this.#speaking = true;
    this.tick();
    await this.#speech.say(words);
    this.#speaking = false;
  }

  /** Told ten times a second: the ear is kept deaf while the voice goes on. */
  tick(): void {
    if (!this.#speaking || this.#ear === null) return;
    const nowSec = this.#ear.nowSec();
    this.#ear.mute({ fromSec: nowSec, toSec: nowSec + VOICE_TAIL_SEC, kind: 'voice' });
  }

  close(): void {
    if (this.#resting !== null) clearTimeout(this.#resting);
    this.#resting = null;
    this.#playing = false;
    this.#speech.stop();
    this.#pulse.sound(false);
    this.#pulse.stop();
    this.#ear = null;
  }

  #rested(): void {
    this.#resting = null;
    if (this.#speaking) return this.rest();
    this.#sound();
  }

  get #quiet(): boolean {
    return this.#resting !== null && !this.#playing;
  }

  #sound(): void {
    const wanted = this.#click === 'throughout' || (this.#click === 'count-in' && !this.#playing);
    this.#pulse.sound(wanted && !this.#quiet);
  }
}
