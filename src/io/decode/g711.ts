/**
 * Telephone sound of eight bits a sample, whose steps grow with its level (ITU-T G.711, 1988): each of the 256 codes → its
 * sample, −1..1. Full scale of 16 bits stands for 4 · 8192 in the µ-law of 14 bits and 8 · 4096 in the A-law of 13.
 */
const FULL_SCALE = 32_768;
/** What µ-law adds before it finds the segment: 33 of 14 bits (tables 2a and 2b, decision values). */
const MU_LAW_BIAS = 33 * 4;
/** A-law inverts every other bit on the line (section 3.2). */
const EVEN_BITS = 0x55;

export const MU_LAW = Float32Array.from({ length: 256 }, (_, code) => {
  const inverted = ~code & 0xff;
  const level = (((inverted & 15) * 8 + MU_LAW_BIAS) << ((inverted >> 4) & 7)) - MU_LAW_BIAS;
  return (inverted >= 0x80 ? -level : level) / FULL_SCALE;
});

export const A_LAW = Float32Array.from({ length: 256 }, (_, code) => {
  const bits = code ^ EVEN_BITS;
  const segment = (bits >> 4) & 7;
  const inSegment = (bits & 15) * 16 + 8;
  const level = segment === 0 ? inSegment : (inSegment + 256) << (segment - 1);
  return (bits >= 0x80 ? level : -level) / FULL_SCALE;
});
