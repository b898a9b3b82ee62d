import { readChoice, readUnfinished } from '../../io/check/index.ts';
import { handsIn, passageId, type AudioInput, type ExerciseChoice } from '../../engine/index.ts';
import type { Analyst } from '../../io/analysis/index.ts';
import type { Microphone } from '../../io/microphone/index.ts';
import type { Bars, KeptPassages } from '../../io/scores/index.ts';
import { recall, remember, type Settings } from '../../io/settings/index.ts';
import { troubleOf, type Trouble } from '../../io/troubles/index.ts';
import type { Plan } from '../attempt/plan.svelte.ts';
import { knowPassage } from '../names/address.ts';

/** How something that is played comes in and is heard. */
export interface Hearing {
  readonly analyst: Pick<Analyst, 'analyse' | 'cancel'>;
  readonly decode: (bytes: ArrayBuffer, name: string) => Promise<AudioInput>;
  /** null: the system's choice */
  readonly openMicrophone: (deviceId: string | null) => Promise<Microphone>;
}

/** What the list of one's own passages needs. */
export interface PassageDevices {
  readonly kept: KeptPassages;
  readonly open: (file: File, bars: Bars | null) => Promise<readonly ExerciseChoice[]>;
  readonly encode: (choices: readonly ExerciseChoice[]) => Promise<string>;
  /** what hears one that is played once */
  readonly hearing: Hearing;
}

/** The name under which what is being made is laid aside. */
const ASIDE = 'passage';

/** A file that was opened and gave no passage. */
interface Refused {
  readonly file: File;
  readonly why: Trouble;
  /** how many bars it has, where it is only too long */
  readonly bars: number | null;
}

/** The passages of one's own: opened, listed, let go of. */
export class Passages {
  list: readonly ExerciseChoice[] = $state.raw([]);
  refused: Refused | null = $state.raw(null);
  /** one that is being made or set right; 'new': from nothing; null: none */
  composing: ExerciseChoice | 'new' | null = $state.raw(null);
  readonly #devices: PassageDevices;
  /** what is being made, as far as it is written, outlives the page here */
  #drafts: Settings | null = null;

  get hearing(): Hearing {
    return this.#devices.hearing;
  }

  constructor(devices: PassageDevices) {
    this.#devices = devices;
  }

  /** What was being made when the page was left is being made again. */
  remember(drafts: Settings): void {
    this.#drafts = drafts;
    this.composing = this.#aside?.of ?? null;
  }

  /** What is being made, as far as it was written; null: nothing of it was laid aside. */
  get draft(): ExerciseChoice | null {
    const { composing } = this;
    const aside = this.#aside;
    if (aside === null || composing === null) return null;
    const isIt =
      aside.of === 'new' || composing === 'new' ? aside.of === composing : isSame(aside.of, composing);
    return isIt ? aside.draft : null;
  }

