/** What `npm run screens` takes pictures of: visits to the page, and what is seen on the way. */
import type { Page } from 'playwright-core';
import { encodeWav } from '../../src/io/exchange/index.ts';
import { render, type RenderSpec } from '../support/render.ts';
import { openEmptyJournal, openSeededJournal } from './journal/scenes.ts';
import { fixturePath } from './sounds.ts';
import { asFile, review } from './student/made.ts';
import { openInvented as openInventedClass } from './teacher/stored-class.ts';
import { beginReview, openClass, openRemarked, openUntold, playExample } from './teacher/scenes.ts';
import { choose, verdictOf } from './visit.ts';

/** One picture, at every size in light and dark. */
export interface Shot {
  readonly name: string;
  /** the whole page, or what the screen shows */
  readonly whole: boolean;
  /** what is done on the page, after the shots before it */
  readonly act: (page: Page) => Promise<unknown>;
}

/** One visit: what it shows, in order. */
export interface Scene {
  readonly query: string;
  readonly shots: readonly Shot[];
  /** what it shows does not wait, so each size is a visit of its own */
  readonly passing?: true;
}

const whole = (name: string, act: Shot['act']): Shot => ({ name, whole: true, act });
const screen = (name: string, act: Shot['act']): Shot => ({ name, whole: false, act });
const nothing = (): Promise<void> => Promise.resolve();

const drawn = (page: Page): Promise<void> => page.locator('.music svg').first().waitFor();
const speakGerman = (page: Page): Promise<void> => choose(page.getByRole('radio', { name: 'Deutsch' }));
const told = async (page: Page): Promise<void> => {
  await verdictOf(page);
  await drawn(page);
};

const chooseExercise = async (page: Page, key: string, ...labels: readonly string[]): Promise<void> => {
  await page.getByLabel('Key', { exact: true }).selectOption(key);
  for (const label of labels) {
    const button = page.getByLabel(label, { exact: true });
    // On a phone forms are a list.
    if (await button.isVisible()) await choose(button);
    else await page.getByLabel('Form', { exact: true }).selectOption({ label });
  }
};
const chosen =
  (key: string, ...labels: readonly string[]): Shot['act'] =>
  async (page) => {
    await chooseExercise(page, key, ...labels);
    await page.waitForTimeout(800);
  };

const listenAtPiano = async (page: Page): Promise<void> => {
  await chooseExercise(page, 'Ab major');
  await page.getByRole('button', { name: 'Listen', exact: true }).click();
};

/** Attempts that no fixture has, with mistakes. Invented, on the development piano. */
const INVENTED = {
  together: {
    seed: 11,
    piano: 'dev',
    exercise: { key: 'D major', form: 'scale', hands: 'together', octaves: 1 },
    student: {
      bpm: 84,
      jitterMs: 14,
      handsApartMs: { mean: 12, sd: 22 },
      lateCrossing: { ms: 90, kind: 'thumb-under' },
      mistakes: { wrong: 1, missed: 1, slips: 1, repeats: 0, restarts: 0 },
    },
  },
  chords: {
    seed: 12,
    piano: 'dev',
    exercise: { key: 'E major', form: 'progression', hands: 'together', octaves: 1 },
    student: {
      bpm: 58,
      jitterMs: 40,
      chordSpreadMs: 45,
      mistakes: { wrong: 1, missed: 1, slips: 0, repeats: 0, restarts: 0 },
    },
  },
  later: {
    seed: 21,
    piano: 'dev',
    exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
    student: { bpm: 84, jitterMs: 9, lateCrossing: { ms: 25, kind: 'thumb-under' } },
  },
} as const satisfies Readonly<Record<string, RenderSpec>>;

async function openInvented(page: Page, name: keyof typeof INVENTED): Promise<void> {
  const { channels, sampleRateHz } = await render(INVENTED[name]);
  await page.locator('input[type=file]').setInputFiles({
    name: `${name}.wav`,
    mimeType: 'audio/wav',
    buffer: Buffer.from(encodeWav({ channels, sampleRateHz })),
  });
  await verdictOf(page);
}

async function unfold(page: Page, ...titles: readonly string[]): Promise<void> {
  for (const title of titles) await page.locator('summary', { hasText: title }).first().click();
  await page.locator('svg.pencil').first().waitFor();
}
const IN_FULL = ['Show the detail', 'On the staff'] as const;

