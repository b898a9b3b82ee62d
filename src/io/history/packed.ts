/** Pieces of an archive, one after the other → one file, through the browser's gzip: never all of it in memory at a time. */
export function packed(pieces: AsyncGenerator<Uint8Array<ArrayBuffer>>): Promise<Blob> {
  const stream = streamOf(pieces).pipeThrough(new CompressionStream('gzip'));
  return new Response(stream, { headers: { 'content-type': 'application/gzip' } }).blob();
}

/** Pieces → a stream that asks for the next one when it has room. (`ReadableStream.from` is not in every browser yet.) */
function streamOf(pieces: AsyncGenerator<Uint8Array<ArrayBuffer>>): ReadableStream<Uint8Array<ArrayBuffer>> {
  return new ReadableStream({
    pull: async (controller) => {
      const next = await pieces.next();
      if (next.done === true) controller.close();
      else controller.enqueue(next.value);
    },
    cancel: async () => void (await pieces.return(undefined)),
  });
}

/** The archive inside the file, packed by gzip or not, with word of how much of the file has been read. */
export async function unpacked(
  file: Blob,
  onProgress: (share: number) => void,
): Promise<ReadableStream<Uint8Array>> {
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  let read = 0;
  const counted = file.stream().pipeThrough(
    new TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>({
      transform: (block, controller) => {
        read += block.length;
        onProgress(file.size === 0 ? 1 : read / file.size);
        controller.enqueue(block);
      },
    }),
  );
  // The two bytes of gzip (RFC 1952).
  return first === 0x1f && second === 0x8b ? counted.pipeThrough(new DecompressionStream('gzip')) : counted;
}
