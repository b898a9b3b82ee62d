import type { AudioInput } from '../../engine/index.ts';
import type { Review, SentAttempt, SoundFile } from '../../io/review/index.ts';
import { recall, remember, type Settings } from '../../io/settings/index.ts';
import type { Share } from '../../io/share/index.ts';
import type { Journal } from '../attempt/journal.svelte.ts';
import { troubleOf, type Trouble } from '../../io/troubles/index.ts';
import { fileNameOf } from '../kit/save.ts';

/** What sending needs of the device, passed in. */
export interface ParcelDevices {
  readonly encode: (sound: AudioInput) => Promise<SoundFile>;
  readonly write: (review: Review) => Promise<Blob>;
  readonly share: Share;
  readonly settings: Settings;
  /** a name that nothing else has */
  readonly newId: () => string;
}

const NAME = 'student-name';
/** what is being put together is remembered under this name, until it is left */
const BEGUN = 'parcel';

/** Attempts out of the journal on their way into one file for a teacher. Nothing here rejects. */
export class Parcel {
  /** attempts that go in, by their names in the journal; null: nothing is being sent */
  chosen: readonly string[] | null = $state.raw(null);
  withSound: boolean = $state(true);
  words: string = $state('');
  /** 0..1 while the file is made */
  progress: number | null = $state(null);
  /** the file, until anything in it is changed */
  file: File | null = $state.raw(null);
  /** what did not work */
  trouble: Trouble | null = $state.raw(null);
  #student: string = $state('');
  readonly #devices: ParcelDevices;
  readonly #journal: Journal;
  /** counts what was begun, so that a file whose contents were changed meanwhile is dropped */
  #turn = 0;

  constructor(devices: ParcelDevices, journal: Journal) {
    this.#devices = devices;
    this.#journal = journal;
    const kept = recall(devices.settings, NAME);
    this.#student = typeof kept === 'string' ? kept : '';
  }

  /** the student's name, as she writes it; remembered on this device */
  get student(): string {
    return this.#student;
  }

  set student(name: string) {
    this.#student = name;
    remember(this.#devices.settings, NAME, name);
  }

  /** whether the system can pass the file on by itself */
  get canShare(): boolean {
    return this.file !== null && this.#devices.share.can(this.file);
  }

  begin(ids: readonly string[]): void {
    this.chosen = ids;
    this.changed();
  }

  /** Goes on with what was being put together when the page was closed; false: nothing was. */
  resume(): boolean {
    const kept = recall(this.#devices.settings, BEGUN);
    if (typeof kept !== 'object' || kept === null || !('ids' in kept) || !Array.isArray(kept.ids))
      return false;
    if ('words' in kept && typeof kept.words === 'string') this.words = kept.words;
    if ('withSound' in kept) this.withSound = kept.withSound !== false;
    this.begin(kept.ids.filter((id) => typeof id === 'string'));
    return true;
  }

  leave(): void {
    if (this.chosen === null) return;
    this.chosen = null;
    this.words = '';
    this.changed();
  }

  /** Puts an attempt in or takes it out. */
  toggle(id: string): void {
    const chosen = this.chosen ?? [];
    this.chosen = chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id];
    this.changed();
  }

  /** Something in it is otherwise: the file that was made does not hold any more. */
  changed(): void {
    this.#turn += 1;
    this.file = null;
    this.progress = null;
    this.trouble = null;
    const { chosen: ids, words, withSound } = this;
    remember(this.#devices.settings, BEGUN, ids === null ? null : { ids, words, withSound });
  }

  /** Makes the file. */
  async make(): Promise<void> {
    this.changed();
    const turn = this.#turn;
    this.progress = 0;
    try {
      // In order of time, whatever the order in which they were chosen: names begin with it.
      const ids = [...(this.chosen ?? [])].sort();
      const attempts: SentAttempt[] = [];
      for (const [index, id] of ids.entries()) {
        const sent = await this.#pack(id);
        if (turn !== this.#turn) return;
        if (sent !== null) attempts.push(sent);
        this.progress = (index + 1) / ids.length;
      }
      const file = await this.#write(attempts);
      if (turn === this.#turn) this.file = file;
    } catch (error) {
      if (turn === this.#turn) this.trouble = { trouble: 'file-not-made', because: troubleOf(error) };
    } finally {
      if (turn === this.#turn) this.progress = null;
    }
  }

  /** Hands the file to the system; false: the sheet was left again, or there is none. */
  async share(): Promise<boolean> {
    if (this.file === null) return false;
    try {
      return await this.#devices.share.share(this.file);
    } catch (error) {
      this.trouble = { trouble: 'not-passed-on', because: troubleOf(error) };
      return false;
    }
  }

  async #pack(id: string): Promise<SentAttempt | null> {
    const kept = await this.#journal.open(id);
    if (kept === null || kept.report === null) return null;
    const { entry, report, sound } = kept;
    return {
      id,
      whenMs: entry.whenMs,
      name: entry.name,
      report,
      recognisedAs: null,
      sound: this.withSound && sound !== null ? await this.#devices.encode(sound) : null,
      remarks: [],
      corrections: [],
    };
  }

  async #write(attempts: readonly SentAttempt[]): Promise<File> {
    const madeMs = Math.round(this.#journal.now());
    const student = this.student.trim();
    const review: Review = {
      kind: 'attempts',
      id: this.#devices.newId(),
      madeMs,
      student,
      teacher: '',
      words: this.words.trim(),
      attempts,
      assignment: [],
    };
    const zip = await this.#devices.write(review);
    return new File([zip], fileNameOf(['attempts', student.toLowerCase()], madeMs, 'zip'), {
      type: 'application/zip',
    });
  }
}
