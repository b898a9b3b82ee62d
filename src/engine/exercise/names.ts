const ACCIDENTAL_SIGNS: Readonly<Record<string, string>> = { '#': '♯', '##': '×', b: '♭', bb: '♭♭' };

/**
 * A name as computers write it → as music writes it: "G#4" → "G♯4", "Bb major" → "B♭ major".
 *
 * The double sharp becomes "×", which every font has; Unicode's own U+1D12A is missing from most.
 */
export function displayName(name: string): string {
  return name.replace(
    /^([A-G])(##?|bb?)/,
    (_, letter: string, accidental: string) => letter + ACCIDENTAL_SIGNS[accidental],
  );
}

/** The same without the octave: "G#4" → "G♯". */
export function displayPitchClass(name: string): string {
  return displayName(name).replace(/-?\d+$/, '');
}
