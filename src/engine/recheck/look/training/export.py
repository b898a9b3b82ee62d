"""A checkpoint of train.py → ../weights.ts (float16, base64) and tests/engine/recheck/look/reference.json (a sound of known
formula, what the look sees of it and says, by the numpy code below, which shares nothing with the TypeScript).

    python3 export.py look.pt

Needs numpy only."""

import base64
import json
import math
import os
import sys

import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.normpath(os.path.join(HERE, "../../../../.."))
sys.path.insert(0, os.path.join(ROOT, "src/engine/listen/network/training"))
import checkpoint  # noqa: E402

RATE = 22050
VIEWS = [(4096, -3072, 1024, 8), (1024, -1536, 256, 19), (256, -1280, 128, 26)]
NAMES = ["a.0", "a.1", "a.2", "b.0", "b.1", "b.2", "c.0", "c.1", "d", "e", "s", "f", "h", "g", "k", "l", "m"]


def strips(key, cents):
    f0 = 440 * 2 ** ((key - 69 + cents / 100) / 12)
    b = math.exp(0.0926 * key - 13.64) + math.exp(-0.0847 * key - 5.82)
    stiff = lambda h, b: h * math.sqrt(1 + b * h * h)
    own = [f0 * stiff(h, b) for h in range(1, 9)]
    below = [f0 * stiff(h, 0.75 * b) for h in (0.5, 1.5, 2.5, 3.5, 1 / 3, 2 / 3, 4 / 3, 5 / 3)]
    beside = [f0 * h * 2 ** (d / 12) for h in (1, 2, 3) for d in (-1, 1)]
    return np.array(own + below + beside)


