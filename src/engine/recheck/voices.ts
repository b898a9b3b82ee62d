import type { Heard, KeptSound, PlayedNote } from '../listen/index.ts';
import { glidesAsOne } from '../listen/partials/glide.ts';
import { stretchCents } from '../listen/transcribe/stretch.ts';
import type { Alignment } from '../match/index.ts';

/** Whether a note's tone glides as a voice does, and no string. */
export function isVoice(
  { tuning }: Heard,
  { samples }: KeptSound,
  { timeSec, midi, cents }: PlayedNote,
): boolean {
  return glidesAsOne(samples, timeSec, midi + (tuning.cents + cents + stretchCents(midi)) / 100);
}

/**
 * Of a key that seems struck twice the alignment takes the first blow for the written note. But a vowel on a partial of the key to come
 * seems to strike it before the hammer does: where the first one glides, the second is the note, and the first is none.
 */
export function withoutVoices(heard: Heard, alignment: Alignment, sound: KeptSound): Alignment {
  const matched = [...alignment.matched];
  const extras = alignment.extras.filter(({ kind, step, played }) => {
    if (kind !== 'repeat') return true;
    const again = heard.notes[played]!;
    const place = matched.findIndex(
      (note) =>
        note.step === step && note.verdict === 'correct' && heard.notes[note.played]!.midi === again.midi,
    );
    const first = matched[place];
    if (first?.verdict !== 'correct' || !isVoice(heard, sound, heard.notes[first.played]!)) return true;
    if (isVoice(heard, sound, again)) return true;
    matched[place] = { ...first, played };
    return false;
  });
  return extras.length === alignment.extras.length ? alignment : { ...alignment, matched, extras };
}
