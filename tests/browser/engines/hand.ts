import { expect } from 'vitest';
import { AXE, axeFinds } from '../axe.ts';
import type { Tab } from './tab.ts';

/** Waits until something that a selector finds is on the page and says so, among other things. */
export async function sees(tab: Tab, selector: string, words = ''): Promise<void> {
  const there = (): Promise<boolean> =>
    tab.run(
      (wanted, says) =>
        [...document.querySelectorAll(wanted)].some(
          (one) => one.checkVisibility() && one.textContent.replaceAll(/\s+/g, ' ').includes(says),
        ),
      selector,
      words,
    );
  await expect.poll(there, { message: `${selector} "${words}" is shown` }).toBe(true);
}

/** Touches what says these words and no others: a button, a link, a fold, the label of a choice. */
export async function touchWords(tab: Tab, words: string): Promise<void> {
  const mark = (): Promise<boolean> =>
    tab.run((says) => {
      for (const old of document.querySelectorAll('[data-wanted]')) old.removeAttribute('data-wanted');
      const found = [...document.querySelectorAll('a, button, summary, label')].find(
        (one) => one.checkVisibility() && one.textContent.trim() === says,
      );
      found?.setAttribute('data-wanted', '');
      return found !== undefined;
    }, words);
  await expect.poll(mark, { message: `"${words}" can be touched` }).toBe(true);
  await tab.touch('[data-wanted]');
}

/** Hands a file to a field for files, once it is there; nobody sees it. */
export async function give(tab: Tab, selector: string, path: string): Promise<void> {
  const there = (): Promise<boolean> =>
    tab.run((wanted) => document.querySelector(wanted) !== null, selector);
  await expect.poll(there, { message: `${selector} is there` }).toBe(true);
  await tab.give(selector, path);
}

/** A screen of another size, once the page has it: WebKit's window follows in its own time. */
export async function resize(tab: Tab, width: number, height: number): Promise<void> {
  await tab.resize(width, height);
  await expect.poll(() => tab.run(() => innerWidth), { message: 'width, px' }).toBe(width);
}

/** Waits for the report's sentence → it. */
export async function verdictOf(tab: Tab): Promise<string> {
  await sees(tab, '#verdict');
  return tab.run(() => document.querySelector('#verdict')!.textContent.trim());
}

interface Watched {
  readonly wrong: string[];
}

/** Opens a page and notes down what goes wrong on it from then on. */
export async function visit(tab: Tab, url: string): Promise<void> {
  await tab.open(url);
  await tab.run(() => {
    const wrong: string[] = [];
    Object.assign(window, { wrong });
    addEventListener('error', ({ message }) => {
      // Said where something is drawn again in the next frame; nothing is wrong.
      if (!message.startsWith('ResizeObserver loop')) wrong.push(message);
    });
    addEventListener('unhandledrejection', ({ reason }) => wrong.push(String(reason)));
  });
}

export const wentWrong = (tab: Tab): Promise<readonly string[]> =>
  tab.run(() => (window as unknown as Watched).wrong);

/** Axe finds nothing wrong, and nothing lies beyond the page's edge. */
export async function nothingWrong(tab: Tab, seen: string): Promise<void> {
  if (!(await tab.run(() => 'axe' in window))) await tab.load(AXE);
  await expect.poll(() => tab.run(axeFinds), { message: `axe: ${seen}` }).toEqual([]);
  const beyond = (): Promise<number> =>
    tab.run(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  await expect.poll(beyond, { message: `px beyond its edge: ${seen}` }).toBeLessThanOrEqual(0);
}

/**
 * The microphone is opened as ever, but a recording that lies beside the page sounds into the page's own sound in its place, each
 * time that `play` is called: what a browser's own false microphone gives is a tone.
 */
export async function hearInstead(tab: Tab, path: string): Promise<void> {
  await tab.run((file) => {
    AudioContext.prototype.createMediaStreamSource = function (this: AudioContext) {
      const heard = new GainNode(this);
      // A silence that never ends, so that there is an input when the sound is over.
      const silence = new ConstantSourceNode(this, { offset: 0 });
      silence.connect(heard);
      silence.start();
      const play = async (): Promise<void> => {
        const buffer = await this.decodeAudioData(await (await fetch(file)).arrayBuffer());
        const source = new AudioBufferSourceNode(this, { buffer });
        source.connect(heard);
        source.start();
      };
      Object.assign(window, { play });
      return heard as unknown as MediaStreamAudioSourceNode;
    };
  }, path);
}

export const play = (tab: Tab): Promise<void> =>
  tab.run(() => (window as unknown as { play: () => Promise<void> }).play());
