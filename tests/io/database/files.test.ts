import { describe, expect, it } from 'vitest';
import { laidFile, layFile, type LaidFile } from '../../../src/io/database/index.ts';

const FILE = new Blob(['sound']);

/** A database that takes some kinds only, and what lies in it. */
function databaseOf(takes: (file: LaidFile) => boolean) {
  const lies: LaidFile[] = [];
  const lay = (file: LaidFile): Promise<void> => {
    if (!takes(file)) return Promise.reject(new Error('Error preparing Blob/File data'));
    lies.push(file);
    return Promise.resolve();
  };
  return { lies, lay };
}

describe('a file is laid into a database', () => {
  it.each([
    ['as it is', () => true, Blob],
    ['as its bytes where no Blob is taken', (file: LaidFile) => !(file instanceof Blob), ArrayBuffer],
  ] as const)('%s, and comes out again', async (_, takes, kind) => {
    const { lies, lay } = databaseOf(takes);
    await layFile(FILE, lay);
    expect(lies).toHaveLength(1);
    expect(lies[0]).toBeInstanceOf(kind);
    expect(await laidFile(lies[0])!.text()).toBe('sound');
  });

  it('or not at all, and says why', async () => {
    const { lay } = databaseOf(() => false);
    await expect(layFile(FILE, lay)).rejects.toThrow('Error preparing');
    expect(laidFile(undefined)).toBeNull();
  });
});
