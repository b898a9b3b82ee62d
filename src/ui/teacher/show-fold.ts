import { tick } from 'svelte';

/** Opens a folded part of the page by its id, and leads to the first thing in it that `selector` finds, else to its title. */
export async function showFold(id: string, selector: string): Promise<void> {
  const fold = document.getElementById(id);
  if (!(fold instanceof HTMLDetailsElement)) return;
  if (!fold.open) {
    // A fold says only after a turn that it is open, and draws what is in it then.
    const opened = new Promise((resolve) => fold.addEventListener('toggle', resolve, { once: true }));
    fold.open = true;
    await opened;
  }
  await tick();
  const there = fold.querySelector<HTMLElement>(selector) ?? fold.querySelector<HTMLElement>('summary');
  there?.focus({ preventScroll: true });
  fold.scrollIntoView({ block: 'nearest' });
}
