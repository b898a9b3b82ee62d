import { buildExercise, type AssignedExercise } from '../../engine/index.ts';
import { endingOf } from '../../io/encode/index.ts';
import type { Decode, Review, SentAttempt, SoundFile } from '../../io/review/index.ts';
import type { Shelf, Shelved } from '../../io/shelf/index.ts';
import type { Journal } from '../attempt/journal.svelte.ts';
import type { Sound } from '../attempt/sound.ts';
import { EvenfallError, troubleOf, type Trouble } from '../../io/troubles/index.ts';

/** What receiving needs of the device, passed in. */
export interface ReviewDevices {
  readonly shelf: Shelf;
  /** Whether an archive means to be a review: then it is told as one, and not as an archive of recordings. */
  readonly isReview: (file: Blob) => Promise<boolean>;
  /** A file → the review in it, wholly; rejects with a plain message where it is none. */
  readonly read: (file: Blob) => Promise<Review>;
  readonly decode: Decode;
}

/** What every zip begins with (PKWARE APPNOTE 6.3.10, 4.3.7). */
const ZIP_SIGN = 'PK';

/** What did not work, and why: of several files each. */
export interface ReviewsFailure {
  readonly what: 'file' | 'reviews';
  readonly why: readonly Trouble[];
}

/** Reviews that a teacher has sent, as the page sees them. Nothing here rejects: what does not work is said in `trouble`. */
export class Reviews {
  /** newest first, deleted ones too; null: not read yet */
  all: readonly Shelved[] | null = $state.raw(null);
  /** the one that is shown */
  opened: Review | null = $state.raw(null);
  /** name of the file that is being read; null: none */
  reading: string | null = $state(null);
  trouble: ReviewsFailure | null = $state.raw(null);
  readonly #devices: ReviewDevices;
  readonly #journal: Journal;
  #loading: Promise<void> | null = null;
  /** the review that was asked for last: another that is still being read is not shown */
  #asked: string | null = null;

  constructor(devices: ReviewDevices, journal: Journal) {
    this.#devices = devices;
    this.#journal = journal;
  }

  readonly shown: readonly Shelved[] = $derived(
    (this.all ?? []).filter(({ deletedMs }) => deletedMs === null),
  );
  readonly deleted: readonly Shelved[] = $derived(
    (this.all ?? []).filter(({ deletedMs }) => deletedMs !== null),
  );

  /** Reads what there is, once. */
  load(): Promise<void> {
    this.#loading ??= this.#look();
    return this.#loading;
  }

  /**
   * Whether a file means to be a review; `chosen`: it was chosen as one, and is taken for one unless it is an archive of something
   * else, or sound. What reads reviews is brought in only where it may be.
   */
  async isReview(file: Blob, chosen = false): Promise<boolean> {
    try {
      const isZip = (await file.slice(0, ZIP_SIGN.length).text()) === ZIP_SIGN;
      return isZip ? await this.#devices.isReview(file) : chosen && !/^(audio|video)\//.test(file.type);
    } catch {
      // It cannot be read: whoever opens it next says why.
      return false;
    }
  }

  /**
   * Opens files from a teacher, keeps them all and shows the first. Whether any was a review; of one that is none nothing is
   * changed, and `trouble` says why.
   */
  async receive(files: readonly File[]): Promise<boolean> {
    this.trouble = null;
    const read: Review[] = [];
    const refused: Trouble[] = [];
    for (const file of files) {
      this.reading = file.name;
      try {
        const review = await this.#devices.read(file);
        if (review.kind === 'attempts') throw new EvenfallError({ trouble: 'review-for-teacher' });
        read.push(review);
      } catch (error) {
        const of = troubleOf(error);
        refused.push(files.length === 1 ? of : { trouble: 'within', name: file.name, of });
      }
    }
    this.reading = null;
    if (refused.length > 0) this.trouble = { what: 'file', why: refused };
    const [first] = read;
    if (first === undefined) return false;
    // Kept before it is shown: whoever sees it may close the page.
    await this.#keep(read);
    this.#asked = first.id;
    this.opened = first;
    return true;
  }

  /** Shows one that was received before. */
  async open(id: string): Promise<void> {
    this.#asked = id;
    await this.#try(async ({ shelf }) => {
      const review = await shelf.review(id);
      if (this.#asked === id) this.opened = review;
      await shelf.markRead(id);
    });
    await this.#look();
  }

  leave(): void {
    this.#asked = null;
    this.opened = null;
  }

  /** Deletes a review, and with it what it asks for. */
  async remove(id: string): Promise<void> {
    if (this.opened?.id === id) this.opened = null;
    await this.#try(({ shelf }) => shelf.remove(id));
    await this.#look();
  }

  async restore(ids: readonly string[]): Promise<void> {
    for (const id of ids) await this.#try(({ shelf }) => shelf.restore(id));
    await this.#look();
  }

  dismissTrouble(): void {
    this.trouble = null;
  }

  /** The sound of an attempt that was reviewed: as it travelled, or the student's own where it travelled without. Null: none. */
  async soundOf({ id, name, sound }: SentAttempt): Promise<Sound | null> {
    if (sound === null) {
      await this.#journal.load();
      return (await this.#journal.open(id))?.sound ?? null;
    }
    return this.hear(sound, name);
  }

  /** Sound that travelled → sound; null: it cannot be read, and `trouble` says why. */
  async hear(file: SoundFile, name: string): Promise<Sound | null> {
    const audio = await this.#try(({ decode }) =>
      decode(file.bytes.slice().buffer, `sound.${endingOf(file)}`),
    );
    return audio === undefined ? null : { ...audio, name, recordedHere: true, remarks: [] };
  }

  /** All of them, the first one read. */
  async #keep(reviews: readonly Review[]): Promise<void> {
    await this.#try(async ({ shelf }) => {
      for (const review of reviews) await shelf.put(review);
      await shelf.markRead(reviews[0]!.id);
    });
    await this.#look();
  }

  async #look(): Promise<void> {
    this.all = (await this.#try(({ shelf }) => shelf.all())) ?? this.all ?? [];
    this.#journal.standards.assigned = assignedIn(this.shown);
  }

  /** Undefined where it failed; a failure is told. */
  async #try<T>(act: (devices: ReviewDevices) => Promise<T>): Promise<T | undefined> {
    try {
      return await act(this.#devices);
    } catch (error) {
      this.trouble = { what: 'reviews', why: [troubleOf(error)] };
      return undefined;
    }
  }
}

/** Reviews, newest first → all that they ask for, in that order. Attempts count from when the review was made. */
export function assignedIn(reviews: readonly Shelved[]): readonly AssignedExercise[] {
  return reviews.flatMap(({ madeMs, receivedMs, assignment }) =>
    assignment.map(({ exercise, targetBpm, inARow, evennessPercent, intention, note }) => ({
      // spelt our way, so that one exercise is one
      exercise: buildExercise(exercise).choice,
      targetBpm,
      inARow,
      evennessPercent,
      ...(intention !== undefined && { intention }),
      note,
      // The teacher's clock may be ahead.
      sinceMs: Math.min(madeMs, receivedMs),
    })),
  );
}
