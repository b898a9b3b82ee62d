import { tick } from 'svelte';

/**
 * The keyboard, and whoever listens, go on at what is drawn by then: an element, or one by its name. `block`: it is brought into sight
 * so; null: the page stays where it is.
 */
export async function goTo(
  target: string | (() => HTMLElement | null | undefined),
  block: ScrollLogicalPosition | null = null,
): Promise<void> {
  await tick();
  const there = typeof target === 'string' ? document.getElementById(target) : target();
  there?.focus({ preventScroll: true });
  if (block !== null) there?.scrollIntoView({ block });
}
