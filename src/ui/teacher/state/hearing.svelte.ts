import { exerciseIn, isHandKnown } from '../../../engine/index.ts';
import type { AudioInput, Exercise, ExerciseChoice, Report } from '../../../engine/index.ts';
import type { Correction, RemarkPlace, Remark, SoundFile } from '../../../io/review/index.ts';
import type { Changed, Example, Playing, Reports, Said } from '../../../io/teaching/index.ts';
import { sameChoice } from '../../attempt/plan.svelte.ts';
import type { Player } from '../../attempt/player.svelte.ts';
import { versionsOf } from '../../attempt/retiming.ts';
import type { Sound } from '../../attempt/sound.ts';
import { EvenfallError, troubleOf, type Trouble } from '../../../io/troubles/index.ts';
import type { TeachingDevices } from './devices.ts';
import { handsOfDay } from './hands-apart.ts';
import type { TeachingLists } from './lists.svelte.ts';
import type { Pianos } from './pianos.svelte.ts';
import { moved, samePlace, together } from './places.ts';
import { toldBy } from '../../../io/teaching/index.ts';

/** One attempt opened: its reports, its sound, and what the teacher says of it. Nothing rejects; `trouble` tells. */
export class Hearing {
  playing: Playing = $state.raw(null as never);
  reports: Reports = $state.raw({ own: null, chosen: null });
  said: Said = $state.raw({ remarks: [], corrections: [] });
  sound: Sound | null = $state.raw(null);
  player: Player | null = $state.raw(null);
  /** earlier attempts of this student at the same exercise, oldest first */
  others: readonly { readonly report: Report; readonly whenMs: number | null; readonly name: string }[] =
    $state.raw([]);
  loaded = $state(false);
  /** 0..1 while it is measured as another exercise */
  measuring: number | null = $state(null);
  trouble: Trouble | null = $state.raw(null);
  /** what was said before the last deletion */
  undo: Said | null = $state.raw(null);
  readonly #devices: TeachingDevices;
  readonly #lists: TeachingLists;
  readonly #pianos: Pianos;

  /** passages of one's own, which it may have been */
  get own(): readonly ExerciseChoice[] {
    return this.#devices.own();
  }

  constructor(devices: TeachingDevices, lists: TeachingLists, pianos: Pianos, playing: Playing) {
    this.#devices = devices;
    this.#lists = lists;
    this.#pianos = pianos;
    this.playing = playing;
  }

  /** the one that counts: as the teacher chose, else as the tool recognised it */
  readonly report: Report | null = $derived(this.reports.chosen ?? this.reports.own);
  readonly exercise: Exercise | null = $derived(this.report === null ? null : exerciseIn(this.report));

  async load(): Promise<void> {
    const { store, decode } = this.#devices;
    const { id, name } = this.playing;
    try {
      [this.reports, this.said] = await Promise.all([store.reports(id), store.said(id)]);
      const file = await store.sound(id);
      if (file !== null) {
        const { channels, sampleRateHz, remarks } = await decode(file.bytes.slice().buffer, name);
        this.sound = { channels, sampleRateHz, remarks, name, recordedHere: false };
      }
      this.#renewPlayer();
      await this.#loadOthers();
    } catch (error) {
      this.trouble = troubleOf(error);
    }
    if (this.sound === null) await this.heard();
    this.loaded = true;
  }

  /** What was said of it in another window is here too, and what it was measured as. */
  async follow({ playings }: Changed): Promise<void> {
    const { id } = this.playing;
    if (!playings.includes(id) || !this.loaded) return;
    const { store } = this.#devices;
    const now = await this.#lists.try(() => Promise.all([store.said(id), store.reports(id)]));
    if (now === undefined) return;
    this.said = now[0];
    this.playing = this.#lists.playings.find((one) => one.id === id) ?? this.playing;
    if (sameReport(this.report, now[1].chosen ?? now[1].own)) return;
    this.reports = now[1];
    this.#renewPlayer();
  }

  /** Its sound was played, or there is none. */
  async heard(): Promise<void> {
    if (this.playing.heardMs === null) await this.#put({ heardMs: this.#devices.now() });
  }

