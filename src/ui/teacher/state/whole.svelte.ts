import type { GivenFile } from '../../../io/teaching/index.ts';
import { troubleOf, type Trouble } from '../../../io/troubles/index.ts';
import type { Player } from '../../attempt/player.svelte.ts';
import type { TeachingDevices } from './devices.ts';
import type { TeachingLists } from './lists.svelte.ts';

/** A recording as it came, talk and pauses and all, heard. Nothing rejects; `trouble` tells. */
export class Whole {
  opening = $state(false);
  player: Player | null = $state.raw(null);
  trouble: Trouble | null = $state.raw(null);
  readonly #devices: TeachingDevices;
  readonly #lists: TeachingLists;
  readonly #file: GivenFile;
  #closed = false;

  constructor(devices: TeachingDevices, lists: TeachingLists, file: GivenFile) {
    this.#devices = devices;
    this.#lists = lists;
    this.#file = file;
  }

  readonly playing: boolean = $derived(this.player !== null && this.player.positionSec !== null);

  /** Plays it, or stops it. */
  async play(): Promise<void> {
    if (this.opening) return;
    if (this.playing) return this.player?.stop();
    this.opening = this.player === null;
    try {
      this.player ??= await this.#open();
      if (this.#closed) return this.close();
      this.player?.play(0);
      const { id } = this.#file;
      await this.#lists.changeFiles([id], () => ({ seenMs: this.#devices.now() }));
    } catch (error) {
      this.trouble = troubleOf(error);
    }
    this.opening = false;
  }

  close(): void {
    this.#closed = true;
    this.player?.close();
    this.player = null;
  }

  async #open(): Promise<Player | null> {
    const { store, decode, playerOf } = this.#devices;
    const { id, path: name } = this.#file;
    const blob = await store.blob(id);
    if (blob === null) {
      this.trouble = { trouble: 'file-gone' };
      return null;
    }
    const { channels, sampleRateHz, remarks } = await decode(await blob.arrayBuffer(), name);
    return playerOf({ channels, sampleRateHz, remarks, name, recordedHere: false }, null);
  }
}