  /** Lays aside what is written so far; null: nothing is. */
  layAside(draft: ExerciseChoice | null): void {
    if (this.#drafts === null) return;
    if (draft === null) this.#drafts.forget(ASIDE);
    else remember(this.#drafts, ASIDE, { of: this.composing, draft });
  }

  /** What is being made is thrown away. */
  leave(): void {
    this.composing = null;
    this.layAside(null);
  }

  get #aside(): { readonly of: ExerciseChoice | 'new'; readonly draft: ExerciseChoice } | null {
    if (this.#drafts === null) return null;
    const kept = recall(this.#drafts, ASIDE) as { readonly of?: unknown; readonly draft?: unknown } | null;
    const of = kept?.of === 'new' ? 'new' : readChoice(kept?.of);
    const draft = readUnfinished(kept?.draft);
    return of === null || draft === null ? null : { of, draft };
  }

  /** What lies on this device. */
  async load(): Promise<void> {
    const kept = await this.#devices.kept.all();
    this.list = [...kept, ...this.list.filter((one) => kept.every((other) => !isSame(one, other)))];
    this.list.forEach(knowPassage);
  }

  /** A file → its first passage, to be played; all of them are kept. Null where it gave none: `refused` says why. */
  async open(file: File, bars: Bars | null = null): Promise<ExerciseChoice | null> {
    try {
      const found = await this.#devices.open(file, bars);
      this.refused = null;
      for (const choice of found) await this.add(choice);
      return found[0] ?? null;
    } catch (thrown) {
      const why = troubleOf(thrown);
      this.refused = { file, why, bars: 'bars' in why ? why.bars : null };
      return null;
    }
  }

  /** Several files → the last passage among them; what is refused stays said beside it. */
  async openAll(files: readonly File[]): Promise<ExerciseChoice | null> {
    this.composing = null;
    let found: ExerciseChoice | null = null;
    let refused: Refused | null = null;
    for (const file of files) {
      found = (await this.open(file)) ?? found;
      refused = this.refused ?? refused;
    }
    this.refused = refused;
    return found;
  }

  /** Some of them as a file of their own. */
  async fileOf(choices: readonly ExerciseChoice[]): Promise<Blob> {
    return new Blob([await this.#devices.encode(choices)], { type: 'application/json' });
  }

  async add(choice: ExerciseChoice): Promise<void> {
    this.list = [...this.list.filter((one) => !isSame(one, choice)), choice];
    knowPassage(choice);
    await this.#devices.kept.put(choice);
  }

  /** Fingers were written into it: where it is one of these, it is kept with them. */
  async fingered(choice: ExerciseChoice): Promise<void> {
    if (this.list.some((one) => isSame(one, choice))) await this.add(asWritten(choice));
  }

  /** What was made takes the place of what it was made from. */
  async made(choice: ExerciseChoice): Promise<void> {
    const { composing } = this;
    this.leave();
    if (composing !== null && composing !== 'new' && !isSame(composing, choice)) await this.remove(composing);
    await this.add(choice);
  }

  /** Whatever came with a backup or a teacher's assignment: the passages among it that are not here yet are kept. */
  async receive(values: readonly unknown[]): Promise<void> {
    const found = values
      .flatMap((value) => readChoice(value) ?? [])
      .filter(({ passage }) => passage !== undefined);
    for (const choice of found)
      if (!this.list.some((one) => isSame(one, choice))) await this.add(asWritten(choice));
  }

  async remove(choice: ExerciseChoice): Promise<void> {
    this.list = this.list.filter((one) => !isSame(one, choice));
    await this.#devices.kept.remove(choice);
  }

  dismiss(): void {
    this.refused = null;
  }
}

export const idOf = ({ passage }: ExerciseChoice): string =>
  passage === undefined ? '' : passageId(passage);

const isSame = (one: ExerciseChoice, other: ExerciseChoice): boolean => idOf(one) === idOf(other);

/** For all hands that it is written for. */
export function asWritten(choice: ExerciseChoice): ExerciseChoice {
  return choice.passage === undefined ? choice : { ...choice, hands: handsIn(choice.passage) };
}

/** What is to be played now is this passage, at the tempo that is written in it. */
export function takeUp(plan: Plan, choice: ExerciseChoice): void {
  plan.choose(choice);
  plan.targetBpm = choice.passage?.bpm === undefined ? null : Math.round(choice.passage.bpm);
}

/** Whether a file is music by its ending, or by what the system calls it: its contents tell when it is opened. */
export function isScoreFile({ name, type }: Pick<File, 'name' | 'type'>): boolean {
  const known = SCORE_FILES.split(',');
  return known.includes(type.toLowerCase()) || known.includes(/\.\w+$/.exec(name.toLowerCase())?.[0] ?? '-');
}

/** Endings and kinds of files of music, as systems offer them. */
export const SCORE_FILES =
  '.musicxml,.mxl,.xml,.mid,.midi,.abc,.json,application/vnd.recordare.musicxml+xml,application/vnd.recordare.musicxml,audio/midi,text/vnd.abc';