  /**
   * Adds a remark, or puts one in the place of `before`; where another window has changed that meanwhile, both are kept. False: it
   * could not be kept, and is not said.
   */
  remark(remark: Remark, before: Remark | null = null): Promise<boolean> {
    const apart: Remark = { ...remark, id: this.newId() };
    return this.#say((said) => {
      const known = said.remarks.find(({ id }) => id === remark.id);
      if (known === undefined) return { ...said, remarks: [...said.remarks, remark] };
      if (before !== null && known.text !== before.text)
        return { ...said, remarks: [...said.remarks, apart] };
      return { ...said, remarks: said.remarks.map((one) => (one === known ? remark : one)) };
    });
  }

  async removeRemark(id: string): Promise<void> {
    this.undo = this.said;
    await this.#say((said) => ({ ...said, remarks: said.remarks.filter((one) => one.id !== id) }));
  }

  /** Holds something against the tool's word; the same place again replaces it. */
  correct(correction: Correction): Promise<boolean> {
    return this.#say((said) => {
      const others = said.corrections.filter(({ place }) => !samePlace(place, correction.place));
      return { ...said, corrections: [...others, correction] };
    });
  }

  async removeCorrection(place: RemarkPlace): Promise<void> {
    this.undo = this.said;
    await this.#say((said) => ({
      ...said,
      corrections: said.corrections.filter((one) => !samePlace(one.place, place)),
    }));
  }

  async takeBack(): Promise<void> {
    const before = this.undo;
    this.undo = null;
    if (before === null) return;
    const { example } = before;
    await this.#say((said) => ({
      ...together(before, said),
      ...(example && !said.example && { example }),
    }));
  }

  /** Listens to what the teacher played as an example of this exercise → its sound as it travels; rejects where nothing can be told. */
  async heardExample(sound: AudioInput): Promise<SoundFile> {
    const { analyst, encode, locale, criteria, now } = this.#devices;
    const options = { locale: locale(), criteria: criteria() };
    const told = await analyst.analyse(sound, this.exercise?.choice ?? null, options);
    if (told.kind !== 'report') throw new EvenfallError({ trouble: 'not-reported', notice: told.reason });
    const small = await encode(sound);
    const example: Example = { report: told.report, sound: small, madeMs: now() };
    await this.#say((said) => ({ ...said, example }));
    return small;
  }

  async removeExample(): Promise<void> {
    this.undo = this.said;
    await this.#say((said) => ({ ...said, example: null }));
  }

  newId(): string {
    return this.#devices.store.newId();
  }

  /** Back to the tool's own reading. */
  async takeOwn(): Promise<void> {
    await this.#use(null, null);
  }

  /** Measures it as what the teacher says it was: another exercise, or which hand; the tool's own reading is kept beside. */
  async measureAs(choice: ExerciseChoice): Promise<void> {
    const recognised = this.playing.recognition.choice;
    const { own } = this.reports;
    this.trouble = null;
    if (recognised !== null && sameChoice(choice, recognised) && own !== null && isHandKnown(own))
      return this.takeOwn();
    if (this.sound === null) return;
    this.measuring = 0;
    const { id, studentId } = this.playing;
    const { analyst } = this.#devices;
    try {
      const alone = await handsOfDay(this.#devices, this.#lists, this.playing);
      const options = { ...(await this.#pianos.optionsFor(studentId, id)), alone };
      const told = await analyst.analyse(this.sound, choice, options, (share) => (this.measuring = share));
      if (told.kind === 'report') await this.#use(choice, told.report);
      else this.trouble = { trouble: 'not-reported', notice: told.reason };
    } catch (error) {
      this.trouble = troubleOf(error);
    }
    this.measuring = null;
  }

  close(): void {
    this.player?.close();
    this.player = null;
  }

  async #use(chosen: ExerciseChoice | null, report: Report | null): Promise<void> {
    this.reports = { ...this.reports, chosen: report };
    await this.#lists.try(() => this.#devices.store.putReports(this.playing.id, this.reports));
    await this.#put({ chosen, ...toldBy(this.report) });
    const { report: now } = this;
    if (now !== null) await this.#say((said) => moved(said, now));
    this.#renewPlayer();
    await this.#loadOthers();
    // The others are listened to meanwhile.
    void this.#pianos.corrected(this.playing, report);
  }

  async #loadOthers(): Promise<void> {
    const { summary, studentId, id, whenMs } = this.playing;
    if (summary === null) return;
    const same = this.#lists.playings.filter(
      (one) =>
        one.studentId === studentId &&
        one.id !== id &&
        one.summary !== null &&
        sameChoice(one.summary.exercise, summary.exercise) &&
        (one.whenMs ?? 0) <= (whenMs ?? Infinity),
    );
    const told = await Promise.all(
      same
        .toSorted((a, b) => (a.whenMs ?? 0) - (b.whenMs ?? 0))
        .map(async (one) => ({ one, reports: await this.#devices.store.reports(one.id) })),
    );
    this.others = told.flatMap(({ one, reports }) => {
      const report = reports.chosen ?? reports.own;
      return report === null ? [] : [{ report, whenMs: one.whenMs, name: one.name }];
    });
  }

  #renewPlayer(): void {
    this.close();
    if (this.sound === null) return;
    const { report, exercise } = this;
    const versions = report === null || exercise === null ? null : versionsOf(report, exercise);
    this.player = this.#devices.playerOf(this.sound, versions);
  }

  /** What is said is what is kept; what another window said meanwhile stays. */
  async #say(change: (said: Said) => Said): Promise<boolean> {
    const said = await this.#lists.try(() => this.#devices.store.changeSaid(this.playing.id, change));
    if (said === undefined) return false;
    this.said = said;
    await this.#put({ remarks: said.remarks.length + said.corrections.length });
    return true;
  }

  async #put(change: Partial<Playing>): Promise<void> {
    this.playing = { ...this.playing, ...change };
    await this.#lists.changePlayings([this.playing.id], () => change);
  }
}

/** Whether two reports say the same. */
function sameReport(a: Report | null, b: Report | null): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
