"""A checkpoint of train.py → the engine's weights.ts (float16, base64) and the tests' reference.json: a sound of known formula,
what the look sees of it and says, by the numpy code below, which shares nothing with the TypeScript.

    python3 -m look.export OUT/look-middle.pt        # from src/training; numpy only; then prettier"""

import base64
import json
import math
import os
import sys

import numpy as np

from checkpoint import read

HERE = os.path.dirname(os.path.abspath(__file__))
ROOT = os.path.normpath(os.path.join(HERE, "../../.."))
RATE = 22050
# window, samples to the first middle, hop, frames: long, middle, short, held
VIEWS = ((4096, -3072, 1024, 8), (1024, -1536, 256, 19), (256, -1280, 128, 26), (4096, 6144, 2048, 5))
HELD, HELD_CLEAR = 3, 1024
LAYERS = [f"{name}.{i}" for name, count in (("mixed", 4), ("channels", 4), ("halved", 2)) for i in range(count)]
LAYERS += ["seen", "written", "told", "joined", "last", "out", "compared", "compressed", "added"]
# added to the log odds of struck or not: the bounds of src/engine/recheck lie where an earlier look's zero was
STRUCK_LIFT = 0.25
SIZES = ("mixed", "channels", "seen", "written", "told", "joined", "last", "compared", "compressed")


def relu(value):
    return np.maximum(value, 0)


def strips(key, cents):
    first = 440 * 2 ** ((key - 69 + cents / 100) / 12)
    b = math.exp(0.0926 * key - 13.64) + math.exp(-0.0847 * key - 5.82)
    own = [first * h * math.sqrt(1 + b * h * h) for h in range(1, 9)]
    lower = (0.5, 1.5, 2.5, 3.5, 1 / 3, 2 / 3, 4 / 3, 5 / 3, 0.75, 1.25)
    below = [first * h * math.sqrt(1 + 0.75 * b * h * h) for h in lower]
    return np.array(own + below + [first * h * 2 ** (d / 12) for h in (1, 2, 3) for d in (-1, 1)])


