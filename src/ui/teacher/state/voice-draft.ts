import type { SoundFile } from '../../../io/review/index.ts';
import type { Settings } from '../../../io/settings/index.ts';

/** How many bytes become letters at once: a call holds so many arguments. */
const PIECE_BYTES = 8192;

const KINDS: readonly SoundFile['mime'][] = ['audio/webm', 'audio/wav'];

const nameOf = (draftName: string): string => `${draftName}-voice`;

/** What was spoken to a remark and is not said yet; null: its sound was thrown away; undefined: nothing was done to it. */
export function readVoiceDraft(drafts: Settings, draftName: string): SoundFile | null | undefined {
  const kept = drafts.read(nameOf(draftName));
  if (kept === null) return undefined;
  const at = kept.indexOf('\n');
  const mime = KINDS.find((kind) => kind === kept.slice(0, at));
  if (mime === undefined) return null;
  return { mime, bytes: Uint8Array.from(kept.slice(at + 1), (letter) => letter.charCodeAt(0)) };
}

/** Keeps it as text, a letter a byte: a spoken minute is a quarter of a megabyte. `before`: as the remark has it. */
export function keepVoiceDraft(
  drafts: Settings,
  draftName: string,
  sound: SoundFile | null,
  before: SoundFile | null,
): void {
  if (sound === before) return drafts.forget(nameOf(draftName));
  const letters: string[] = [];
  for (let at = 0; sound !== null && at < sound.bytes.length; at += PIECE_BYTES)
    letters.push(String.fromCharCode(...sound.bytes.subarray(at, at + PIECE_BYTES)));
  drafts.write(nameOf(draftName), `${sound?.mime ?? ''}\n${letters.join('')}`);
}
