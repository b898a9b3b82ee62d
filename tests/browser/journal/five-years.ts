import type { Page } from 'playwright-core';
import { allChoices, summarise } from '../../../src/engine/index.ts';
import { drawerOf } from '../../../src/io/history/drawers.ts';
import { nameFor } from '../../../src/io/history/entry.ts';
import type { Entry } from '../../../src/io/history/index.ts';
import { packDrawer } from '../../../src/io/history/packing.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

/** Five years, twenty attempts a day: what the journal is to open. */
export const ATTEMPTS = 36_500;

export interface Seeding {
  readonly attempts: number;
  /** attempts a day */
  readonly aDay: number;
  /** the whole reports too, not only the entries */
  readonly reports: boolean;
}

const DAY_MS = 86_400_000;
const { report } = invent(INVENTED.lateThumb);
const SUMMARY = summarise(report);
const CHOICES = allChoices().filter(
  ({ octaves, minorScale }) => octaves <= 2 && (minorScale ?? 'harmonic') === 'harmonic',
);

/** An invented history, backwards from now: four exercises a fortnight, over and over, each growing more even. */
function inventHistory({ attempts, aDay }: Seeding): readonly Entry[] {
  const now = Date.now();
  return Array.from({ length: attempts }, (_, index): Entry => {
    const before = attempts - 1 - index;
    const whenMs = now - Math.floor(before / aDay) * DAY_MS - ((before % aDay) + 1) * 90_000;
    const fortnight = Math.floor(index / (14 * aDay));
    const exercise = CHOICES[(fortnight * 4 + (index % 4)) % CHOICES.length]!;
    const within = (index % (14 * aDay)) / (14 * aDay);
    return {
      id: nameFor(whenMs, index.toString(16).padStart(8, '0')),
      whenMs,
      state: 'told',
      name: 'your recording',
      remarks: [],
      device: 'invented',
      choice: exercise,
      targetBpm: 80,
      durationSec: 6.5,
      soundBytes: 0,
      reason: '',
      summary: {
        ...SUMMARY,
        exercise,
        missed: index % 17 === 0 ? 1 : 0,
        lateCrossings: within < 0.5 && index % 3 === 0 ? 1 : 0,
        evennessPercent: 11 - 6 * within + 3 * Math.abs(Math.sin(index * 12.9898)),
        tempoBpm: 78 + (index % 5),
      },
      deletedMs: null,
    };
  });
}

/** Writes an invented history into the journal of a page of the built site; the journal must not be open there yet. */
export async function seedJournal(page: Page, seeding: Seeding): Promise<void> {
  const entries = inventHistory(seeding);
  const drawers = new Map<number, Entry[]>();
  for (const entry of entries) {
    const key = drawerOf(entry.id);
    if (!drawers.has(key)) drawers.set(key, []);
    drawers.get(key)!.push(entry);
  }
  await page.evaluate(
    async (seed) => {
      const opening = indexedDB.open('evenfall-journal', 1);
      opening.onupgradeneeded = () => {
        for (const name of ['drawers', 'reports', 'sounds', 'remembered'])
          opening.result.createObjectStore(name);
      };
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        opening.onsuccess = () => resolve(opening.result);
        opening.onerror = () => reject(opening.error);
      });
      const transaction = database.transaction(['drawers', 'reports'], 'readwrite');
      for (const [key, text] of seed.drawers) transaction.objectStore('drawers').put(text, key);
      for (const id of seed.ids) transaction.objectStore('reports').put(seed.report, id);
      await new Promise<void>((resolve, reject) => {
        transaction.oncomplete = () => resolve();
        transaction.onabort = () => reject(transaction.error);
      });
      database.close();
    },
    {
      drawers: [...drawers].map(([key, some]) => [key, packDrawer(some)] as const),
      ids: seeding.reports ? entries.map(({ id }) => id) : [],
      report,
    },
  );
}
