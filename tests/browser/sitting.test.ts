import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { inject } from 'vitest';
import { encodeFloatWav } from '../support/float-wav.ts';
import { render } from '../support/render.ts';
import { joinSession } from '../support/session.ts';
import type { Session } from '../support/session.ts';
import { followSound, hearWhole, it, moreSound } from './hearing.ts';
import { followStages, stagesUntilTold } from './stages.ts';
import { visit } from './visit.ts';

const ATTEMPTS = 10;
/** of different playing; a sitting repeats them */
const PLAYED = [104, 120, 96];

/** Ten short arpeggios at one piano, with talk, knocks, pages and claps between. */
async function sitting(): Promise<Session> {
  const played = await Promise.all(
    PLAYED.map((bpm, seed) =>
      render({
        seed: 900 + seed,
        piano: 'dev',
        exercise: { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 },
        student: { bpm, leadInSec: 0.3, leadOutSec: 0.4 },
        home: { tuningCents: -18, noises: [], peakDb: -8 },
      }),
    ),
  );
  const attempts = Array.from({ length: ATTEMPTS }, (_, index) => played[index % played.length]!);
  return joinSession(attempts, { seed: 7, pauseSec: { least: 4, most: 4.6 } });
}

/** Notes down, in order, what is laid into the journal and what is sent to be analysed. */
function spyOnKeeping(page: Page): Promise<unknown> {
  return page.addInitScript(() => {
    const steps: string[] = [];
    Object.assign(window, { steps });
    const names = new WeakMap<IDBTransaction, string>();
    const put = IDBObjectStore.prototype.put as (value: unknown, key?: IDBValidKey) => IDBRequest;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, value: unknown, key?: IDBValidKey) {
      if (this.name === 'sounds') names.set(this.transaction, String(key));
      return put.call(this, value, key);
    };
    const open = IDBDatabase.prototype.transaction as (...rest: unknown[]) => IDBTransaction;
    IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...rest: unknown[]) {
      const transaction = open.apply(this, rest);
      // The first to be told, before the page goes on.
      transaction.addEventListener('complete', () => {
        const name = names.get(transaction);
        if (name !== undefined) steps.push(`kept ${name}`);
      });
      return transaction;
    };
    const post = Worker.prototype.postMessage as (message: unknown, ...rest: unknown[]) => void;
    Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: unknown[]) {
      const told = message as { kind?: string; audio?: { channels: readonly Float32Array[] } };
      // The analysis is tried out on a moment of silence when the page is opened.
      const length = told.kind === 'attempt' ? (told.audio?.channels[0]?.length ?? 0) : 0;
      if (length > 4800) steps.push('analysed');
      return post.call(this, message, ...rest);
    };
  });
}
const stepsOf = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => (window as unknown as { steps: readonly string[] }).steps);

const analysedOn = async (page: Page): Promise<number> =>
  (await stepsOf(page)).filter((step) => step === 'analysed').length;

it('ten attempts in a row after one touch, with talk and knocks between: each found, each kept before it is analysed', async ({
  hearing,
  expect,
}) => {
  const { channel, sampleRateHz } = await sitting();
  const path = join(mkdtempSync(join(tmpdir(), 'evenfall-')), 'sitting.wav');
  // Listening begins two seconds after the sound of the microphone does.
  const whole = new Float32Array(channel.length + 5 * sampleRateHz);
  whole.set(channel, 2 * sampleRateHz);
  writeFileSync(path, new Uint8Array(encodeFloatWav({ channels: [whole], sampleRateHz })));
  const browser = await hearing(path);
  const { page, errors, strayRequests, close } = await visit(browser, `${inject('siteUrl')}#stand`, {
    before: async (fresh) => {
      await followSound(fresh);
      await hearWhole(fresh, path);
      await followStages(fresh);
      await spyOnKeeping(fresh);
    },
  });
  await page.getByLabel('Key', { exact: true }).selectOption('C major');
  await page.getByRole('button', { name: 'Listen', exact: true }).click();
  // Where one is told only while the next is played already, its words are not shown: what is kept is counted.
  for (let number = 1; number <= ATTEMPTS; number++)
    await expect
      .poll(() => analysedOn(page), { message: 'attempts analysed' })
      .toBeGreaterThanOrEqual(number);
  const stages = await stagesUntilTold(page, ATTEMPTS);
  const told = stages.filter(({ state }) => /Ready for the next/.test(state));
  expect(told.map(({ verdict }) => verdict)).not.toContain('');
  // Nothing comes after the tenth.
  await moreSound(page, 4);
  await expect.poll(() => page.locator('.state').innerText()).toMatch(new RegExp(`Attempt ${ATTEMPTS}\\.`));
  const steps = await stepsOf(page);
  const kept = steps.filter((step) => step.startsWith('kept'));
  expect(steps).toHaveLength(2 * ATTEMPTS);
  // Never more analysed than kept: on a slow machine the next is kept before the last is analysed.
  steps.forEach((_, at) => {
    const soFar = steps.slice(0, at + 1);
    expect(soFar.filter((step) => step.startsWith('kept')).length).toBeGreaterThanOrEqual((at + 1) / 2);
  });
  expect(new Set(kept).size).toBe(ATTEMPTS);
  expect(errors).toEqual([]);
  expect(strayRequests).toEqual([]);
  await close();
});
