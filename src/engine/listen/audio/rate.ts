/** Every stage after the door hears one channel at this rate: partials up to 11 kHz, enough for C8's second. */
export const RATE_HZ = 22050;