def look_through(sound, centre, hz, view):
    size, first, hop, frames = view
    m = np.arange(-size // 2, size // 2)
    span = np.minimum(size, 2.2e6 / hz)
    window = (0.5 + 0.5 * np.cos(2 * np.pi * m[:, None] / span)) * (np.abs(m)[:, None] < span / 2) * 4 / span
    turn = np.exp(-2j * np.pi * hz * m[:, None] / RATE)
    padded = np.concatenate([np.zeros(40000), sound, np.zeros(40000)])
    out = []
    for frame in range(frames):
        at = centre + first + frame * hop + 40000
        power = np.abs(padded[at + m] @ (window * turn)) ** 2
        out.append((np.log10(power + 1e-9) + 4) / 2)
    return np.where(hz < 10000, np.array(out), -2.5)


def look(sound, centre, hz, until):
    """The four views; held frames that the next step would reach into are 0."""
    seen = [look_through(sound, centre, hz, view) for view in VIEWS]
    _, first, hop, frames = VIEWS[HELD]
    clear = first + hop * np.arange(frames) + HELD_CLEAR <= until * RATE
    seen[HELD] = np.where(clear[:, None], seen[HELD], 0)
    return seen


def compared_levels(views):
    parts = [views[1][a:b].mean(0) for a, b in ((6, 8), (8, 11), (11, 15), (15, 19))]
    return np.concatenate([views[0][3:7].ravel()] + parts)


class Net:
    def __init__(self, weights):
        self.weights = weights

    def layer(self, name, value):
        bias = self.weights.get(name + ".bias", 0)
        return value @ self.weights[name + ".weight"].T + bias

    def once(self, views, written, told):
        """The answer of a key by itself, and what it is compared by."""
        read = []
        for i, view in enumerate(views):
            u = relu(self.layer(f"channels.{i}", relu(self.layer(f"mixed.{i}", view))))
            if i in (1, 2):
                w, bias = self.weights[f"halved.{i - 1}.weight"], self.weights[f"halved.{i - 1}.bias"]
                kept = (len(u) - 3) // 2 + 1
                u = relu(np.array([np.einsum("oik,ki->o", w, u[2 * t : 2 * t + 3]) + bias for t in range(kept)]))
            read.append(u.ravel())
        seen, said = relu(self.layer("seen", np.concatenate(read))), relu(self.layer("told", told))
        joined = np.concatenate([seen, relu(self.layer("written", written)), said])
        last, word = self.layer("last", relu(self.layer("joined", joined))), np.array([told[0], told[1], 0])
        out = self.layer("out", relu(last)) + word
        return dict(out=out, levels=compared_levels(views), seen=seen, told=said, last=last, word=word)

    def beside(self, own, twins, other=None, alone=None):
        """The answer beside twins, and beside the levels that the other hand's keys and its own hand's had alone."""
        chance = [1 / (1 + math.exp(-one["out"][0])) for one in twins]
        apart = [own["levels"] - one["levels"] for one in twins]
        nothing = np.zeros_like(own["levels"])

        def mean(rows, otherwise):
            return np.mean(np.array(rows), axis=0) if rows else otherwise

        struck = mean([c * a for c, a in zip(chance, apart)], nothing)
        silent = mean([(1 - c) * a for c, a in zip(chance, apart)], nothing)
        told = mean([one["told"] for one in twins], np.zeros_like(own["told"]))
        known = [own["levels"] - levels if levels is not None else nothing for levels in (other, alone)]
        has = [float(bool(twins)), float(other is not None), float(alone is not None)]
        z = [
            own["seen"],
            own["told"],
            struck,
            silent,
            told,
            [np.mean(chance) if twins else 0],
            has[:1],
            *known,
            has[1:],
        ]
        added = self.layer("added", relu(self.layer("compressed", relu(self.layer("compared", np.concatenate(z))))))
        return self.layer("out", relu(own["last"] + added * max(has))) + own["word"]


def test_sound():
    """Three struck tones and a hiss, by formulas that the test repeats."""
    t = np.arange(33075) / RATE
    sound = np.zeros(len(t))
    for onset, hz, level in ((0.55, 220.0, 0.1), (0.57, 277.2, 0.06), (0.8, 1318.5, 0.05)):
        since = np.maximum(t - onset, 0)
        for k in range(1, 9):
            sound += (t >= onset) * level / k * np.exp(-3 * k * since) * np.sin(2 * np.pi * hz * k * since)
    state, hiss = 1, np.zeros(len(t))
    for i in range(len(t)):
        state = (1664525 * state + 1013904223) % 2**32
        hiss[i] = state / 2**31 - 1
    return (sound + 0.0005 * hiss).astype(np.float32).astype(np.float64)


def inputs(key):
    """What is written and what the blind ear said, as the test says it."""
    written = np.zeros(222)
    for step, midis in enumerate(([57, 61, 69], [52, 57], [60, 64])):
        for midi in midis:
            if abs(midi - key) <= 36:
                written[step * 73 + midi - key + 36] = 1
    written[219:] = math.log2(0.3 / 0.25), math.log2(1.5 / 0.25), (key - 60) / 24
    none = [math.log(0.005 / 0.995), 0, -3, 0]
    told = none * 19 + [1.5, -2 / 6] + [0, -0.5]
    told[:4] = math.log(0.4 / 0.6), 1.2, 0.5, 0.7
    return written, np.array(told)


def packed(weights):
    """All layers one after the other, float16."""
    flat = [weights[name + part].ravel() for name in LAYERS for part in (".weight", ".bias") if name + part in weights]
    flat = np.concatenate(flat).astype("<f2")
    if not np.isfinite(flat).all():
        raise SystemExit("a weight does not fit float16")
    return flat


def unpacked(flat, weights):
    out, at = {}, 0
    for name in (name + part for name in LAYERS for part in (".weight", ".bias") if name + part in weights):
        size = weights[name].size
        out[name] = flat[at : at + size].astype(np.float64).reshape(weights[name].shape)
        at += size
    return out


def write_weights(flat, sizes):
    lines = "".join(f"    {name}: {sizes[name]},\n" for name in SIZES)
    with open(os.path.join(ROOT, "src/engine/recheck/look/weights.ts"), "w") as file:
        file.write(
            "// Written by src/training/look/export.py; do not edit.\n"
            "import type { PackedLook } from './types.ts';\n\n"
            "/** The closer look as trained. */\n"
            "export const TRAINED_LOOK: PackedLook = {\n"
            f"  sizes: {{\n{lines}  }},\n"
            f"  float16Base64:\n    '{base64.b64encode(flat.tobytes()).decode()}',\n}};\n"
        )


def rounded(values):
    return [float(f"{value:.4f}") for value in np.asarray(values).ravel()]


def reference(net):
    sound, cases, glances = test_sound(), [], []
    for key, sec, until in ((57, 0.553, 1.5), (69, 0.553, 0.5), (61, 0.56, 0.2), (88, 0.8, 1.5), (28, 1.4501, 1.5)):
        hz = strips(key, -15)
        views = look(sound * 1.25, round(sec * RATE), hz, until)
        written, told = inputs(key)
        written[220] = math.log2(until / 0.25)
        glance = net.once(views, written, told)
        glances.append(glance)
        seen = [rounded(view) for view in views]
        case = dict(midi=key, timeSec=sec, untilSec=until, strips=rounded(hz), levels=seen, out=rounded(glance["out"]))
        cases.append(case)
    for at, case in enumerate(cases):
        rest = [one for other, one in enumerate(glances) if other != at]
        own = glances[at]
        case["besideTwins"] = rounded(net.beside(own, rest[:2]))
        case["besideOther"] = rounded(net.beside(own, [], other=rest[2]["levels"]))
        case["besideAll"] = rounded(net.beside(own, rest[:2], rest[2]["levels"], rest[3]["levels"]))
    return cases


def main():
    trained = read(sys.argv[1])
    weights = {name: value.astype(np.float64) for name, value in trained["mean"].items()}
    weights["out.bias"][0] += STRUCK_LIFT
    flat = packed(weights)
    write_weights(flat, trained["sizes"])
    cases = reference(Net(unpacked(flat, weights)))
    with open(os.path.join(ROOT, "tests/engine/recheck/look/reference.json"), "w") as file:
        json.dump({"madeBy": "src/training/look/export.py (numpy)", "cases": cases}, file, separators=(",", ":"))
    print(len(flat), "weights")


if __name__ == "__main__":
    main()
