import { recordedWhen } from '../../../io/teaching/index.ts';
import type { Changed, Given, GivenFile, Playing, Student } from '../../../io/teaching/index.ts';
import { EvenfallError, troubleOf, type Trouble } from '../../../io/troubles/index.ts';
import type { TeachingDevices } from './devices.ts';
import { compareHands } from './hands-apart.ts';
import { Hearing } from './hearing.svelte.ts';
import { MOST_RECORDINGS, unpacked } from './intake.ts';
import { TeachingLists } from './lists.svelte.ts';
import { Owners } from './owners.svelte.ts';
import { foundIn, nameIn, sentBy } from './playings.ts';
import { Pianos } from './pianos.svelte.ts';
import { studentCalled, studentOf } from './students.ts';
import { Templates } from './templates.svelte.ts';
import { Queue } from './queue.svelte.ts';

/** Recordings handed on at a time: enough that no worker waits. */
const LANES = 4;

/** A longer recording is not kept as it came: a page could not hold it, to let it be heard. */
const LARGEST_WHOLE_BYTES = 200_000_000;

/** What students handed in: taken in, sorted, opened. Nothing here rejects; `lists.trouble` says what does not work. */
export class Teaching {
  /** read from the device */
  loaded = $state(false);
  /** of what was given last, so many were beyond the limit */
  leftOut = $state(0);
  /** … and so many were no recordings */
  passedOver = $state(0);
  /** the attempt that is heard now */
  hearing: Hearing | null = $state.raw(null);
  readonly lists: TeachingLists;
  readonly owners: Owners;
  readonly pianos: Pianos;
  readonly templates: Templates;
  readonly queue: Queue<GivenFile>;
  readonly devices: TeachingDevices;
  /** what was given just now, by the file's name: held until it is sorted, in case the device could not store it */
  #held: Readonly<Record<string, Blob>> = {};
  #loading: Promise<void> | null = null;

