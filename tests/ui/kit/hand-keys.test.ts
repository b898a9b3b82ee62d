import { expect, it } from 'vitest';
import { handKeys } from '../../../src/ui/kit/hand-keys.ts';

/** A key pressed while something within `where` has the focus; whether it was taken. */
function press(where: EventTarget, key: string, modifier: Partial<KeyboardEvent> = {}): boolean {
  const event = Object.assign(new Event('keydown', { cancelable: true }), { key, ...modifier });
  where.dispatchEvent(event);
  return event.defaultPrevented;
}

it('L, R and B say the hands where it is asked and has the focus; other keys and shortcuts of the browser are left alone', () => {
  const said: string[] = [];
  const where = new EventTarget();
  const away = handKeys((hand) => said.push(hand))(where as HTMLElement);
  expect([press(where, 'l'), press(where, 'R'), press(where, 'b')]).toEqual([true, true, true]);
  expect([press(where, 'x'), press(where, 'r', { ctrlKey: true }), press(where, 'Tab')]).not.toContain(true);
  expect(said).toEqual(['left', 'right', 'together']);
  away();
  expect(press(where, 'l')).toBe(false);
});
