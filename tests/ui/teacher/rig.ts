import { DEFAULT_CRITERIA, USUAL_GOALS } from '../../../src/engine/index.ts';
import type { Assessment, Recognition, Report } from '../../../src/engine/index.ts';
import type { SortedAttempt, SortedFile, SortOptions } from '../../../src/io/sorting/index.ts';
import type {
  Changed,
  Desktop,
  FieldChange,
  GivenFile,
  NewPlaying,
  Playing,
  Reports,
  Said,
  Student,
  TeachingStore,
  Template,
} from '../../../src/io/teaching/index.ts';
import type { SoundFile } from '../../../src/io/review/index.ts';
import { Fingerings } from '../../../src/ui/attempt/fingerings.svelte.ts';
import { Player } from '../../../src/ui/attempt/player.svelte.ts';
import type { TeachingDevices } from '../../../src/ui/teacher/state/devices.ts';
import { choiceOf } from '../../../src/ui/teacher/state/playings.ts';
import { invent, INVENTED } from '../support/invent.ts';

export const { report: REPORT, exercise: EXERCISE } = invent(INVENTED.lateThumb);

/** A store in the memory, that can be asked to be full. */
export class MemoryStore implements TeachingStore {
  readonly students = new Map<string, Student>();
  readonly files = new Map<string, GivenFile>();
  readonly waiting = new Map<string, Blob>();
  readonly playings = new Map<string, Playing>();
  readonly told = new Map<string, Reports>();
  readonly sounds = new Map<string, SoundFile>();
  readonly words = new Map<string, Said>();
  readonly own = new Map<string, Template>();
  full = false;
  #ids = 0;

  newId = (): string => `0mabcdefg-${String((this.#ids += 1)).padStart(8, '0')}`;
  load = async (): Promise<Desktop> => {
    const left = <T extends { readonly id: string; readonly deletedMs: number | null }>(
      all: Map<string, T>,
    ) => {
      for (const { id, deletedMs } of [...all.values()]) if (deletedMs !== null) all.delete(id);
      return [...all.values()];
    };
    return { students: left(this.students), files: left(this.files), playings: left(this.playings) };
  };
  addFile = async (file: GivenFile, blob: Blob): Promise<void> => {
    this.#room();
    this.files.set(file.id, file);
    this.waiting.set(file.id, blob);
  };
  blob = async (id: string): Promise<Blob | null> => this.waiting.get(id) ?? null;
  finish = async (file: GivenFile, found: readonly NewPlaying[]): Promise<boolean> => {
    this.#room();
    if (this.files.get(file.id)?.state === 'sorted') return false;
    this.files.set(file.id, file);
    if (file.whole !== true) this.waiting.delete(file.id);
    await this.addPlayings(found);
    return true;
  };
  addPlayings = async (found: readonly NewPlaying[]): Promise<void> => {
    for (const { playing, reports, sound } of found) {
      this.playings.set(playing.id, playing);
      this.told.set(playing.id, reports);
      if (sound !== null) this.sounds.set(playing.id, sound);
    }
  };
  letGo = async (ids: readonly string[]): Promise<void> => {
    for (const id of ids) this.waiting.delete(id);
    await this.changeFiles(ids.map((id) => ({ id, fields: () => ({ whole: false }) })));
  };
  templates = async (): Promise<readonly Template[]> => [...this.own.values()];
  addTemplates = async (all: readonly Template[]): Promise<void> => {
    this.#room();
    for (const one of all) this.own.set(one.id, one);
  };
  changeTemplates = (changes: readonly FieldChange<Template>[]) => this.#change(this.own, changes);
  addFiles = async (files: readonly GivenFile[]): Promise<void> =>
    files.forEach((one) => this.files.set(one.id, one));
  addStudents = async (all: readonly Student[]): Promise<void> =>
    all.forEach((one) => this.students.set(one.id, one));
  changeStudents = (changes: readonly FieldChange<Student>[]) => this.#change(this.students, changes);
  changeFiles = (changes: readonly FieldChange<GivenFile>[]) => this.#change(this.files, changes);
  changePlayings = (changes: readonly FieldChange<Playing>[]) => this.#change(this.playings, changes);
  records = async (names: Changed): Promise<Desktop> => ({
    students: names.students.flatMap((id) => this.students.get(id) ?? []),
    files: names.files.flatMap((id) => this.files.get(id) ?? []),
    playings: names.playings.flatMap((id) => this.playings.get(id) ?? []),
  });
  onChanged = (call: (changed: Changed) => void): void => void (this.changed = call);
  /** as another window would tell it */
  changed: (changed: Changed) => void = () => undefined;
  reports = async (id: string): Promise<Reports> => this.told.get(id) ?? { own: null, chosen: null };
  putReports = async (id: string, reports: Reports): Promise<void> => void this.told.set(id, reports);
  sound = async (id: string): Promise<SoundFile | null> => this.sounds.get(id) ?? null;
  said = async (id: string): Promise<Said> => this.words.get(id) ?? { remarks: [], corrections: [] };
  changeSaid = async (id: string, change: (said: Said) => Said): Promise<Said> => {
    this.#room();
    const said = change(await this.said(id));
    this.words.set(id, said);
    return said;
  };
  end: TeachingStore['end'] = async ({ students = [], files = [], playings = [], templates = [] }) => {
    for (const id of templates) this.own.delete(id);
    for (const id of students) this.students.delete(id);
    for (const id of files) [this.files, this.waiting].forEach((all) => all.delete(id));
    for (const id of playings)
      [this.playings, this.told, this.sounds, this.words].forEach((all) => all.delete(id));
  };
  room = async () => ({ usedBytes: 1, quotaBytes: 2, persisted: false, clearsUnused: false });
  persist = async () => true;
  backup = (): Promise<Blob> => Promise.reject(new Error('Only a browser packs.'));
  bringIn: TeachingStore['bringIn'] = () => Promise.reject(new Error('Only a browser unpacks.'));
  close = async (): Promise<void> => undefined;

