import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, inject } from 'vitest';
import { hearWhole, it, recordWhole } from './hearing.ts';
import { microphoneWav } from './sounds.ts';
import { verdictOf, visit } from './visit.ts';

const site = inject('siteUrl');
describe.concurrent('recording from the microphone', () => {
  it('explains first, shows the level, records from Start to Stop, and tells what was played', async ({
    hearing,
    expect,
  }) => {
    const folder = mkdtempSync(join(tmpdir(), 'evenfall-'));
    const path = join(folder, 'microphone.wav');
    writeFileSync(path, await microphoneWav('late-thumb'));
    const browser = await hearing(path);
    const { page, errors, close } = await visit(browser, site, {
      before: (fresh) => hearWhole(fresh, path, true),
    });
    await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
    await page.getByRole('button', { name: 'Record', exact: true }).click();
    await page.getByText('The microphone is on only while you record').waitFor();
    await page.getByRole('button', { name: 'Turn on the microphone' }).click();
    await page.getByRole('meter').waitFor();
    await recordWhole(page, 'late-thumb');
    await expect
      .poll(() => verdictOf(page))
      .toMatch(/late going up to C|come late, most C going up|C going up in the (lower|upper) octave/);
    await page.locator('[data-spot="12"]').waitFor();
    expect(errors).toEqual([]);

    // The second attempt needs one touch: Record.
    await page.getByRole('button', { name: 'Record', exact: true }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await page.getByRole('button', { name: 'Throw away' }).click();
    await expect
      .poll(() => verdictOf(page))
      .toMatch(/late going up to C|come late, most C going up|C going up in the (lower|upper) octave/);
    await close();
  });

  it('that is refused says so plainly, with the way out, and loses no report', async ({
    hearing,
    expect,
  }) => {
    const browser = await hearing('refused');
    const { page, close } = await visit(browser, `${site}?attempt=bundled`);
    await verdictOf(page);
    await page.getByRole('button', { name: 'Record', exact: true }).click();
    await page.getByRole('button', { name: 'Turn on the microphone' }).click();
    await page.getByRole('heading', { name: 'The microphone could not be opened' }).waitFor();
    await expect.poll(() => page.locator('.trouble').innerText()).toMatch(/open a recording instead/);
    await expect
      .poll(() => verdictOf(page))
      .toMatch(/late going up to C|come late, most C going up|C going up in the (lower|upper) octave/);
    await close();
  });
});
