import { troubleOf, type Trouble } from '../../../io/troubles/index.ts';
import type { LiveEvent, RoomCheck } from '../../../engine/index.ts';
import type { LiveListening, RoomAnalyst } from '../../../io/analysis/index.ts';
import type { LiveMicrophone } from '../../../io/microphone/index.ts';
import { openEar, type LiveMicrophoneEar } from './ear.ts';
import type { ThisPiano } from './this-piano.ts';

export interface RoomDevices {
  readonly analyst: Pick<RoomAnalyst, 'checkRoom'>;
  readonly openMicrophone: (deviceId: string | null) => Promise<LiveMicrophone>;
  readonly openLiveListener: (sampleRateHz: number, options: object) => LiveListening;
  readonly piano: ThisPiano;
}

/** The notes that are asked for, in their order. */
export const ASKED = ['low', 'middle', 'high'] as const;

export type RoomStep =
  | { readonly kind: 'off' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'silence'; readonly leftSec: number }
  | { readonly kind: 'note'; readonly asked: (typeof ASKED)[number] }
  | { readonly kind: 'working' }
  | { readonly kind: 'done'; readonly check: RoomCheck };

/** How long nobody is to play, seconds, and how long the room may settle before. */
const SILENCE = { settleSec: 0.7, lengthSec: 3 } as const;
/** A note rings so long before the next is asked for; without one for so long, it is gone on without it, seconds. */
const NOTE = { ringSec: 1.3, patienceSec: 12 } as const;

/** Looks at the place before playing: three seconds of silence, then one low, one middle, one high note. */
export class Room {
  step: RoomStep = $state.raw({ kind: 'off' });
  trouble: Trouble | null = $state.raw(null);
  /** what comes in while it listens; null: nothing */
  level: Extract<LiveEvent, { kind: 'level' }> | null = $state.raw(null);
  readonly #devices: RoomDevices;
  #ear: LiveMicrophoneEar | null = null;
  #turn = 0;
  /** when the silence ended and the notes began */
  #silentToSec = 0;
  /** when the note asked for came; null: not yet */
  #struckSec: number | null = null;
  #askedSec = 0;

  constructor(devices: RoomDevices) {
    this.#devices = devices;
  }

  async begin(deviceId: string | null): Promise<void> {
    await this.leave();
    this.trouble = null;
    this.step = { kind: 'opening' };
    const turn = this.#turn;
    try {
      const microphone = await this.#devices.openMicrophone(deviceId);
      if (turn !== this.#turn) return microphone.close();
      this.#silentToSec = microphone.nowSec() + SILENCE.settleSec + SILENCE.lengthSec;
      this.#struckSec = null;
      this.#ear = openEar(
        microphone,
        this.#devices.openLiveListener,
        {},
        {
          onEvent: (event) => this.#hear(event),
          onTrouble: ({ kind, trouble }) => {
            if (kind === 'gone') void this.#fail(trouble);
          },
          onFailure: (trouble) => void this.#fail(trouble),
        },
      );
      this.#ear.keepFrom(microphone.nowSec());
      this.step = { kind: 'silence', leftSec: SILENCE.lengthSec };
    } catch (error) {
      if (turn === this.#turn) await this.#fail(troubleOf(error));
    }
  }

  async leave(): Promise<void> {
    this.#turn += 1;
    this.step = { kind: 'off' };
    this.level = null;
    const ear = this.#ear;
    this.#ear = null;
    await ear?.stop();
  }

  async #fail(trouble: Trouble): Promise<void> {
    await this.leave();
    this.trouble = trouble;
  }

  #hear(event: LiveEvent): void {
    const { step } = this;
    if (event.kind === 'struck' && event.final && step.kind === 'note' && event.timeSec > this.#askedSec)
      this.#struckSec ??= event.timeSec;
    if (event.kind !== 'level') return;
    this.level = event;
    if (step.kind === 'silence') {
      const leftSec = Math.ceil(this.#silentToSec - event.timeSec);
      if (event.timeSec >= this.#silentToSec) this.#ask('low', event.timeSec);
      else if (leftSec !== step.leftSec)
        this.step = { kind: 'silence', leftSec: Math.min(leftSec, SILENCE.lengthSec) };
    }
    if (step.kind !== 'note') return;
    const rung = this.#struckSec !== null && event.timeSec - this.#struckSec >= NOTE.ringSec;
    if (!rung && event.timeSec - this.#askedSec < NOTE.patienceSec) return;
    const next = ASKED[ASKED.indexOf(step.asked) + 1];
    if (next === undefined || !rung) void this.#judge();
    else this.#ask(next, event.timeSec);
  }

  #ask(asked: (typeof ASKED)[number], nowSec: number): void {
    this.#struckSec = null;
    this.#askedSec = nowSec;
    this.step = { kind: 'note', asked };
  }

  async #judge(): Promise<void> {
    const ear = this.#ear;
    if (ear === null) return;
    this.step = { kind: 'working' };
    const turn = this.#turn;
    const silence = ear.take(this.#silentToSec - SILENCE.lengthSec, this.#silentToSec);
    const played = ear.take(this.#silentToSec, ear.nowSec());
    this.#ear = null;
    try {
      await ear.stop();
      const check = await this.#devices.analyst.checkRoom(silence, played);
      if (turn !== this.#turn) return;
      this.#devices.piano.learn(check.piano);
      this.step = { kind: 'done', check };
    } catch (error) {
      if (turn === this.#turn) await this.#fail(troubleOf(error));
    }
  }
}
