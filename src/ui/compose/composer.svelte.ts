import { exerciseOf, layOut } from '../../engine/index.ts';
import type { AudioInput, ExerciseChoice, Hands, LayOutOptions, WrittenNote } from '../../engine/index.ts';
import type { Microphone } from '../../io/microphone/index.ts';
import { troubleOf, type Trouble } from '../../io/troubles/index.ts';
import type { Hearing } from '../prepare/passages.svelte.ts';
import {
  after,
  first,
  handed,
  lengthened,
  put,
  raised,
  stepped,
  taken,
  withThird,
  type Edited,
} from './edits.ts';
import { choiceOn, EMPTY_SHEET, laidAside, mostBeats, NEAR, sheetOf, takenUp, type Sheet } from './sheet.ts';

/** How a passage comes to be, and how far it is. */
export type Stage =
  | { readonly kind: 'choosing' }
  | { readonly kind: 'opening' }
  | { readonly kind: 'recording'; readonly microphone: Microphone }
  | { readonly kind: 'listening'; readonly share: number | null }
  | { readonly kind: 'writing' };

const UNDONE = 100;
/** Note values that can be chosen, quarter notes: a whole note to a thirty-second. */
export const LENGTHS = [4, 2, 1, 0.5, 0.25, 0.125] as const;
const DOT = 1.5;
const TRIPLET = 2 / 3;

/** A passage of one's own under way: played once or begun empty, then set right note by note. */
export class Composer {
  stage: Stage = $state.raw({ kind: 'choosing' });
  trouble: Trouble | null = $state.raw(null);
  sheet: Sheet = $state.raw(EMPTY_SHEET);
  chosen: WrittenNote | null = $state.raw(null);
  /** nothing was heard of which a passage could be made */
  nothing = $state(false);
  /** so many notes lay beyond the last bar that there may be */
  beyond = $state(0);
  /** about how fast it is played, quarter notes a minute; null: its rhythm is left free */
  bpm: number | null = $state(50);
  /** what follows moves along when a length changes */
  onward = $state(true);
  /** the next note's length */
  length: number = $state(1);
  dotted = $state(false);
  triplet = $state(false);
  #begun = EMPTY_SHEET;
  #before: readonly Edited[] = $state.raw([]);
  readonly #devices: Hearing;
  #turn = 0;

  /** `choice`: a passage to be set right; null: a new one. `draft`: as far as it was written when it was laid aside; null: it was not. */
  constructor(devices: Hearing, choice: ExerciseChoice | null, draft: ExerciseChoice | null = null) {
    this.#devices = devices;
    if (choice !== null) this.#begun = sheetOf(choice);
    this.sheet = draft === null ? this.#begun : takenUp(draft);
    if (choice === null && draft === null) return;
    this.stage = { kind: 'writing' };
    this.touch(this.sheet.notes[0] ?? null);
  }

  /** What lies on the sheet, where it can be played; null: there is too little, or too much at once. */
  readonly choice: ExerciseChoice | null = $derived(
    this.sheet.notes.length === 0 ? null : (exerciseOf(choiceOn(this.sheet))?.choice ?? null),
  );

  /** What is written, to be laid aside; null: nothing that was not there before. */
  get draft(): ExerciseChoice | null {
    const { stage, sheet } = this;
    return stage.kind !== 'writing' || sheet === this.#begun || sheet.notes.length === 0
      ? null
      : laidAside(sheet);
  }

  get canUndo(): boolean {
    return this.#before.length > 0;
  }

  /** The length of the next note, or of the one in hand, quarter notes. */
  get beats(): number {
    return this.length * (this.dotted ? DOT : 1) * (this.triplet ? TRIPLET : 1);
  }

