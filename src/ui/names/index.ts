/** Note and key names as they are shown, as they are spoken, and taken apart. */

/** A note's name taken apart: "G#4" → letter G, accidental "#", octave 4; "Bb" has no octave. */
export interface NameParts {
  readonly letter: string;
  readonly accidental: '' | '#' | '##' | 'b' | 'bb';
  readonly octave: number | null;
}

const SIGNS: Readonly<Record<NameParts['accidental'], string>> = {
  '': '',
  '#': '♯',
  '##': '𝄪',
  b: '♭',
  bb: '♭♭',
};

const SPOKEN: Readonly<Record<NameParts['accidental'], string>> = {
  '': '',
  '#': ' sharp',
  '##': ' double sharp',
  b: ' flat',
  bb: ' double flat',
};

const FINGERS = ['thumb', 'second finger', 'third finger', 'fourth finger', 'little finger'] as const;

/** Scientific pitch notation or a pitch class, accidentals as # x b or ♯ ♭ → its parts; null when it is no name. */
export function nameParts(name: string): NameParts | null {
  const plain = name.replaceAll('♯', '#').replaceAll('♭', 'b').replaceAll('𝄪', '##').replace('x', '##');
  const found = /^([A-G])(##?|bb?)?(-?\d+)?$/.exec(plain);
  if (found === null) return null;
  return {
    letter: found[1]!,
    accidental: (found[2] ?? '') as NameParts['accidental'],
    octave: found[3] === undefined ? null : Number(found[3]),
  };
}

/** "Ab4" → "A♭": the name without its octave, as under a pearl. */
export function shownName(name: string): string {
  const parts = nameParts(name);
  return parts === null ? name : parts.letter + SIGNS[parts.accidental];
}

/** "Ab4" → "A♭4". */
export function shownNameWithOctave(name: string): string {
  const parts = nameParts(name);
  return parts === null ? name : shownName(name) + (parts.octave === null ? '' : String(parts.octave));
}

/** "Ab4" → "A flat 4", for screen readers, which stumble over signs. */
export function spokenName(name: string): string {
  const parts = nameParts(name);
  if (parts === null) return name;
  return parts.letter + SPOKEN[parts.accidental] + (parts.octave === null ? '' : ` ${parts.octave}`);
}

/** The note struck in place of another; a natural that differs only by its sign gets one: "G♮" for "G♯". */
export function shownWrongName(name: string, wantedName: string): string {
  const struck = nameParts(name);
  const wanted = nameParts(wantedName);
  const onlyTheSign =
    struck !== null && wanted !== null && struck.letter === wanted.letter && struck.accidental === '';
  return onlyTheSign && wanted.accidental !== '' ? `${struck.letter}♮` : shownName(name);
}

/** "Ab major" → "A♭ major". */
export function shownKey(key: string): string {
  const [tonic = '', ...mode] = key.split(' ');
  return [shownName(tonic), ...mode].join(' ');
}

/** 1 → "thumb" … 5 → "little finger". */
export function fingerName(finger: number): string {
  return FINGERS[finger - 1] ?? `finger ${finger}`;
}
