"""A checkpoint of train.py → the engine's weights.ts (batch norm merged into the convolutions, float16, base64) and
tests/engine/listen/network/reference.json (a sound of known formula, its features and outputs by reference.py).

    python3 -m listener.export OUT/listener.pt        # from src/training; numpy only; then prettier"""

import base64
import json
import os
import sys

import numpy as np

from checkpoint import read

from . import reference

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.normpath(os.path.join(HERE, "../../.."))


def merged(p, shape):
    """parameters → list of arrays in the order in which the engine reads them (listen/network/parameters.ts)"""
    scale = p["bn.weight"] / np.sqrt(p["bn.running_var"] + 1e-5)
    key_bias = (p["pos"][:, 0, 0, :].T - p["bn.running_mean"]) * scale + p["bn.bias"]
    out = [p["stem"] * scale[:, None], p["band"] * scale[:, None], key_bias]
    for index in range(len(shape.dilations)):
        name = f"b.{index}."
        scale = p[name + "bn.weight"] / np.sqrt(p[name + "bn.running_var"] + 1e-5)
        # What is smeared over time and keys never grows: the dense weights carry the factors.
        time = np.abs(p[name + "t"]).sum(1)
        keys = np.abs(p[name + "k"]).sum(1)
        out += [
            p[name + "t"] / time[:, None],
            p[name + "k"] / keys[:, None],
            p[name + "w"] * scale[:, None] * (time * keys)[None],
            p[name + "bn.bias"] - p[name + "bn.running_mean"] * scale,
        ]
    return out + [p["out.weight"], p["out.bias"]]


def write_weights(arrays, shape, p):
    flat = np.concatenate([a.ravel() for a in arrays])
    half = flat.astype("<f2")
    if not np.isfinite(half).all():
        raise SystemExit("a merged weight does not fit float16")
    text = base64.b64encode(half.tobytes()).decode()

    def row(values):
        return "[" + ", ".join(str(v) for v in values) + "]"

    views = "".join(
        f"      {{ size: {size}, momentSamples: {moment}, bins: {row(bins)} }},\n" for size, moment, bins in shape.views
    )
    with open(os.path.join(ROOT, "src/engine/listen/network/weights.ts"), "w") as file:
        file.write(f"""// Written by src/training/listener/export.py; do not edit.
import type {{ PackedNetwork }} from './types.ts';

/** The trained network: its shape, and its weights as float16 in base64 in the order of `unpackParameters`. */
export const TRAINED_NETWORK: PackedNetwork = {{
  shape: {{
    rateHz: {reference.RATE_HZ},
    hop: {shape.hop},
    lowestMidi: {reference.LOWEST_KEY},
    keys: {reference.KEYS},
    binsPerOctave: {reference.BINS_PER_OCTAVE},
    bins: {reference.BINS},
    binsBelow: {reference.BINS_BELOW},
    views: [
{views}    ],
    bands: {reference.BANDS},
    channels: {len(p["bn.weight"])},
    steps: {row(shape.steps)},
    dilations: {row(shape.dilations)},
    keyOffsets: {row(reference.OFFSETS)},
  }},
  peaks: {{ reach: {shape.peak_reach}, timeReach: {shape.time_reach}, sumReach: 2, fullSum: {shape.full_sum} }},
  float16Base64:
    '{text}',
}};
""")
    return len(flat)


def test_sound():
    """Three struck tones and a hiss from a linear congruential generator, by formulas that the test repeats."""
    n = 33075
    t = np.arange(n) / reference.RATE_HZ
    sound = np.zeros(n)
    for onset, hz, level in ((0.55, 220.0, 0.1), (0.57, 277.2, 0.06), (0.8, 1318.5, 0.05)):
        since = np.maximum(t - onset, 0)
        for k in range(1, 9):
            sound += (t >= onset) * level / k * np.exp(-3 * k * since) * np.sin(2 * np.pi * hz * k * since)
    state, hiss = 1, np.zeros(n)
    for i in range(n):
        state = (1664525 * state + 1013904223) % 2**32
        hiss[i] = state / 2**31 - 1
    return sound + 0.0005 * hiss


def write_reference(p, shape):
    cents = -15
    sound = test_sound()
    frames = [round(sec * reference.RATE_HZ / shape.hop) for sec in (0.55, 0.575, 0.7, 0.8)]
    first, last = frames[0] - shape.back(), frames[-1] + shape.ahead()
    feature = reference.features(shape, sound, cents, range(first, last + 1))
    outputs = reference.network(shape, p, feature)
    narrow = reference.network(shape, p, feature, 24, 63)

    def rounded(a, digits):
        return [float(f"{v:.{digits}f}") for v in np.asarray(a).ravel()]

    result = {
        "madeBy": "src/training/listener/export.py with reference.py (numpy)",
        "cents": cents,
        "samples": rounded(sound[[0, 12128, 20000]], 9),
        "frames": [
            {
                "frame": f,
                "features": [rounded(view[f - first], 4) for view in feature],
                "outputs": rounded(outputs[f - frames[0]], 3),
                "outputsOfKeys24To63": rounded(narrow[f - frames[0]], 3),
            }
            for f in frames
        ],
    }
    folder = os.path.join(ROOT, "tests/engine/listen/network")
    os.makedirs(folder, exist_ok=True)
    with open(os.path.join(folder, "reference.json"), "w") as file:
        json.dump(result, file, separators=(",", ":"))
    print("largest onset probability in the reference:", 1 / (1 + np.exp(-outputs[..., 0].max())))


def main():
    if len(sys.argv) != 2:
        raise SystemExit(__doc__)
    trained = read(sys.argv[1])
    # the running mean of the weights over the last steps, which is what the training evaluates
    p = {name: value.astype(np.float64) for name, value in trained["mean"].items() if value.dtype.kind == "f"}
    shape = reference.Shape()
    p["out.bias"][0] += shape.onset_lift
    print(write_weights(merged(p, shape), shape, p), "weights")
    write_reference(p, shape)


if __name__ == "__main__":
    main()
