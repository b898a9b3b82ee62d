import type { Click } from './state/settings.ts';
import { strings } from '../language/index.ts';

const CLICK_ORDER: readonly Click[] = ['off', 'count-in', 'throughout'];

export function clickOptions(): readonly { readonly value: Click; readonly label: string }[] {
  const { clicks } = strings().stand;
  return CLICK_ORDER.map((value) => ({ value, label: clicks[value] }));
}
