import { isPractice } from '../../engine/index.ts';
import type { Assessment, ExerciseChoice, Practised, Report, ToldAttempt } from '../../engine/index.ts';
import { completed, nameFor, newEntry, withEntry } from '../../io/history/index.ts';
import type { Entry, History, ImportOutcome, StorageUse } from '../../io/history/index.ts';
import { changedEntries, dayOf, daysBefore, earlierIds, othersIds, sittingOf } from './entries.ts';
import type { Aim, Past } from './aim.ts';
import type { Told } from './phases.ts';
import type { Sound } from './sound.ts';
import { Standards } from './standards.svelte.ts';
import { troubleOf, type Trouble } from '../../io/troubles/index.ts';

export type { Aim } from './aim.ts';

/** An attempt taken out of the journal. */
export interface Kept {
  readonly entry: Entry;
  /** null: it was never analysed, or nothing to report was heard */
  readonly report: Report | null;
  /** null: its sound is not kept */
  readonly sound: Sound | null;
}

/** under this name it is remembered */
const WRITTEN_OUT = 'written-out';
/** With so many attempts the browser is asked not to clear them, once: it would ask, and before there is anything nobody knew why. */
const WORTH_KEEPING = 3;
/** How long a plan for today is at first, minutes. */
const FIRST_MINUTES = 20;

/**
 * The journal as the page sees it. Nothing here rejects: where the device keeps nothing, attempts are remembered until the page
 * is closed, and `trouble` says so.
 */