  #change = async <T extends { readonly id: string; readonly version?: number }>(
    all: Map<string, T>,
    changes: readonly FieldChange<T>[],
  ): Promise<readonly T[]> => {
    this.#room();
    return changes.flatMap(({ id, fields }) => {
      const now = all.get(id);
      if (now === undefined) return [];
      const next = { ...now, ...fields(now), version: (now.version ?? 0) + 1 };
      all.set(id, next);
      return [next];
    });
  };

  #room(): void {
    if (this.full) throw new Error('There is no room left.');
  }
}

const recognised = (report: Report | null, alternatives: Recognition['alternatives'] = []): Recognition => ({
  choice: report === null ? null : choiceOf(report),
  confidence: report === null ? 0.3 : 0.99,
  octaveShift: 0,
  alternatives,
});

export const SOUND = { channels: [new Float32Array(480)], sampleRateHz: 48_000 };

/** An attempt as it is found; null: it could not be told. */
export function found(startSec: number, report: Report | null = REPORT): SortedAttempt {
  const alternatives = report === null ? [{ choice: EXERCISE.choice, fit: 0.6 }] : [];
  const recognition = recognised(report, alternatives);
  return {
    startSec,
    endSec: startSec + 6,
    recognition,
    report,
    reason: report === null ? 'Not told.' : '',
    sound: { bytes: new Uint8Array(960), mime: 'audio/wav' },
  };
}

export const FILE = (bytes = 'sound'): Blob => new Blob([bytes]);

/** Files wait here until the test lets them go: with what was found in them, or with an error. */
export class SlowSorters {
  readonly asked: { readonly name: string; readonly done: (file: SortedFile | Error) => void }[] = [];
  /** with what each was asked for, by its name */
  readonly options = new Map<string, Partial<SortOptions>>();
  cancelled = 0;

  sort = (
    _file: Blob,
    name: string,
    options: Partial<SortOptions>,
    onProgress: (share: number) => void = () => undefined,
  ) =>
    new Promise<SortedFile>((resolve, reject) => {
      this.options.set(name, options);
      onProgress(0.5);
      this.asked.push({
        name,
        done: (file) => (file instanceof Error ? reject(file) : resolve(file)),
      });
    });
  cancel = (): void => {
    this.cancelled += 1;
    for (const { done } of this.asked.splice(0)) done(new Error('Called off.'));
  };
  close = (): void => undefined;

  /** Lets the file of that name go. */
  release(name: string, outcome: SortedFile | Error): void {
    const at = this.asked.findIndex((one) => one.name === name);
    this.asked.splice(at, 1)[0]!.done(outcome);
  }
}

export const SORTED = (...attempts: readonly SortedAttempt[]): SortedFile => ({
  durationSec: 20,
  remarks: [],
  attempts,
  reason: '',
});

const silent = {
  play: () => undefined,
  stop: () => undefined,
  positionSec: () => null,
  onEnd: () => undefined,
  close: () => undefined,
};

/** What was typed and is not kept yet. */
export const draftsIn = (all: Map<string, string>): TeachingDevices['drafts'] => ({
  read: (name) => all.get(name) ?? null,
  write: (name, text) => void all.set(name, text),
  forget: (name) => void all.delete(name),
});

/** Everything that the state needs, none of it a browser's. */
export function devicesWith(
  store: MemoryStore,
  sorters: SlowSorters,
  more: Partial<TeachingDevices> = {},
): TeachingDevices {
  let nowMs = Date.UTC(2026, 10, 25, 17);
  return {
    store,
    sorters,
    analyst: {
      analyse: () => Promise.resolve({ kind: 'report', report: REPORT } as Assessment),
      cancel: () => undefined,
      close: () => undefined,
    },
    decode: () => Promise.resolve({ ...SOUND, remarks: [] }),
    encode: () => Promise.resolve({ bytes: new Uint8Array(96), mime: 'audio/webm' }),
    encodeVoice: () => Promise.resolve({ bytes: new Uint8Array(48), mime: 'audio/webm' }),
    isArchive: () => Promise.resolve(false),
    openArchive: () => Promise.resolve({ members: [], refused: [] }),
    isReview: () => Promise.resolve(false),
    readReview: () => Promise.reject(new Error('No review.')),
    writeReview: () => Promise.resolve(new Blob()),
    openMicrophone: () => Promise.reject(new Error('No microphone.')),
    playerOf: () => new Player(silent, () => undefined),
    locale: () => ({ language: 'en', naming: 'letters' }),
    criteria: () => DEFAULT_CRITERIA,
    goals: () => USUAL_GOALS,
    own: () => [],
    receive: () => Promise.resolve(),
    writeFolder: () => Promise.resolve(new Blob()),
    printOf: () => Promise.resolve(null),
    drafts: draftsIn(new Map()),
    fingerings: new Fingerings(),
    now: () => (nowMs += 1000),
    ...more,
  };
}

/** How many turns of the event loop the longest chain of what is done here takes, many times over. */
const TURNS = 100;

/** Until all that was begun has been done: nothing here waits for anything from outside, so turns are counted, not time. */
export async function settled(): Promise<void> {
  for (let turn = 0; turn < TURNS; turn++) await new Promise((resolve) => setImmediate(resolve));
}
