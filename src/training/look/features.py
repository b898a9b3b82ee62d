"""What the closer look sees: levels at a key's partials and its relatives', in windows along time (torch).

`export.py` computes the same in plain numpy; the engine's TypeScript is tested against that."""

import torch
import torch.nn.functional as F

from sound import RATE

from . import project

OWN = (1, 2, 3, 4, 5, 6, 7, 8)
# partials of strings an octave, a twelfth and two octaves below that this string has not
BELOW = (0.5, 1.5, 2.5, 3.5, 1 / 3, 2 / 3, 4 / 3, 5 / 3, 0.75, 1.25)
BESIDE = tuple(partial * 2 ** (semitone / 12) for partial in (1, 2, 3) for semitone in (-1, 1))
STRIPS = len(OWN) + len(BELOW) + len(BESIDE)
# window, samples from the moment to the first frame's middle, hop, frames
LONG = (4096, -3072, 1024, 8)
MIDDLE = (1024, -1536, 256, 19)
SHORT = (256, -1280, 128, 26)
HELD = (4096, 6144, 2048, 5)
VIEWS = (LONG, MIDDLE, SHORT, HELD)
TOP_HZ = 10000.0
# a held frame counts where the next step comes later than its middle by this many samples
HELD_CLEAR = 1024
LATER = ((6, 8), (8, 11), (11, 15), (15, 19))
COMPARED = 8 * STRIPS


def strips(key, cents, stray):
    """(Q,) key, cents, ln of the stiffness over the usual → (Q, STRIPS) Hz. Partials n f0 sqrt(1 + B n²); B by two lines in its
    logarithm (Rigaud, David and Daudet 2013)."""
    first = 440 * 2 ** ((key - 69 + cents / 100) / 12)
    stiffness = torch.exp(torch.logaddexp(0.0926 * key - 13.64, -0.0847 * key - 5.82) + stray)
    own = [first * h * torch.sqrt(1 + stiffness * h * h) for h in OWN]
    below = [first * h * torch.sqrt(1 + 0.75 * stiffness * h * h) for h in BELOW]
    return torch.stack(own + below + [first * h for h in BESIDE], 1)


def middles(spec, frames=None):
    """Samples from the moment to the middles of a view's frames, or of those from, to."""
    _, first, hop, count = spec
    start, stop = frames or (0, count)
    return [first + hop * frame for frame in range(start, stop)]


def view(y, clip, at, hz, size, offsets):
    """→ (Q, offsets, STRIPS) levels: 0 at −40 dB, 2 at a full-scale sine; windows of `size` about each offset from the moment."""
    pad = 1 << 15
    flat = F.pad(y, (pad, pad)).reshape(-1)
    place = clip * (y.shape[1] + 2 * pad) + pad + at
    power = (project.by_kernel if y.is_cuda else project.plainly)(flat, place, hz, size, offsets)
    level = (torch.log10(power + 1e-9) + 4) / 2
    return torch.where(hz[:, None] < TOP_HZ, level, torch.full_like(level, -2.5))


def features(y, clip, at, key, cents, stray, until):
    """The four views; `until` (Q,) seconds to the next step: held frames that it would reach into are 0."""
    hz = strips(key, cents, stray)
    both = view(y, clip, at, hz, LONG[0], middles(LONG) + middles(HELD))
    held = both[:, LONG[3] :]
    after = torch.tensor(middles(HELD), device=y.device)
    clear = (after[None] + HELD_CLEAR <= until[:, None] * RATE)[..., None]
    return [
        both[:, : LONG[3]],
        view(y, clip, at, hz, MIDDLE[0], middles(MIDDLE)),
        view(y, clip, at, hz, SHORT[0], middles(SHORT)),
        torch.where(clear, held, torch.zeros_like(held)),
    ]


def levels(long, middle):
    """The long view from the moment on and the middle one in four parts from just before it on → (Q, COMPARED)"""
    return torch.cat([long[:, 3:7].flatten(1)] + [middle[:, a:b].mean(1) for a, b in LATER], 1)


def levels_at(y, clip, at, key, cents, stray):
    """The same without what it does not need."""
    hz = strips(key, cents, stray)
    long = view(y, clip, at, hz, LONG[0], middles(LONG, (3, 7)))
    middle = view(y, clip, at, hz, MIDDLE[0], middles(MIDDLE, (6, 19)))
    return torch.cat([long.flatten(1)] + [middle[:, a - 6 : b - 6].mean(1) for a, b in LATER], 1)
