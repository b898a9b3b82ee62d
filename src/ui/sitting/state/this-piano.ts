import { learnPiano, mergePianos } from '../../../engine/index.ts';
import type { Assessment, PianoProfile } from '../../../engine/index.ts';
import { recall, remember } from '../../../io/settings/index.ts';
import type { Settings } from '../../../io/settings/index.ts';

const NAME = 'piano';

/** The piano that the device stands at, remembered on it: told by the room check, refined by every attempt. */
export class ThisPiano {
  readonly #settings: Settings;

  constructor(settings: Settings) {
    this.#settings = settings;
  }

  /** null: nothing is known of it yet */
  get known(): PianoProfile | null {
    return readPiano(recall(this.#settings, NAME));
  }

  /** What a room check came to, or one attempt more. */
  learn(taught: PianoProfile | null): void {
    if (taught !== null) remember(this.#settings, NAME, mergePianos(this.known, taught));
  }

  /** Only an attempt that was played teaches: what was not understood may have been another thing than this piano. */
  learnFrom(assessment: Assessment): void {
    if (assessment.kind === 'report') this.learn(learnPiano(assessment.heard));
  }

  /** Another piano stands here now. */
  forget(): void {
    remember(this.#settings, NAME, null);
  }
}

/** What was remembered, whatever it is → a piano; null where its shape is not one's. */
export function readPiano(kept: unknown): PianoProfile | null {
  if (!isRecord(kept) || kept['version'] !== 1 || !isLearnt(kept['tuningCents'])) return null;
  const { tuningCents, keys } = kept;
  if (!isRecord(keys)) return null;
  const sound = Object.entries(keys).filter(
    ([midi, key]) =>
      Number(midi) >= 21 &&
      Number(midi) <= 108 &&
      isRecord(key) &&
      isLearnt(key['levelDb']) &&
      [key['cents'], key['logStiffness']].every((figure) => figure === undefined || isLearnt(figure)),
  );
  return { version: 1, tuningCents, keys: Object.fromEntries(sound) as PianoProfile['keys'] };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

function isLearnt(value: unknown): value is PianoProfile['tuningCents'] {
  return (
    isRecord(value) &&
    [value['value'], value['plusMinus'], value['count']].every((figure) => Number.isFinite(figure)) &&
    (value['plusMinus'] as number) > 0
  );
}
