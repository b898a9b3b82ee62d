import { expect, inject, it } from 'vitest';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { triadsBy } from '../support/hands-apart.ts';
import { sharedBrowser, visit } from './visit.ts';

it('files of hands alone make that of both hands surer', async () => {
  const { page, errors, close } = await visit(await sharedBrowser(), inject('siteUrl'));
  await page.getByLabel('Recognise the exercise for me').check();
  let opened = 0;
  const unsureIn = async (hands: 'left' | 'right' | 'together'): Promise<number> => {
    const buffer = Buffer.from(encodeWav(await triadsBy(hands)));
    // A name of its own, so that the report waited for is this one's.
    const name = `${hands} ${(opened += 1)}.wav`;
    await page.locator('input[type=file]').setInputFiles({ name, mimeType: 'audio/wav', buffer });
    await page.locator('.where', { hasText: name }).waitFor();
    return page.locator('.pearl.unsure').count();
  };
  const byItself = await unsureIn('together');
  expect(byItself).toBeGreaterThan(0);
  // What an empty ring is stands below the string.
  await page.getByText('Empty ring: not sure about this note.').waitFor();
  await unsureIn('left');
  await unsureIn('right');
  expect(await unsureIn('together')).toBeLessThan(byItself);
  expect(errors).toEqual([]);
  await close();
});
