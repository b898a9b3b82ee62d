import { handsFor, type Form, type HandLikelihood, type Hands } from '../../engine/index.ts';

/** German and English hands begin with the same letters, and so do both and beide. */
const HANDS: Readonly<Record<string, Hands>> = { l: 'left', r: 'right', b: 'together' };

/** The same as assistive technology is told. */
export const KEYS: Readonly<Record<Hands, string>> = { left: 'L', right: 'R', together: 'B' };

/** What an attempt of one hand may have been played by, the likelier first; last both, which only one of was heard. */
export function handsAsked(form: Form, { left, right }: HandLikelihood): readonly Hands[] {
  const asked: readonly Hands[] =
    left > right ? ['left', 'right', 'together'] : ['right', 'left', 'together'];
  return asked.filter((hands) => handsFor(form).includes(hands));
}

/** L, R or B, alone → the hands; null: another key. */
function handsOf({ key, altKey, ctrlKey, metaKey }: KeyboardEvent): Hands | null {
  return altKey || ctrlKey || metaKey ? null : (HANDS[key.toLowerCase()] ?? null);
}

/**
 * Attached to where the hand is asked: L, R and B answer, but only while something in it has the focus, so that no letter does anything
 * to somebody who speaks to the computer or writes elsewhere (WCAG 2.1.4).
 */
export function handKeys(say: (hands: Hands) => void): (where: HTMLElement) => () => void {
  return (where) => {
    const press = (event: KeyboardEvent): void => {
      const hands = handsOf(event);
      if (hands === null) return;
      event.preventDefault();
      event.stopPropagation();
      say(hands);
    };
    where.addEventListener('keydown', press);
    return () => where.removeEventListener('keydown', press);
  };
}
