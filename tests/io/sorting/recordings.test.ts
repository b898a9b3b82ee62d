import { describe, expect, it } from 'vitest';
import { isHidden, isRecording } from '../../../src/io/sorting/recordings.ts';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('a file among recordings', () => {
  it.each([
    ['a recording without an ending', 'OggS', 'no ending', true],
    ['one that is damaged beyond telling', 'no sound at all', 'damaged.m4a', true],
    ['a picture that is called a recording, which is refused with its reason', '\x89PNG', 'song.mp3', true],
    ['sound of a kind that is not decoded', '#!AMR', 'memo', true],
    ['a text', 'Dear teacher', 'notes.txt', false],
    ['a picture', '\xff\xd8\xff', 'sheet.jpg', false],
    ['a document', '%PDF-1.7', 'sheet.pdf', false],
    ['an empty file', '', 'empty', false],
  ])('is told: %s', (_, head, name, expected) => {
    expect(isRecording(bytes(head), name)).toBe(expected);
  });

  it('is the system’s own affair by its name', () => {
    const names = ['.DS_Store', 'Thumbs.db', 'desktop.ini', '__MACOSX', '.hidden.wav', 'mine.ini', 'a.wav'];
    expect(names.filter(isHidden)).toEqual(names.slice(0, 5));
  });
});
