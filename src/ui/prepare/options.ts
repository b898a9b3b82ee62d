import { ALL_KEYS } from '../../engine/index.ts';
import type { Form, Hands, MinorScale } from '../../engine/index.ts';
import { shownKey } from '../names/index.ts';

interface Choice<T> {
  readonly value: T;
  readonly label: string;
}

/** The keys round the circle of fifths, as the engine orders them: major from C, minor from A. */
export const KEY_GROUPS: readonly { readonly label: string; readonly keys: readonly Choice<string>[] }[] = (
  ['major', 'minor'] as const
).map((mode) => ({
  label: `${mode === 'major' ? 'Major' : 'Minor'}, round the circle of fifths`,
  keys: ALL_KEYS.filter((key) => key.endsWith(mode)).map((key) => ({ value: key, label: shownKey(key) })),
}));

export const FORMS: readonly Choice<Form>[] = [
  { value: 'arpeggio', label: 'Arpeggio' },
  { value: 'scale', label: 'Scale' },
  { value: 'triads', label: 'Triads' },
  { value: 'broken-triads', label: 'Broken triads' },
  { value: 'progression', label: 'Progression' },
];

export const HANDS: readonly Choice<Hands>[] = [
  { value: 'left', label: 'Left' },
  { value: 'right', label: 'Right' },
  { value: 'together', label: 'Together' },
];

export const OCTAVES: readonly Choice<number>[] = [1, 2, 3, 4].map((value) => ({
  value,
  label: String(value),
}));

export const MINOR_SCALES: readonly Choice<MinorScale>[] = [
  { value: 'harmonic', label: 'Harmonic' },
  { value: 'melodic', label: 'Melodic' },
  { value: 'natural', label: 'Natural' },
];

/** Slowest and fastest tempo that may be aimed at, beats a minute: what metronomes have (common practice, no source). */
export const TEMPO_BPM = { least: 30, most: 208 } as const;
