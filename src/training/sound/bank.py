"""The bank on the GPU: sampled notes as they are and unevenly filtered, synthesised pianos, noises."""

import numpy as np
import torch

from . import RATE
from .coding import decode
from .hits import first_rows, hit_bank
from .synth import synth_bank

# kept out of every training: the piano of the tests and one more
KEPT_OUT = ("test-upright", "iowa")
# two recordings of one piano are left out together
SAME_PIANO = (("small-grand-close", "small-grand-distant"), ("splendid", "splendid-left"))
# how often a piano is drawn
WEIGHT = {"p200": 0.5, "splendid": 0.7, "splendid-left": 0.6, "small-grand-close": 0.8, "small-grand-distant": 0.8}


def uneven(rows, spread_db):
    """Rows of notes → the same through filters that lift and lower partials at random (minimum phase, folded cepstrum)."""
    size = 131072
    hz = torch.fft.rfftfreq(size, 1 / RATE, device=rows.device).clamp(min=20).log2()[None]
    out = []
    for start in range(0, len(rows), 20):
        y = rows[start : start + 20].float()
        gain = torch.zeros(len(y), size // 2 + 1, device=rows.device)
        for _ in range(60):
            height = torch.randn(len(y), 1, device=rows.device) * spread_db
            centre = torch.rand(len(y), 1, device=rows.device) * 8.5 + 5
            width = 0.04 + 0.12 * torch.rand(len(y), 1, device=rows.device)
            gain += height * torch.exp(-0.5 * ((hz - centre) / width) ** 2)
        cepstrum = torch.fft.irfft(gain / 8.686 + 0j, size)
        cepstrum[:, 1 : size // 2] *= 2
        cepstrum[:, size // 2 + 1 :] = 0
        response = torch.exp(torch.fft.rfft(cepstrum))
        filtered = torch.fft.irfft(torch.fft.rfft(y, size) * response, size)[:, : rows.shape[1]]
        out.append(filtered.clamp(-32767, 32767).short())
    return torch.cat(out)


def without(names, left_out):
    """Names of the pianos to train on, and those kept out with `left_out` (a piano's other recording goes with it)."""
    gone = set(KEPT_OUT) | {left_out}
    for pair in SAME_PIANO:
        if left_out in pair:
            gone |= set(pair)
    return [name for name in names if name not in gone]


class Bank:
    """rows (N, ROW) int16 and onsets (N,): voicings × strikes of the sampled notes, then synthetic pianos, then noises.

    A voicing is another balance of partials key by key, as another piano of its make has; a strike is another blow on
    the same string. Both are filters of random bumps; 3.5 and 1.5 dB are guesses (no source)."""

    VOICED_DB, STRUCK_DB = 3.5, 1.5

    def __init__(self, data, device, synthetic=40, layers=2, seed=1, copies=3):
        """`copies`: voicings of each piano, and strikes of each voicing"""
        about = np.load(data + "/notes.npz")
        self.device, self.seed, self.copies = device, seed, copies
        self.synthetic, self.layers = synthetic, layers
        sampled = torch.tensor(decode(data + "/notes.xz"), device=device)
        self.sampled = len(sampled)
        kinds = [self._struck(sampled)]
        kinds += [self._struck(uneven(sampled, self.VOICED_DB)) for _ in range(copies - 1)]
        made, made_onsets = synth_bank(synthetic, device, layers, seed)
        hits = hit_bank(device, np.load(data + "/releases.npy"))
        onsets = torch.tensor(about["on"], device=device).int().repeat(copies * copies)
        self.first_synthetic = len(onsets)
        self.rows = torch.cat([*kinds, made, hits])
        self.onsets = torch.cat([onsets, made_onsets.int(), torch.zeros(len(hits), device=device).int()])
        self.about = about
        self.first_hit = self.first_synthetic + len(made)

    def _struck(self, voiced):
        """A voicing → its strikes, the first as it is."""
        return torch.cat([voiced] + [uneven(voiced, self.STRUCK_DB) for _ in range(self.copies - 1)])

    def renew(self, seed):
        """Other synthetic pianos, and another voicing in place of one of those that are there; the first stays."""
        made, onsets = synth_bank(self.synthetic, self.device, self.layers, seed)
        part = slice(self.first_synthetic, self.first_hit)
        self.rows[part] = made
        self.onsets[part] = onsets.int()
        if self.copies > 1:
            first = (1 + seed % (self.copies - 1)) * self.copies * self.sampled
            voiced = uneven(self.rows[: self.sampled], self.VOICED_DB)
            self.rows[first : first + self.copies * self.sampled] = self._struck(voiced)


def bank_plan(data, synthetic=40, layers=2, copies=3):
    """What a worker that only counts needs to know of the bank."""
    about = np.load(data + "/notes.npz")
    first_synthetic = len(about["on"]) * copies * copies
    return dict(
        names=[str(name) for name in about["name"]],
        table=about["tbl"],
        pitch=about["mid"],
        layer_counts=about["nl"],
        sampled=len(about["on"]),
        voicings=copies,
        strikes=copies,
        synthetic=synthetic,
        synthetic_layers=layers,
        first_synthetic=first_synthetic,
        first_hit=first_rows(first_synthetic + synthetic * 80 * layers),
    )


def talk_lines(data, device):
    """Speech to train with and speech kept for evaluation, at a level of 1."""
    split = int(np.load(data + "/talk.npz")["split"])
    line = torch.tensor(decode(data + "/talk.xz")[0], device=device).float() / 2500
    return line[:split], line[split:]
