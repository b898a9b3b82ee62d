import type { Click } from '../attempt/stand-settings.ts';

export const CLICKS: readonly { readonly value: Click; readonly label: string }[] = [
  { value: 'off', label: 'None' },
  { value: 'count-in', label: 'Until I begin' },
  { value: 'throughout', label: 'All the way' },
];
