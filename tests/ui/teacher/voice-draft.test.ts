import { expect, test } from 'vitest';
import type { SoundFile } from '../../../src/io/review/index.ts';
import { createDrafts } from '../../../src/io/settings/index.ts';
import { keepVoiceDraft, readVoiceDraft } from '../../../src/ui/teacher/state/voice-draft.ts';
import { storageIn } from '../../support/storage.ts';

const NAME = 'remark-0k2x-1';

/** A page of its own each time, on one storage. */
function pages() {
  const kept = new Map<string, string>();
  return { kept, open: () => createDrafts(() => storageIn(kept)) };
}

test('what was spoken outlives the page byte by byte, beside what was typed, until it is said or left', () => {
  const { kept, open } = pages();
  // Every byte, more than are written at once, and the newline that ends the kind of file.
  const sound: SoundFile = {
    mime: 'audio/webm',
    bytes: Uint8Array.from({ length: 20_000 }, (_, at) => at % 256),
  };
  open().write(NAME, 'And listen to this:');
  expect(readVoiceDraft(open(), NAME)).toBeUndefined();
  keepVoiceDraft(open(), NAME, sound, null);
  expect(readVoiceDraft(open(), NAME)).toEqual(sound);
  expect(open().read(NAME)).toBe('And listen to this:');
  keepVoiceDraft(open(), NAME, null, null);
  expect(readVoiceDraft(open(), NAME)).toBeUndefined();
  expect([...kept.keys()]).toEqual([`evenfall-draft-${NAME}`]);
});

test('that a spoken remark was thrown away is known, and so is that it was left as it was', () => {
  const { open } = pages();
  const before: SoundFile = { mime: 'audio/wav', bytes: Uint8Array.of(1, 2, 3) };
  keepVoiceDraft(open(), NAME, null, before);
  expect(readVoiceDraft(open(), NAME)).toBeNull();
  keepVoiceDraft(open(), NAME, before, before);
  expect(readVoiceDraft(open(), NAME)).toBeUndefined();
});
