import type { Keeping, Unfinished } from '../../io/unfinished/index.ts';
import type { Aim } from './journal.svelte.ts';
import type { RecordingMicrophone } from './devices.ts';
import type { Sound } from './sound.ts';

/** What is recorded by the button is called so. */
export const RECORDED = 'your recording';
/** Sound is laid aside in pieces of this length, seconds. */
const PIECE_SEC = 0.1;

/** What a recording by the button is to be, beside its sound. */
export interface RecordedByButton {
  readonly by: 'button';
  readonly aim: Aim;
}

/** Whether what was laid aside was begun by the button, and not at the piano. */
export function isByButton(about: unknown): about is RecordedByButton {
  return typeof about === 'object' && about !== null && 'by' in about && about.by === 'button';
}

/** A recording by the button: what a microphone takes is laid aside piece by piece, in case the page is closed. */
export class ButtonTake {
  readonly #microphone: RecordingMicrophone;
  readonly #keeping: Keeping | null;
  readonly #leave: () => void;

  /** Begins it. `unfinished` left out: nothing is laid aside. */
  constructor(microphone: RecordingMicrophone, unfinished: Unfinished | undefined, aim: Aim) {
    const about: RecordedByButton = { by: 'button', aim };
    const keeping = unfinished?.begin(microphone.sampleRateHz, about) ?? null;
    let keptSec = microphone.nowSec();
    this.#microphone = microphone;
    this.#keeping = keeping;
    this.#leave = microphone.onBlock(() => {
      const nowSec = microphone.nowSec();
      if (nowSec - keptSec < PIECE_SEC) return;
      keeping?.add(microphone.take(keptSec, nowSec).channels);
      keptSec = nowSec;
    });
    microphone.start();
  }

  /** Ends it → its sound, which stays laid aside until it is kept elsewhere. */
  async stop(): Promise<Sound> {
    const { channels, sampleRateHz, processing: remarks } = await this.#microphone.stop();
    const device = this.#microphone.deviceLabel;
    this.#microphone.close();
    this.#leave();
    const id = this.#keeping?.id;
    const named = id === undefined ? {} : { id };
    return { ...named, name: RECORDED, recordedHere: true, device, channels, sampleRateHz, remarks };
  }

  /** It is kept elsewhere, or thrown away. */
  end(): void {
    this.#leave();
    this.#keeping?.end();
  }
}

/** What pages that are no longer open left of recordings by the button, oldest first; each stays until it is forgotten. */
export async function leftByButton(
  unfinished: Unfinished | undefined,
): Promise<readonly (RecordedByButton & { readonly sound: Sound; readonly forget: () => Promise<void> })[]> {
  const left = (await unfinished?.recover(isByButton).catch(() => [])) ?? [];
  return left.flatMap(({ id, channels, sampleRateHz, about, forget }) => {
    if (!isByButton(about)) return [];
    const remarks = [{ notice: 'page-closed' } as const];
    const sound = { id, name: RECORDED, recordedHere: true, channels, sampleRateHz, remarks };
    return [{ ...about, forget, sound }];
  });
}
