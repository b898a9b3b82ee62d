import type { Page } from 'playwright-core';
import { describe, inject } from 'vitest';
import { hearWhole, it, play, recordFor } from './hearing.ts';
import { practisedMicrophone } from './practised.ts';
import { microphoneOf } from './sounds.ts';
import { followStages, stagesUntilTold } from './stages.ts';
import { verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
const LATE = /The crossing comes late going up to C/;
const DONE = /^Done: three times in a row every note right\.$/;

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

// From a report through its next step to the report that speaks of that first: all by sound.
describe.concurrent('a next step that is set up and played well', () => {
  it('is told done on the page, and leads back to the whole', async ({ hearing, expect }) => {
    const { path, lengthSec } = await practisedMicrophone();
    const { page, errors, close } = await visit(await hearing(path), site, {
      before: (fresh) => hearWhole(fresh, path, true),
    });
    await button(page, 'Example').click();
    await expect.poll(() => verdictOf(page)).toMatch(LATE);
    await button(page, 'Set it up').click();
    await page.getByText(/How to practise: Only A♭–C–E♭–A♭, three times in a row, ♩ = \d+/).waitFor();
    await button(page, 'Record').click();
    await button(page, 'Turn on the microphone').click();
    await button(page, 'Start').click();
    await recordFor(page, lengthSec + 2);
    await expect.poll(() => verdictOf(page)).toMatch(DONE);
    await expect.poll(() => page.locator('.next').innerText()).toMatch(/^Next: now the whole/);
    expect(errors).toEqual([]);
    await close();
  });

  it('is told done at the piano, set up by one touch there', async ({ hearing, expect }) => {
    const [example, practised] = await Promise.all([
      microphoneOf([{ name: 'late-thumb', atSec: 0 }], 7),
      practisedMicrophone(),
    ]);
    const { page, errors, close } = await visit(await hearing(example), `${site}#stand`, {
      before: async (fresh) => {
        await hearWhole(fresh, example, true);
        await followStages(fresh);
      },
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await button(page, 'Listen').click();
    await page.locator('.state', { hasText: /Waiting for your first note/ }).waitFor();
    await play(page);
    expect((await stagesUntilTold(page, 1)).at(-1)!.verdict).toMatch(LATE);
    await button(page, 'Set it up').click();
    await page.locator('.asked', { hasText: /^Only A♭–C–E♭–A♭, three times in a row, ♩ = \d+$/ }).waitFor();
    await page.locator('.sheet line.stretch').first().waitFor({ state: 'attached' });
    await play(page, practised.path);
    const { verdict, next } = (await stagesUntilTold(page, 2)).at(-1)!;
    expect(verdict).toMatch(DONE);
    expect(next).toMatch(/^Next: now the whole/);
    expect(errors).toEqual([]);
    await close();
  });
});
