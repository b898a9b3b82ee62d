"""Where a recorded note begins and how it is tuned; one definition for every piano."""

import numpy as np
from scipy.signal import butter, sosfilt

HIGH_PASS = {hz: butter(4, hz, "hp", fs=44100, output="sos") for hz in (60, 200)}


def onset_of(sound, midi):
    """Seconds at which a millisecond's RMS first lies within 30 dB, and within 20 dB, of the loudest of the first 0.3 s
    (high-passed at 200 Hz, below MIDI 48 at 60 Hz); 44.1 kHz."""
    y = sosfilt(HIGH_PASS[200 if midi >= 48 else 60], sound[:66150])
    total = np.cumsum(np.concatenate([[0], y**2]))
    at = np.arange(len(y))
    first, last = np.maximum(0, at - 22), np.minimum(len(y), at + 22)
    level = np.sqrt(np.maximum(0, (total[last] - total[first]) / 44))
    loudest = level[:13230].max()
    if loudest < level.max() * 10**-0.6:
        loudest = level.max()
    reach = [int(np.argmax(level >= loudest * 10 ** (-db / 20))) / 44100 for db in (30, 20)]
    return reach[0], reach[1]


def cents_of(sound, midi, onset):
    """Distance from equal temperament at 440 Hz by the stronger of two low partials; 0 where too short or absurd."""
    y = sound[int((onset + 0.05) * 44100) : int((onset + 2.05) * 44100)]
    if len(y) < 8000:
        return 0.0
    size = 1 << 19
    spectrum = np.abs(np.fft.rfft(y * np.hanning(len(y)), size))
    first = 440 * 2 ** ((midi - 69) / 12)
    best = None
    for partial in (1, 2) if midi > 40 else (2, 3, 4):
        low, high = (int(first * partial * 2 ** (c / 1200) * size / 44100) for c in (-60, 60))
        at = low + int(np.argmax(spectrum[low : high + 2]))
        if best is None or spectrum[at] > best[0] * 2:
            best = (spectrum[at], 1200 * np.log2(at * 44100 / size / (first * partial)))
    return float(best[1]) if abs(best[1]) <= 45 else 0.0
