"""The listening network in plain numpy, written from the definitions of features.py and net.py and from nothing of the
TypeScript: the truth that the tests of src/engine/listen/network compare with. Nothing here is fast."""

import math

import numpy as np

RATE_HZ = 22050
BINS_PER_OCTAVE = 36
LOWEST_KEY, KEYS = 24, 80
BINS, BINS_BELOW = 390, 40  # log bins; those below the lowest key's own
BANDS = 8
OFFSETS = (-28, -24, -19, -12, -7, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 7, 12, 19, 24)
LONG, MIDDLE, SHORT = 4096, 1024, 256
LONG_AT = (0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8)  # harmonics at which each spectrum is looked at
MIDDLE_AT = (0.5, 1, 2, 3, 4, 5, 6, 8)
SHORT_AT = (1, 2, 3, 4, 6, 8)


def octave_bins(harmonic):
    return round(BINS_PER_OCTAVE * math.log2(harmonic))


class Shape:
    """The network's. Views: (spectrum's length, its centre after the frame's, samples, bin offsets from a key)."""

    hop, dilations, steps = 512, (1, 1, 2, 2, 1), (-3, -2, -1, 0, 1)
    peak_reach, time_reach = 1, 1
    # Belief of a strike: what the chances of five frames sum to, over this. A sure one's target sums to 1.504 and, where struck
    # cells weigh twice, what is heard to 1.49 to 1.79: over less, dampers and octaves' ghosts are as sure as strikes (README.md).
    full_sum = 1.8
    # added to the log odds of a strike: struck cells that weigh only twice make it believe too little where both hands play
    onset_lift = 0.4

    def __init__(self):
        long_bins = [octave_bins(h) + j for h in LONG_AT for j in (-1, 0, 1)] + [-2, 2]
        middle_bins = [octave_bins(h) + j for h in MIDDLE_AT for j in (-1, 1)]
        short_bins = [octave_bins(h) for h in SHORT_AT]
        self.views = (
            [(LONG, 0, long_bins)]
            + [(MIDDLE, moment, middle_bins) for moment in (-256, 0)]
            + [(SHORT, moment, short_bins) for moment in (-256, -128, 0, 128)]
        )

    def back(self):
        """frames before and after the one spoken of that the network looks at"""
        return -min(self.steps) * sum(self.dilations)

    def ahead(self):
        return max(self.steps) * sum(self.dilations)


def bin_hz(cents):
    i = np.arange(BINS) - BINS_BELOW
    return 440 * 2 ** ((LOWEST_KEY - 69) / 12 + i / BINS_PER_OCTAVE + cents / 1200)


def triangles(size, cents):
    """(bins, size/2+1): weights of each log bin on the power spectrum; each row sums to 1, rows near Nyquist are 0."""
    centre = bin_hz(cents)
    fft_hz = np.arange(size // 2 + 1) * RATE_HZ / size
    half = np.maximum(centre * (2 ** (1 / BINS_PER_OCTAVE) - 1), RATE_HZ / size)
    weights = np.maximum(0, 1 - np.abs(fft_hz[None] - centre[:, None]) / half[:, None])
    weights /= np.maximum(weights.sum(1, keepdims=True), 1e-9)
    weights[centre > RATE_HZ / 2 * 0.98] = 0
    return weights


def features(shape, samples, cents, frames):
    """(views, frames, bins); silence lies around the samples."""
    banks = {size: triangles(size, cents) for size, _, _ in shape.views}
    out = []
    for size, moment, _ in shape.views:
        window = 0.5 - 0.5 * np.cos(2 * np.pi * np.arange(size) / size)
        rows = []
        for t in frames:
            at = t * shape.hop + moment - size // 2 + np.arange(size)
            inside = (at >= 0) & (at < len(samples))
            part = np.where(inside, samples[np.clip(at, 0, len(samples) - 1)], 0.0)
            spectrum = np.fft.rfft(part * window / (size / 4))
            rows.append((np.log10(banks[size] @ np.abs(spectrum) ** 2 + 1e-9) + 6) / 2)
        out.append(rows)
    return np.array(out)


def batch_norm(x, p, name):
    scale = p[name + ".weight"] / np.sqrt(p[name + ".running_var"] + 1e-5)
    return (x - p[name + ".running_mean"]) * scale + p[name + ".bias"]


def network(shape, p, feature, first_key=0, last_key=KEYS - 1):
    """features of consecutive frames → (frames − back − ahead, keys, 4). Time is never padded: the outputs are those of the
    frames that have all their neighbours. Keys outside first..last are silent for the others."""
    keys = np.arange(first_key, last_key + 1)
    seen = feature - 1.5
    taps = [seen[view][:, BINS_BELOW + 3 * keys + b] for view, (_, _, bins) in enumerate(shape.views) for b in bins]
    edges = [i * BINS // BANDS for i in range(BANDS + 1)]
    bands = [seen[view][:, a:b].mean(1) for view in range(len(shape.views)) for a, b in zip(edges, edges[1:])]
    x = np.einsum("ntk,cn->tkc", np.array(taps), p["stem"])
    x = x + p["pos"][:, 0, 0, keys].T + (np.array(bands).T @ p["band"].T)[:, None]
    x = np.maximum(batch_norm(x, p, "bn"), 0)
    for index, dilation in enumerate(shape.dilations):
        name = f"b.{index}."
        first = -min(shape.steps) * dilation
        count = len(x) - (max(shape.steps) - min(shape.steps)) * dilation
        smeared = sum(
            p[name + "t"][:, j] * x[first + step * dilation : first + step * dilation + count]
            for j, step in enumerate(shape.steps)
        )
        wide = np.pad(smeared, ((0, 0), (99, 99), (0, 0)))
        spread = sum(p[name + "k"][:, j] * wide[:, 99 + o : 99 + o + len(keys)] for j, o in enumerate(OFFSETS))
        dense = batch_norm(spread @ p[name + "w"].T, p, name + "bn")
        x = x[first : first + count] + np.maximum(dense, 0)
    return x @ p["out.weight"].T + p["out.bias"]
