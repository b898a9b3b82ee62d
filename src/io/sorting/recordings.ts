import { sniff } from '../decode/sniff.ts';

/** Of a file so much is looked at to tell what it is. */
export const HEAD_BYTES = 70_000;
/** Endings under which a file that cannot be told by its content is meant as a recording, and is refused with its reason. */
export const MEANT_AS_SOUND =
  /\.(wav|flac|mp3|m4a|m4b|m4p|mp4|mov|aac|ogg|oga|opus|webm|mka|mkv|amr|3gp|3ga|aif|aiff|aifc|wma|caf|au|avi|wv|ape)$/i;

/** Whether a file or folder of this name is the system's own affair, which is nobody's recording. */
export const isHidden = (name: string): boolean => /^(\.|__MACOSX$|thumbs\.db$|desktop\.ini$)/i.test(name);

/**
 * The first bytes of a file and its name → whether it is a recording. By content; what is damaged beyond telling counts by its
 * ending, so that it is refused with a reason and not passed over.
 */
export function isRecording(head: Uint8Array, name: string): boolean {
  const found = sniff(head);
  if (found.format === 'unknown') return MEANT_AS_SOUND.test(name);
  return found.format !== 'other' || found.isSound || MEANT_AS_SOUND.test(name);
}