const inFull = (name: 'together' | 'chords'): Scene => ({
  query: '',
  shots: [
    whole(`report-${name}`, async (page) => {
      await page.getByLabel('Recognise the exercise for me').check();
      await openInvented(page, name);
      await unfold(page, ...IN_FULL);
    }),
  ],
});

const built = (name: string, act: Shot['act'], query = ''): Scene => ({ query, shots: [whole(name, act)] });

export const SCENES: readonly Scene[] = [
  inFull('together'),
  inFull('chords'),
  {
    query: '?attempt=bundled',
    shots: [
      screen('report', told),
      whole('report-whole', nothing),
      whole('report-full', async (page) => {
        await page.locator('[data-spot="4"]').click();
        await unfold(page, ...IN_FULL, 'Every note');
      }),
      whole('report-german', speakGerman),
    ],
  },
  {
    query: '?attempt=bundled',
    shots: [
      whole('compare', async (page) => {
        await verdictOf(page);
        await page.getByLabel('Key', { exact: true }).selectOption('Ab major');
        await openInvented(page, 'later');
        await page.locator('summary', { hasText: 'Compare' }).click();
      }),
      whole('compare-german', speakGerman),
    ],
  },
  {
    query: '?attempt=bundled',
    shots: [
      whole('sheet', async (page) => {
        await verdictOf(page);
        await page.evaluate(() => {
          window.print = () => document.body.setAttribute('data-printed', '');
        });
        await page.getByRole('button', { name: 'Print on one sheet' }).click();
        await page.locator('body[data-printed]').waitFor();
        await page.emulateMedia({ media: 'print' });
      }),
    ],
  },
  {
    query: '?attempt=bundled',
    shots: [
      whole('print', async (page) => {
        await verdictOf(page);
        await page.emulateMedia({ media: 'print' });
      }),
    ],
  },
  { query: '', shots: [screen('choose', drawn)] },
  {
    query: '?attempt=bundled',
    shots: [
      screen('practice', async (page) => {
        await page.getByRole('button', { name: 'Set it up' }).click();
        await drawn(page);
      }),
      screen('practice-open', (page) => page.getByText('How to practise').click()),
      screen('practice-german', speakGerman),
    ],
  },
  built('together-4-octaves', chosen('F# minor', 'Together', 'Scale', 'Melodic', '4')),
  built('arpeggio-left-4', chosen('Eb minor', 'Left', '4')),
  built('progression', chosen('A major', 'Together', 'Progression')),
  built('broken-triads', chosen('Db major', 'Right', 'Broken triads')),
  built(
    'keys',
    async (page) => {
      await choose(page.locator('.circle input[value="Ab major"]'));
      await page.waitForTimeout(1200);
    },
    '#keys',
  ),
  built(
    'keys-german',
    async (page) => {
      await speakGerman(page);
      await choose(page.locator('.circle input[value="G# minor"]'));
      await choose(page.getByRole('radio', { name: 'Links' }));
      await page.getByRole('button', { name: 'Keine', exact: true }).click();
      await page.waitForTimeout(1200);
    },
    '#keys',
  ),
  {
    query: '',
    shots: [
      screen('microphone', (page) => page.getByRole('button', { name: 'Record', exact: true }).click()),
      screen('recording', async (page) => {
        await page.getByRole('button', { name: 'Turn on the microphone' }).click();
        await page.getByRole('button', { name: 'Start' }).click();
        await page.waitForTimeout(1600);
      }),
    ],
  },
  { query: '#stand', shots: [whole('stand', drawn), whole('stand-german', speakGerman)] },
  {
    query: '#stand',
    passing: true,
    shots: [
      screen('stand-waiting', async (page) => {
        await listenAtPiano(page);
        await page.locator('.state', { hasText: 'Waiting' }).waitFor();
      }),
      screen('stand-listening', (page) => page.locator('circle.struck').nth(9).waitFor()),
    ],
  },
  {
    query: '#stand',
    shots: [
      screen('stand-told', async (page) => {
        await listenAtPiano(page);
        await verdictOf(page);
      }),
      whole('stand-stopped', async (page) => {
        await page.getByRole('button', { name: 'Stop' }).click();
        await page.locator('[data-spot="12"]').waitFor();
      }),
    ],
  },
  {
    query: '#stand',
    passing: true,
    shots: [
      screen('room-silence', async (page) => {
        await page.getByRole('button', { name: 'Check the room' }).click();
        await page.getByText('more seconds').waitFor();
      }),
    ],
  },
  {
    query: '#stand',
    shots: [
      screen('room-done', async (page) => {
        await page.getByRole('button', { name: 'Check the room' }).click();
        await page.getByRole('button', { name: 'Done' }).waitFor({ timeout: 60_000 });
      }),
    ],
  },
  {
    query: '',
    shots: [
      screen('trouble', async (page) => {
        await page.locator('input[type=file]').setInputFiles({
          name: 'broken.wav',
          mimeType: 'audio/wav',
          buffer: Buffer.from('RIFF0000WAVEjunk'),
        });
        await page.locator('#trouble').waitFor();
      }),
    ],
  },
  {
    query: '',
    shots: [
      screen('wrong-note', async (page) => {
        await chooseExercise(page, 'D major');
        await page.locator('input[type=file]').setInputFiles(fixturePath('natural-for-sharp'));
        await verdictOf(page);
      }),
    ],
  },
  {
    query: '',
    shots: [
      whole('findings', async (page) => {
        await page.locator('input[type=file]').setInputFiles(fixturePath('missed-and-repeated'));
        await verdictOf(page);
      }),
      whole('findings-german', speakGerman),
    ],
  },
  {
    query: '',
    shots: [whole('journal-empty', openEmptyJournal), whole('journal-empty-german', speakGerman)],
  },
  {
    query: '',
    shots: [
      whole('journal', openSeededJournal),
      whole('journal-deleted', async (page) => {
        await page
          .getByRole('button', { name: /^Delete/ })
          .first()
          .click();
        await page.locator('#undo').waitFor();
      }),
      whole('journal-place', async (page) => {
        await page.getByRole('button', { name: /^D major arpeggio: / }).click();
        await page.locator('#place').waitFor();
        await page.getByText('What counts as ready').click();
        await page.getByText('Over the weeks').click();
        await page.getByText('Levels: what is begun').click();
        await page.getByText('Level 1.').click();
      }),
      whole('journal-german', speakGerman),
    ],
  },
  {
    query: '',
    shots: [
      screen('journal-attempt', async (page) => {
        await openSeededJournal(page);
        await page.locator('[data-row] button').first().click();
        await verdictOf(page);
      }),
    ],
  },
  {
    query: '',
    shots: [
      whole('from-teacher-review', async (page) => {
        await openSeededJournal(page, 40);
        await page.getByLabel('A review to open').setInputFiles(await asFile(review()));
        await page.getByRole('heading', { name: 'From Ms Ley' }).waitFor();
        await page.locator('[data-spot="12"]').waitFor();
      }),
      whole('from-teacher-review-german', speakGerman),
      whole('from-teacher-journal-german', (page) =>
        page.getByRole('button', { name: 'Das Tagebuch' }).click(),
      ),
      whole('send', async (page) => {
        await choose(page.getByRole('radio', { name: 'English' }));
        await page.getByRole('button', { name: 'Send to my teacher' }).click();
        await page.getByRole('button', { name: 'Make the file' }).click();
        await page.locator('#made').waitFor();
      }),
      whole('send-german', speakGerman),
    ],
  },
  {
    query: '#teacher',
    shots: [
      whole('teacher-empty', (page) => page.getByRole('button', { name: 'Choose a folder' }).waitFor()),
      whole('teacher', openClass),
      screen('teacher-top', nothing),
      whole('teacher-cannot-tell', openUntold),
      whole('teacher-piano', async (page) => {
        await page.getByRole('button', { name: /^F♯ major scale/ }).click();
        await page.locator('[data-spot]').first().waitFor();
        await page.getByRole('button', { name: 'All attempts' }).click();
        await page.getByText('cents flat, as your correction showed').waitFor();
      }),
      whole('teacher-piano-german', speakGerman),
      whole('teacher-remarked', async (page) => {
        await choose(page.getByRole('radio', { name: 'English' }));
        await openRemarked(page);
      }),
      whole('teacher-example', async (page) => {
        await page.getByLabel('Your remark').fill('Count aloud, once through.');
        await page.getByRole('button', { name: 'Keep these words' }).click();
        await playExample(page);
      }),
      whole('teacher-remarked-german', speakGerman),
      whole('teacher-review', async (page) => {
        await choose(page.getByRole('radio', { name: 'English' }));
        await beginReview(page);
      }),
      whole('teacher-review-german', speakGerman),
    ],
  },
  {
    query: '#teacher',
    shots: [
      whole('teacher-class', (page) => openInventedClass(page, 40, 4)),
      screen('teacher-class-top', nothing),
      screen('teacher-class-german', speakGerman),
    ],
  },
];
