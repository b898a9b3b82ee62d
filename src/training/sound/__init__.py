"""Sampled and synthesised pianos, noises, the renderer, and what lies between piano and microphone."""

RATE = 22050
LOWEST = 24  # MIDI number of the lowest key that is listened for
KEYS = 80
ROW = 55125  # samples of a note in the bank: 2.5 s
LEAD = 264  # samples before the attack: 12 ms