  async record(): Promise<void> {
    const turn = this.#begin({ kind: 'opening' });
    try {
      const microphone = await this.#devices.openMicrophone(null);
      if (turn !== this.#turn) return microphone.close();
      microphone.onEnded(() => void this.stop());
      microphone.start();
      this.stage = { kind: 'recording', microphone };
    } catch (error) {
      if (turn === this.#turn) this.#failed(error);
    }
  }

  async stop(): Promise<void> {
    if (this.stage.kind !== 'recording') return;
    const { microphone } = this.stage;
    const turn = this.#begin({ kind: 'listening', share: null });
    const sound = await microphone.stop();
    microphone.close();
    if (turn === this.#turn) await this.hear(sound);
  }

  async open(file: File): Promise<void> {
    const turn = this.#begin({ kind: 'listening', share: null });
    try {
      const sound = await this.#devices.decode(await file.arrayBuffer(), file.name);
      if (turn !== this.#turn) return;
      if (this.sheet.title === '') this.sheet = { ...this.sheet, title: file.name.replace(/\.\w{1,5}$/, '') };
      await this.hear(sound);
    } catch (error) {
      if (turn === this.#turn) this.#failed(error);
    }
  }

  /** What sounds is laid on the sheet. */
  async hear(sound: AudioInput): Promise<void> {
    const turn = this.#begin({ kind: 'listening', share: 0 });
    try {
      const { heard } = await this.#devices.analyst.analyse(sound, null, {}, (share) => {
        if (turn === this.#turn) this.stage = { kind: 'listening', share };
      });
      if (turn !== this.#turn) return;
      const { title, time, hands } = this.sheet;
      const options: LayOutOptions = { title, bpm: this.bpm, time, hands };
      const laid = layOut(heard.notes, options);
      this.nothing = laid === null;
      this.beyond = laid?.beyond ?? 0;
      if (laid === null) return void (this.stage = { kind: 'choosing' });
      this.sheet = { ...sheetOf(laid.choice), hands };
      this.touch(this.sheet.notes[0] ?? null);
      this.stage = { kind: 'writing' };
    } catch (error) {
      if (turn === this.#turn) this.#failed(error);
    }
  }

  /** An empty sheet to write on. */
  write(): void {
    this.#begin({ kind: 'writing' });
  }

  /** Leaves the microphone or the listening. */
  leave(): void {
    if (this.stage.kind === 'recording') this.stage.microphone.close();
    if (this.stage.kind === 'listening') this.#devices.analyst.cancel();
    this.#begin({ kind: 'choosing' });
  }

  /** Takes a note in hand: what is chosen for it is what it has. */
  touch(note: WrittenNote | null): void {
    this.chosen = note;
    if (note === null) return;
    for (const triplet of [false, true])
      for (const dotted of [false, true])
        for (const length of LENGTHS)
          if (Math.abs(length * (dotted ? DOT : 1) * (triplet ? TRIPLET : 1) - note.beats) < NEAR) {
            this.length = length;
            this.dotted = dotted;
            this.triplet = triplet;
            return;
          }
  }

  /** The note so many places on or back. */
  walk(by: 1 | -1): void {
    const { notes } = this.sheet;
    const at = this.chosen === null ? (by > 0 ? -1 : notes.length) : notes.indexOf(this.chosen);
    this.touch(notes[Math.min(notes.length - 1, Math.max(0, at + by))] ?? null);
  }

  up(by: number): void {
    this.#edit((sheet, note) => stepped(sheet, note, by));
  }
  sharpen(by: 1 | -1): void {
    this.#edit((sheet, note) => raised(sheet, note, by));
  }
  otherHand(): void {
    this.#edit(handed);
  }
  take(): void {
    this.#edit(taken);
  }
  third(): void {
    this.#edit(withThird);
  }
  /** The same again after what is in hand, or after all; the first note of an empty sheet. */
  again(): void {
    const { sheet, beats } = this;
    const note = this.chosen ?? sheet.notes.at(-1);
    this.#keep(note === undefined ? first(sheet, beats) : after(sheet, note, beats, this.onward));
  }

  /** Gives what is in hand, and what comes next, another length. */
  last(part: { readonly length?: number; readonly dotted?: boolean; readonly triplet?: boolean }): void {
    this.length = part.length ?? this.length;
    this.dotted = part.dotted ?? this.dotted;
    this.triplet = part.triplet ?? this.triplet;
    this.#edit((sheet, note) => lengthened(sheet, note, this.beats, this.onward));
  }

  /** A note where somebody touched the staff. */
  put(note: Omit<WrittenNote, 'beats'>): void {
    this.#keep(put(this.sheet, { ...note, beats: Math.min(this.beats, mostBeats(this.sheet) - note.beat) }));
  }

  /** Changes what the sheet is, not what is written on it. */
  set(
    part: Partial<Pick<Sheet, 'title' | 'key' | 'time' | 'upbeat' | 'bpm'>> & { readonly hands?: Hands },
  ): void {
    this.sheet = { ...this.sheet, ...part };
  }

  undo(): void {
    const last = this.#before.at(-1);
    if (last === undefined) return;
    this.#before = this.#before.slice(0, -1);
    this.sheet = last.sheet;
    this.touch(last.chosen);
  }

  #edit(change: (sheet: Sheet, note: WrittenNote) => Edited): void {
    if (this.chosen !== null) this.#keep(change(this.sheet, this.chosen));
  }

  #keep({ sheet, chosen }: Edited): void {
    if (sheet !== this.sheet)
      this.#before = [...this.#before.slice(1 - UNDONE), { sheet: this.sheet, chosen: this.chosen }];
    this.sheet = sheet;
    this.touch(chosen === null ? null : (sheet.notes.find((note) => isSameNote(note, chosen)) ?? null));
  }

  #begin(stage: Stage): number {
    this.trouble = null;
    this.nothing = false;
    this.stage = stage;
    return (this.#turn += 1);
  }

  #failed(error: unknown): void {
    this.stage = { kind: 'choosing' };
    this.trouble = troubleOf(error);
  }
}

const isSameNote = (one: WrittenNote, other: WrittenNote): boolean =>
  one.name === other.name && one.hand === other.hand && Math.abs(one.beat - other.beat) < NEAR;
