import type { TeachingDevices } from './ui/teacher/state/devices.ts';
import type { Teaching } from './ui/teacher/state/teaching.svelte.ts';

type Shared = Pick<
  TeachingDevices,
  | 'analyst'
  | 'criteria'
  | 'fingerings'
  | 'goals'
  | 'own'
  | 'receive'
  | 'decode'
  | 'openMicrophone'
  | 'playerOf'
  | 'locale'
>;

/** What the page shares with its other views → how the state of the page for teachers is had: made once, when first asked for. */
export function createTeacher(shared: Shared): () => Promise<Teaching> {
  let opened: Promise<Teaching> | null = null;
  return () => (opened ??= open(shared));
}

async function open(shared: Shared): Promise<Teaching> {
  const [{ Teaching }, archive, { encodeSound }, review, { createDrafts }, sorting, teaching] =
    await Promise.all([
      import('./ui/teacher/state/teaching.svelte.ts'),
      import('./io/archive/index.ts'),
      import('./io/encode/index.ts'),
      import('./io/review/index.ts'),
      import('./io/settings/index.ts'),
      import('./io/sorting/index.ts'),
      import('./io/teaching/index.ts'),
    ]);
  return new Teaching({
    ...shared,
    store: teaching.createTeachingStore(),
    sorters: sorting.createSorters(),
    encode: (sound) => encodeSound(sound),
    encodeVoice: (sound) => encodeSound(sound, VOICE_BITS_PER_SEC),
    isArchive: archive.isArchive,
    openArchive: (zip) => archive.openCollection(zip),
    isReview: review.isReview,
    readReview: review.readReview,
    writeReview: review.writeReview,
    printOf: teaching.printOf,
    writeFolder: teaching.writeFolder,
    drafts: createDrafts(() => localStorage),
    now: () => Date.now(),
  });
}

/** Enough for speech (io/encode). */
const VOICE_BITS_PER_SEC = 32_000;
