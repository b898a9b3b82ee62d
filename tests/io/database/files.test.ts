import { describe, expect, it } from 'vitest';
import { laidFile, layFile, type LaidFile } from '../../../src/io/database/index.ts';

const FILE = new Blob(['sound']);

describe('a file is laid into a database', () => {
  it.each([
    ['as it is', true, Blob],
    ['as its bytes where no Blob is taken', false, ArrayBuffer],
  ] as const)('%s, and comes out again', async (_, takesBlobs, kind) => {
    const lies: LaidFile[] = [];
    const lay = async (file: LaidFile): Promise<void> => void lies.push(file);
    await layFile(FILE, lay, () => Promise.resolve(takesBlobs));
    expect(lies).toHaveLength(1);
    expect(lies[0]).toBeInstanceOf(kind);
    expect(await laidFile(lies[0])!.text()).toBe('sound');
  });

  it('and where nothing lies, nothing comes out', () => {
    expect(laidFile(undefined)).toBeNull();
  });
});