def look_through(x, centre, freq, view):
    size, first, hop, frames = view
    m = np.arange(-size // 2, size // 2)
    span = np.minimum(size, 2.2e6 / freq)
    window = (0.5 + 0.5 * np.cos(2 * np.pi * m[:, None] / span)) * (np.abs(m)[:, None] < span / 2) * 4 / span
    turn = np.exp(-2j * np.pi * freq * m[:, None] / RATE)
    padded = np.concatenate([np.zeros(20000), x, np.zeros(20000)])
    out = []
    for frame in range(frames):
        at = centre + first + frame * hop + 20000
        power = np.abs(padded[at + m] @ (window * turn)) ** 2
        out.append((np.log10(power + 1e-9) + 4) / 2)
    return np.where(freq < 10000, np.array(out), -2.5)


def glance(p, views, written, told):
    """Alone: the answer, and what it is compared by."""
    relu = lambda v: np.maximum(v, 0)
    lin = lambda name, v: v @ p[name + ".weight"].T + p[name + ".bias"]
    parts = []
    for i, v in enumerate(views):
        u = relu(lin(f"b.{i}", relu(lin(f"a.{i}", v))))
        if i > 0:
            w, bias = p[f"c.{i-1}.weight"], p[f"c.{i-1}.bias"]
            kept = (len(u) - 3) // 2 + 1
            u = relu(np.array([np.einsum("oik,ki->o", w, u[2 * t : 2 * t + 3]) + bias for t in range(kept)]))
        parts.append(u.ravel())
    u, q = relu(lin("d", np.concatenate(parts))), relu(lin("s", told))
    last = lin("h", relu(lin("f", np.concatenate([u, relu(lin("e", written)), q]))))
    levels = np.concatenate([views[0][3:7].ravel()] + [views[1][a:b].mean(0) for a, b in ((6, 8), (8, 11), (11, 15), (15, 19))])
    add = np.array([told[0], told[1], 0])
    return {"out": lin("g", relu(last)) + add, "levels": levels, "u": u, "q": q, "last": last, "add": add}


def beside(p, own, twins):
    """The answer with twins."""
    relu = lambda v: np.maximum(v, 0)
    lin = lambda name, v: v @ p[name + ".weight"].T + p[name + ".bias"]
    chance = [1 / (1 + math.exp(-one["out"][0])) for one in twins]
    apart = [own["levels"] - one["levels"] for one in twins]
    mean = lambda rows: np.mean(np.array(rows), axis=0)
    struck, silent = mean([c * a for c, a in zip(chance, apart)]), mean([(1 - c) * a for c, a in zip(chance, apart)])
    z = np.concatenate([own["u"], own["q"], struck, silent, mean([one["q"] for one in twins]), [np.mean(chance)]])
    added = relu(lin("l", relu(lin("k", z)))) @ p["m.weight"].T
    return lin("g", relu(own["last"] + added)) + own["add"]


def test_sound():
    """Three struck tones and a hiss, by formulas that the test repeats (as for the blind ear's network)."""
    n = 33075
    t = np.arange(n) / RATE
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


def main():
    trained = checkpoint.read(sys.argv[1])
    p = {k: v.astype(np.float64) for k, v in trained["ema"].items()}
    flat = np.concatenate([np.concatenate([p[n + part].ravel() for part in (".weight", ".bias") if n + part in p]) for n in NAMES]).astype("<f2")
    if not np.isfinite(flat).all():
        raise SystemExit("a weight does not fit float16")
    size = lambda n: len(p[n + ".bias"])
    with open(os.path.join(HERE, "../weights.ts"), "w") as file:
        file.write(
            f"""// Written by training/export.py; do not edit.
import type {{ PackedLook }} from './types.ts';

/** The closer look as trained. */
export const TRAINED_LOOK: PackedLook = {{
  sizes: {{
    mixed: {size("a.0")},
    channels: {size("b.0")},
    seen: {size("d")},
    written: {size("e")},
    told: {size("s")},
    joined: {size("f")},
    last: {size("h")},
    compared: {size("k")},
    compressed: {size("l")},
  }},
  float16Base64:
    '{base64.b64encode(flat.tobytes()).decode()}',
}};
"""
        )
    half = {}
    at = 0
    for n in NAMES:
        for part in (".weight", ".bias"):
            if n + part not in p:
                continue
            v = p[n + part]
            half[n + part] = flat[at : at + v.size].astype(np.float64).reshape(v.shape)
            at += v.size
    sound = test_sound().astype(np.float32).astype(np.float64)
    cases, glances = [], []
    for key, sec in ((57, 0.553), (69, 0.553), (61, 0.56), (88, 0.8), (28, 1.4501)):
        freq = strips(key, -15)
        views = [look_through(sound * 1.25, round(sec * RATE), freq, v) for v in VIEWS]
        written = np.zeros(222)
        for step, midis in enumerate(([57, 61, 69], [52, 57], [60, 64])):
            for midi in midis:
                if abs(midi - key) <= 36:
                    written[step * 73 + midi - key + 36] = 1
        written[219:] = math.log2(0.3 / 0.25), math.log2(1.5 / 0.25), (key - 60) / 24
        none = [math.log(0.005 / 0.995), 0, -3, 0]
        told = none * 19 + [1.5, -2 / 6] + [0, -0.5]
        told[:4] = math.log(0.4 / 0.6), 1.2, 0.5, 0.7
        seen = glance(half, views, written, np.array(told))
        glances.append(seen)
        r = lambda a: [float(f"{v:.4f}") for v in np.asarray(a).ravel()]
        cases.append({"midi": key, "timeSec": sec, "strips": r(freq), "levels": [r(v) for v in views], "out": r(seen["out"])})
    for at, one in enumerate(cases):
        one["besideTwins"] = r(beside(half, glances[at], [g for other, g in enumerate(glances) if other != at][:2]))
    folder = os.path.join(ROOT, "tests/engine/recheck/look")
    os.makedirs(folder, exist_ok=True)
    with open(os.path.join(folder, "reference.json"), "w") as file:
        json.dump({"madeBy": "src/engine/recheck/look/training/export.py (numpy)", "cases": cases}, file, separators=(",", ":"))
    print(len(flat), "weights")


if __name__ == "__main__":
    main()
