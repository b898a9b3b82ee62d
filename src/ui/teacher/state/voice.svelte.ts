import type { AudioInput } from '../../../engine/index.ts';
import type { Microphone } from '../../../io/microphone/index.ts';
import type { SoundFile } from '../../../io/review/index.ts';
import type { Player } from '../../attempt/player.svelte.ts';
import { troubleOf, type Trouble } from '../../../io/troubles/index.ts';
import type { TeachingDevices } from './devices.ts';

/** A spoken remark is that long at most, ms. */
export const LONGEST_VOICE_MS = 180_000;

export type VoicePhase = 'idle' | 'opening' | 'recording' | 'packing';

type Used = Pick<TeachingDevices, 'openMicrophone' | 'encodeVoice' | 'decode' | 'playerOf'>;

/** What was recorded → what is kept of it. Rejects where it cannot be. */
export type Pack = (sound: AudioInput) => Promise<SoundFile>;

/** A spoken remark, or what `pack` makes of it: recorded, heard again, done again. Nothing rejects; `trouble` tells. */
export class Voice {
  phase: VoicePhase = $state('idle');
  sound: SoundFile | null = $state.raw(null);
  player: Player | null = $state.raw(null);
  trouble: Trouble | null = $state.raw(null);
  readonly #devices: Used;
  readonly #pack: Pack;
  #microphone: Microphone | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;

  constructor(devices: Used, sound: SoundFile | null = null, pack: Pack | null = null) {
    this.#devices = devices;
    // A voice comes from one place: one channel is enough.
    this.#pack =
      pack ??
      (({ channels, sampleRateHz }) => devices.encodeVoice({ channels: channels.slice(0, 1), sampleRateHz }));
    this.sound = sound;
  }

  async record(): Promise<void> {
    if (this.phase !== 'idle') return;
    this.#silence();
    [this.phase, this.trouble] = ['opening', null];
    try {
      this.#microphone = await this.#devices.openMicrophone();
      this.#microphone.onEnded(() => void this.stop());
      this.#microphone.start();
      this.phase = 'recording';
      this.#timer = setTimeout(() => void this.stop(), LONGEST_VOICE_MS);
    } catch (error) {
      this.#fail(error);
    }
  }

  async stop(): Promise<void> {
    const microphone = this.#microphone;
    if (this.phase !== 'recording' || microphone === null) return;
    this.phase = 'packing';
    try {
      this.sound = await this.#pack(await microphone.stop());
      this.phase = 'idle';
    } catch (error) {
      this.#fail(error);
    }
    this.#release();
  }

  /** Plays what was recorded, or stops it. */
  async play(): Promise<void> {
    if (this.player !== null && this.player.positionSec !== null) return this.player.stop();
    await this.open();
    this.player?.play(0);
  }

  /** Makes it ready to be heard. */
  async open(): Promise<void> {
    const { sound: file } = this;
    if (file === null || this.player !== null) return;
    try {
      const { channels, sampleRateHz } = await this.#devices.decode(file.bytes.slice().buffer, 'remark');
      if (this.sound !== file || this.player !== null) return;
      const sound = { channels, sampleRateHz, name: 'remark', remarks: [], recordedHere: false };
      this.player = this.#devices.playerOf(sound, null);
    } catch (error) {
      this.#fail(error);
    }
  }

  clear(): void {
    this.replace(null);
  }

  /** Another sound takes its place; null: none. */
  replace(sound: SoundFile | null): void {
    this.#silence();
    this.sound = sound;
  }

  close(): void {
    this.#silence();
    this.#release();
    this.phase = 'idle';
  }

  #silence(): void {
    this.player?.close();
    this.player = null;
  }

  #release(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#microphone?.close();
    this.#microphone = null;
  }

  #fail(error: unknown): void {
    this.trouble = troubleOf(error);
    this.phase = 'idle';
    this.#release();
  }
}
