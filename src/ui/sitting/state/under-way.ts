import type { Notice } from '../../../engine/index.ts';
import type { Recording } from '../../../io/microphone/index.ts';
import type { Keeping } from '../../../io/unfinished/index.ts';
import type { LiveMicrophoneEar } from './ear.ts';
import type { Aim } from '../../attempt/journal.svelte.ts';
import type { Sound } from '../../attempt/sound.ts';

export { isByButton } from '../../attempt/laid-aside.ts';

/** Sound is laid aside in pieces of this length, seconds. */
const PIECE_SEC = 0.1;

/** An attempt in progress: its sound is kept by the ear, and laid aside piece by piece in case the page is closed. */
export class UnderWay {
  readonly aim: Aim;
  readonly #ear: LiveMicrophoneEar;
  readonly #keeping: Keeping;
  #startSec: number;
  #keptSec: number;
  #remarks: readonly Notice[] = [];

  constructor(ear: LiveMicrophoneEar, startSec: number, aim: Aim, keeping: Keeping) {
    this.#startSec = startSec;
    this.aim = aim;
    this.#ear = ear;
    this.#keeping = keeping;
    this.#keptSec = startSec;
    ear.keepFrom(startSec);
  }

  get startSec(): number {
    return this.#startSec;
  }

  /** What was before is no part of it. */
  beginAnew(startSec: number): void {
    this.#startSec = startSec;
    this.#ear.keepFrom(startSec);
  }

  /** It was none. */
  letGo(): void {
    this.#ear.keepFrom(null);
    this.#keeping.end();
  }

  /** Lays aside what has sounded since the last time; `now`: however little. */
  layAside(now: boolean): void {
    const nowSec = this.#ear.nowSec();
    if (!now && nowSec - this.#keptSec < PIECE_SEC) return;
    this.#keeping.add(this.#ear.take(this.#keptSec, nowSec).channels);
    this.#keptSec = nowSec;
  }

  /** Something happened to its sound that whoever reads its report should know. */
  remark(notice: Notice): void {
    this.#remarks = [...this.#remarks, notice];
  }

  /** Ends it → its sound. */
  end(startSec: number, endSec: number): Sound {
    const recording = this.#ear.take(startSec, endSec);
    this.#ear.keepFrom(null);
    const sound = soundOf(recording, this.#ear.deviceLabel, this.#keeping.id);
    return { ...sound, remarks: [...sound.remarks, ...this.#remarks] };
  }

  /** Its sound is kept elsewhere. */
  kept(): void {
    this.#keeping.end();
  }
}

/** What a microphone gave → a sound as the page has them, with a remark on what the device did to it. */
export function soundOf(
  { channels, sampleRateHz, processing }: Recording,
  device: string,
  id: string,
): Sound {
  return {
    id,
    name: 'at the piano',
    recordedHere: true,
    device,
    channels,
    sampleRateHz,
    remarks: processing,
  };
}
