const SHARPS = ['C', 'C♯', 'D', 'D♯', 'E', 'F', 'F♯', 'G', 'G♯', 'A', 'A♯', 'B'];

/** MIDI number → name in scientific pitch notation, black keys as sharps: without a key nobody can know better. */
export function nameOfKey(midi: number): string {
  return `${SHARPS[midi % 12]}${Math.floor(midi / 12) - 1}`;
}