export class Journal {
  /** oldest first, deleted ones too; null: not read yet */
  entries: readonly Entry[] | null = $state.raw(null);
  /** what is kept on this device could not be read: `entries` are those of this page alone */
  unread = $state(false);
  /** what did not work last */
  trouble: Trouble | null = $state.raw(null);
  readonly standards = new Standards((name, value) => this.#try((history) => history.remember(name, value)));
  /** length of the plan for today */
  minutes: number = $state(FIRST_MINUTES);
  storage: StorageUse | null = $state.raw(null);
  /** when the journal was written out last, ms since 1970; 0: never */
  writtenOutMs = $state(0);
  /** 0..1 while a file is written or read */
  progress: number | null = $state(null);
  /** passages of one's own, which go along in the journal's file and come in with one; null: there are none */
  passages: {
    readonly list: readonly ExerciseChoice[];
    receive(values: readonly unknown[]): Promise<void>;
  } | null = null;
  readonly now: () => number;
  readonly #history: History | null;
  /** of attempts that could not be stored */
  #unstored: Readonly<Record<string, Report>> = {};
  /** under what name the sounds that the page has lie here */
  readonly #names = new WeakMap<Sound, string>();
  #loading: Promise<void> | null = null;

  /** `history` null: nothing is kept beyond this page. `now`: ms since 1970. */
  constructor(history: History | null, now: () => number = () => Date.now()) {
    this.#history = history;
    this.now = now;
  }

  /** Attempts that are not deleted, oldest first. */
  readonly shown: readonly Entry[] = $derived(
    (this.entries ?? []).filter((entry) => entry.deletedMs === null),
  );
  readonly deleted: readonly Entry[] = $derived(
    (this.entries ?? []).filter((entry) => entry.deletedMs !== null),
  );
  /** what readiness is judged by */
  readonly practised: readonly Practised[] = $derived(
    this.shown.flatMap(({ whenMs, summary }) =>
      summary === null ? [] : [{ whenMs, day: dayOf(whenMs), summary }],
    ),
  );

  /** Reads what there is, once. */
  load(): Promise<void> {
    this.#loading ??= this.#load();
    return this.#loading;
  }

  /** Under what name a sound lies in the journal; null: it does not. */
  nameOf(sound: Sound): string | null {
    return this.#names.get(sound) ?? null;
  }

  /** Whether it lies here, deleted perhaps: a page may be closed before what it laid aside of a kept attempt is forgotten. */
  async holds({ id }: Sound): Promise<boolean> {
    await this.load();
    return this.entries?.some((entry) => entry.id === id) ?? false;
  }

  /** Stores an attempt before it is analysed → its name in the journal. What lies there already stays as it is. */
  async keep(sound: Sound, aim: Aim): Promise<string> {
    const known = this.nameOf(sound);
    if (known !== null) return known;
    await this.load();
    const { id, name, remarks, device = null, channels, sampleRateHz } = sound;
    const named = id === undefined ? {} : { id };
    const attempt = { ...named, sound: { channels, sampleRateHz }, name, remarks, device, ...aim };
    const stored = await this.#try((history) => history.keep(attempt));
    if (stored !== undefined) this.trouble = null;
    const before = this.entries ?? [];
    // The end tells one that the device could not store apart.
    const ofThisPage = nameFor(this.now(), `page${String(before.length).padStart(6, '0')}`);
    const entry = stored ?? newEntry(attempt, id ?? ofThisPage, 0);
    this.#names.set(sound, entry.id);
    this.entries = withEntry(before, entry);
    return entry.id;
  }

  /** Stores what came of an attempt. */
  async complete(id: string, told: Told | Assessment): Promise<void> {
    const outcome = told.kind === 'report' ? { report: told.report } : { reason: told.reason };
    const entry = this.entries?.find((one) => one.id === id);
    if (entry === undefined) return;
    if ('report' in outcome) this.#unstored = { ...this.#unstored, [id]: outcome.report };
    this.entries = withEntry(this.entries ?? [], completed(entry, outcome));
    const stored = await this.#try((history) => history.complete(id, outcome));
    if (!stored) return;
    if (this.shown.length === WORTH_KEEPING) await this.persist();
    this.#unstored = Object.fromEntries(Object.entries(this.#unstored).filter(([name]) => name !== id));
  }

  /** Reports that a new one is compared with: of the same exercise by each hand and both, before it, oldest first. */
  async earlier(choice: ExerciseChoice | null, before: string | null = null): Promise<readonly Report[]> {
    await this.load();
    return this.#reports(earlierIds(this.shown, choice, before));
  }

  /** What a report of the attempt that is to come looks back on: reports, and when they were played. */
  async past(choice: ExerciseChoice | null, before: string): Promise<Past> {
    const earlier = await this.earlier(choice, before);
    const ids = earlierIds(this.shown, choice, before);
    const whenMs = this.entries?.find(({ id }) => id === before)?.whenMs ?? this.now();
    return {
      earlier,
      sitting: sittingOf(this.shown, ids, whenMs),
      daysBefore: daysBefore(this.shown, ids, whenMs),
    };
  }

  /** The last attempts at whole exercises of which there is a report, oldest first. */
  async toldLast(count: number): Promise<readonly ToldAttempt[]> {
    await this.load();
    const whole = this.shown.filter(({ summary }) => summary !== null && !isPractice(summary));
    return this.#told(whole.slice(-count).map(({ id }) => id));
  }

  /** The last attempts of the same exercise and hands, oldest first, to compare one with. */
  others(id: string): Promise<readonly ToldAttempt[]> {
    return this.#told(othersIds(this.shown, id));
  }

  /** An attempt with its report and its sound. */
  async open(id: string): Promise<Kept | null> {
    const entry = this.entries?.find((one) => one.id === id);
    if (entry === undefined) return null;
    const [report] = await this.#reports([id]);
    const sound = entry.soundBytes === 0 ? null : await this.#try((history) => history.sound(id));
    const { name, remarks } = entry;
    const heard = sound ? { ...sound, name, remarks, recordedHere: true } : null;
    if (heard !== null) this.#names.set(heard, id);
    return { entry, report: report ?? null, sound: heard };
  }

  async remove(ids: readonly string[]): Promise<void> {
    // Shown only once it is stored: a page reloaded in between would bring back what was seen to go.
    await this.#try((history) => history.remove(ids));
    this.entries = changedEntries(this.entries ?? [], ids, { deletedMs: this.now() });
  }

  async restore(ids: readonly string[]): Promise<void> {
    await this.#try((history) => history.restore(ids));
    this.entries = changedEntries(this.entries ?? [], ids, { deletedMs: null });
  }

  /** Lets go of the sound of attempts; reports stay. */
  async forgetSound(ids: readonly string[]): Promise<void> {
    await this.#try((history) => history.forgetSound(ids));
    this.entries = changedEntries(this.entries ?? [], ids, { soundBytes: 0 });
    await this.look();
  }

  async setMinutes(minutes: number): Promise<void> {
    this.minutes = minutes;
    await this.#try((history) => history.remember('minutes', minutes));
  }

  /** Looks how much room there is. */
  async look(): Promise<void> {
    this.storage = (await this.#try((history) => history.storage())) ?? null;
  }

  dismissTrouble(): void {
    this.trouble = null;
  }

  /** Asks the browser not to clear the journal; false: it would not promise. */
  async persist(): Promise<boolean> {
    const agreed = (await this.#try((history) => history.persist())) ?? false;
    await this.look();
    return agreed;
  }

  /** The whole journal as one file; null where it could not be written. */
  async exportAll(): Promise<Blob | null> {
    this.progress = 0;
    const file = await this.#try((history) =>
      history.exportAll((share) => (this.progress = share), this.passages?.list ?? []),
    );
    this.progress = null;
    if (file === undefined) return null;
    this.writtenOutMs = this.now();
    await this.#try((history) => history.remember(WRITTEN_OUT, this.writtenOutMs));
    return file;
  }

  /** Merges a file into the journal; null where it could not be read. */
  async importFrom(file: Blob): Promise<ImportOutcome | null> {
    this.progress = 0;
    const outcome = await this.#try((history) =>
      history.importFrom(file, (share) => (this.progress = share)),
    );
    this.progress = null;
    await this.passages?.receive(outcome?.passages ?? []);
    await this.#load();
    await this.look();
    return outcome ?? null;
  }

  async #load(): Promise<void> {
    const [entries, remembered = {}] = await Promise.all([
      this.#try((history) => history.entries()),
      this.#try((history) => history.remembered()),
    ]);
    this.entries = entries ?? this.entries ?? [];
    this.unread = entries === undefined && this.#history !== null;
    this.standards.restore(remembered);
    this.writtenOutMs = Number(remembered[WRITTEN_OUT] ?? 0) || 0;
    const minutes = Number(remembered['minutes']);
    if (minutes > 0 && minutes <= 480) this.minutes = minutes;
  }

  async #told(ids: readonly string[]): Promise<readonly ToldAttempt[]> {
    const told = await Promise.all(ids.map(async (id) => ({ id, reports: await this.#reports([id]) })));
    return told.flatMap(({ id, reports: [report] }) => {
      const entry = this.shown.find((one) => one.id === id);
      return report === undefined || entry === undefined ? [] : [{ id, whenMs: entry.whenMs, report }];
    });
  }

  async #reports(ids: readonly string[]): Promise<readonly Report[]> {
    const unstored = ids.flatMap((id) => this.#unstored[id] ?? []);
    const stored = ids.filter((id) => this.#unstored[id] === undefined);
    const read = stored.length === 0 ? [] : await this.#try((history) => history.reports(stored));
    return [...(read ?? []), ...unstored];
  }

  /** Undefined where nothing is kept or it failed; a failure is told. */
  async #try<T>(act: (history: History) => Promise<T>): Promise<T | undefined> {
    if (this.#history === null) return undefined;
    try {
      return await act(this.#history);
    } catch (error) {
      this.trouble = troubleOf(error);
      return undefined;
    }
  }
}