  constructor(devices: TeachingDevices) {
    this.devices = devices;
    this.lists = new TeachingLists(devices.store, devices.now);
    this.owners = new Owners(this.lists, () => devices.store.newId(), devices.now);
    this.pianos = new Pianos(devices, this.lists, (id) => id === this.hearing?.playing.id);
    this.templates = new Templates(devices.store, this.lists);
    this.queue = new Queue(
      {
        waiting: () => this.lists.files.filter(({ state }) => state === 'waiting'),
        act: (file, onProgress) => this.#sort(file, onProgress),
        failed: (file, why) => this.#fail(file, ownPart(file, why)),
        cancel: () => devices.sorters.cancel(),
      },
      LANES,
    );
    devices.store.onChanged((changed) => void this.#follow(changed));
  }

  /** Reads what there is, once, and goes on sorting where it was left. */
  load(): Promise<void> {
    this.#loading ??= this.lists.load().then(() => {
      this.loaded = true;
      void this.queue.start();
      void this.pianos.goOn();
      void this.templates.load();
    });
    return this.#loading;
  }

  /** Takes recordings, zips of recordings and attempts that a student sent; sorts them. */
  async add(given: readonly Given[]): Promise<void> {
    const goesOn = this.queue.notStoppedSince();
    await this.load();
    if (this.lists.room?.persisted === false) void this.lists.try(() => this.devices.store.persist());
    this.lists.dismissTrouble();
    [this.leftOut, this.passedOver] = [0, 0];
    const { recordings, reviews, refused, passedOver, leftOut } = await unpacked(this.devices, given);
    for (const review of reviews) {
      await this.#takeIn(review).catch((error: unknown) => this.#refuse(review, troubleOf(error)));
    }
    for (const one of refused) await this.#refuse(one.given, one.reason);
    this.passedOver = passedOver;
    this.leftOut = leftOut + Math.max(0, recordings.length - MOST_RECORDINGS);
    for (const { path, blob, writtenMs } of recordings.slice(0, MOST_RECORDINGS)) {
      const print = await this.devices.printOf(blob);
      const same =
        print === null
          ? undefined
          : this.lists.files.find((one) => one.print === print && one.state !== 'failed');
      if (same !== undefined) {
        await this.#refuse({ path, blob, writtenMs }, { trouble: 'same-sound', name: same.path });
        continue;
      }
      const file = { ...(await this.#newFile({ path, blob, writtenMs })), ...(print !== null && { print }) };
      this.#held = { ...this.#held, [file.id]: blob };
      await this.lists.try(() => this.devices.store.addFile(file, blob));
      this.lists.show([file], []);
      if (goesOn()) void this.queue.start();
    }
    await this.lists.look();
  }

  async tryAgain(file: GivenFile): Promise<void> {
    await this.lists.changeFiles([file.id], () => ({ state: 'waiting', reason: '' }));
    await this.queue.start();
  }

  async restore(): Promise<void> {
    await this.lists.restore();
    await this.queue.start();
  }

  /** Opens an attempt to be heard. */
  async open(playing: Playing): Promise<void> {
    this.leave();
    const hearing = new Hearing(this.devices, this.lists, this.pianos, playing);
    this.hearing = hearing;
    await hearing.load();
  }

  /** Back to the list. */
  leave(): void {
    this.hearing?.close();
    this.hearing = null;
  }

  /** The attempts of a student, oldest first; those whose time is not known as they came. */
  attemptsOf(student: Student): readonly Playing[] {
    // Several are listened to at once, and the shorter ones are through first.
    const came = Object.fromEntries(this.lists.files.map(({ id }, at) => [id, at]));
    const cameAt = ({ fileId }: Playing): number => came[fileId] ?? -1;
    return this.lists.playings
      .filter(({ studentId }) => studentId === student.id)
      .toSorted(
        (a, b) => (a.whenMs ?? 0) - (b.whenMs ?? 0) || cameAt(a) - cameAt(b) || a.startSec - b.startSec,
      );
  }

  async #follow(changed: Changed): Promise<void> {
    await Promise.all([
      this.lists.follow(changed),
      this.hearing?.follow(changed),
      this.templates.follow(changed),
    ]);
  }

  async #refuse(given: Given, reason: Trouble): Promise<void> {
    const file = await this.#newFile(given);
    await this.lists.addFiles([{ ...file, state: 'refused', reason }]);
  }

  async #takeIn({ path, blob }: Given): Promise<void> {
    const review = await this.devices.readReview(blob);
    if (review.kind !== 'attempts') {
      throw new EvenfallError({ trouble: 'review-for-student' });
    }
    const student = await this.owners.studentFor(
      review.student.trim() === ''
        ? studentOf(path, this.lists.students)
        : studentCalled(review.student, this.lists.students),
    );
    const isKnown = (id: string): boolean => this.lists.playings.some((one) => one.id === id);
    const sent = review.attempts
      .filter(({ id }) => !isKnown(id))
      .map((one) => sentBy(student.id, one, this.devices.now()));
    await this.devices.store.addPlayings(sent);
    this.lists.show(
      [],
      sent.map(({ playing }) => playing),
    );
    await this.lists.changeStudent(student.id, () => ({ message: review.words }));
  }

  async #sort(file: GivenFile, onProgress: (share: number) => void): Promise<void> {
    const { store, sorters } = this.devices;
    const blob = this.#held[file.id] ?? (await store.blob(file.id));
    if (blob === null) throw new EvenfallError({ trouble: 'file-gone' });
    const options = await this.pianos.optionsFor(file.studentId);
    const sorted = await sorters.sort(blob, file.path, options, onProgress);
    const found = sorted.attempts.map((attempt) => foundIn(file, attempt, store.newId(), this.devices.now()));
    // Moved to somebody else, or deleted, meanwhile?
    const now = this.lists.files.find(({ id }) => id === file.id);
    if (now === undefined) return;
    const owned = found.map((one) => ({ ...one, playing: { ...one.playing, studentId: now.studentId } }));
    const done: GivenFile = {
      ...now,
      state: 'sorted',
      reason: '',
      remarks: sorted.remarks,
      whole: file.bytes <= LARGEST_WHOLE_BYTES,
      ...(found.length === 0 && { untold: sorted.reason }),
    };
    const isMine = await store.finish(done, owned);
    this.#held = Object.fromEntries(Object.entries(this.#held).filter(([id]) => id !== file.id));
    // Another window may have listened to it too, and was first.
    if (!isMine) return this.lists.follow({ students: [], files: [file.id], playings: [] });
    this.lists.show(
      [done],
      owned.map(({ playing }) => playing),
    );
    await compareHands(this.devices, this.lists, done, (id) => id === this.hearing?.playing.id);
  }

  /** Says so where it is listed, even where there is no room to keep that. */
  async #fail({ id }: GivenFile, reason: Trouble): Promise<void> {
    const failing = (now: GivenFile): Partial<GivenFile> =>
      now.state === 'sorted' ? {} : { state: 'failed', reason };
    if (await this.lists.changeFiles([id], failing)) return;
    const here = this.lists.files.filter((one) => one.id === id);
    this.lists.show(
      here.map((one) => ({ ...one, ...failing(one) })),
      [],
    );
  }

  async #newFile({ path, blob, writtenMs }: Given): Promise<GivenFile> {
    const student = await this.owners.studentFor(studentOf(path, this.lists.students));
    return {
      id: this.devices.store.newId(),
      path,
      studentId: student.id,
      addedMs: this.devices.now(),
      writtenMs: recordedWhen(nameIn(path)) ?? writtenMs,
      bytes: blob.size,
      state: 'waiting',
      reason: '',
      remarks: [],
      deletedMs: null,
    };
  }
}

/** What is said of a file without its name, which stands above it. */
function ownPart({ path }: GivenFile, why: Trouble): Trouble {
  return why.trouble === 'within' && why.name === path ? why.of : why;
}
