import type { Review, SoundFile } from '../../../io/review/index.ts';

/** All sounds of a review, in the order in which the page has them. */
export function soundsIn({ attempts }: Review): readonly SoundFile[] {
  return attempts
    .flatMap(({ sound, remarks }) => [sound, ...remarks.map((remark) => remark.voice)])
    .filter((file) => file !== null);
}

/**
 * The page with its sounds put in: `<audio … data-sound="0">` becomes `<audio … src="data:…">`. Only now, since a browser
 * that draws the page would begin to load them. No text of a review can look like it: a "<" in text is written `&lt;`.
 */
export function withSounds(body: string, sounds: readonly SoundFile[]): string {
  return body.replace(/(<audio\b[^>]*) data-sound="(\d+)"/g, (all, before: string, number: string) => {
    const sound = sounds[Number(number)];
    return sound === undefined ? all : `${before} src="data:${sound.mime};base64,${base64(sound.bytes)}"`;
  });
}

/** How many bytes become letters at once: a call holds so many arguments. Divides by three, so that pieces join. */
const PIECE_BYTES = 3 * 8192;

function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) {
    parts.push(btoa(String.fromCharCode(...bytes.subarray(at, at + PIECE_BYTES))));
  }
  return parts.join('');
}
