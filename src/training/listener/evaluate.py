"""The table of the pianos kept out: one hand and both hands, by the network just trained and by the one in the engine."""

import random

import numpy as np
import torch

from look.blind import Blind

from .features import frames
from .plays import SECONDS
from .reference import Shape
from .targets import pick
from .train import LENGTH, Source

SURE, NEAR_SEC, EDGE_SEC = 0.65, 0.05, 0.3


@torch.no_grad()
def run(network, pianos, bank, plan, room, talk, args, log):
    shipped = Blind(args.device)
    ways = {
        "in the engine": (lambda batch: shipped(batch["sound"]), 0, shipped.full),
        "trained": (lambda batch: network(batch["seen"], frames(LENGTH)), Shape.onset_lift, Shape.full_sum),
    }
    sources = {
        piano: Source(plan, [piano], args.clips, 7000 + i, max(1, args.workers // len(pianos)), share_real=1.0)
        for i, piano in enumerate(pianos)
        if piano in plan["names"]
    }
    chance = random.Random(5)
    for piano, source in sources.items():
        source.bank = bank
        scores = {(way, both): Score() for way in ways for both in (False, True)}
        for _ in range(args.evaluate):
            batch = source.make(room, talk, chance)
            for way, (hear, lift, full) in ways.items():
                heard = hear(batch).float()
                heard[0] += lift
                for clip, notes in enumerate(pick(heard, full)):
                    own = batch["struck"][batch["struck"][:, 0] == clip]
                    scores[way, bool(batch["both"][clip])].add(notes, [(on, midi) for _, on, midi, _, _ in own])
        source.stop()
        for (way, both), score in scores.items():
            log(f"kept out: {piano:14s} {'both hands' if both else 'one hand  '} {way:14s} {score}")


class Score:
    """Notes heard against notes struck, ±50 ms, one to one."""

    def __init__(self):
        self.hit = self.heard = self.there = 0
        self.errors = []

    def add(self, heard, struck):
        def inside(sec):
            return EDGE_SEC < sec < SECONDS - EDGE_SEC

        free = [one for one in heard if one[2] > SURE and inside(one[0])]
        struck = [one for one in struck if inside(one[0])]
        self.heard += len(free)
        self.there += len(struck)
        for on, midi in struck:
            near = [one for one in free if one[1] == midi and abs(one[0] - on) < NEAR_SEC]
            if near:
                best = min(near, key=lambda one: abs(one[0] - on))
                free.remove(best)
                self.errors.append(best[0] - on)
                self.hit += 1

    def __str__(self):
        precision, recall = self.hit / max(1, self.heard), self.hit / max(1, self.there)
        f = 2 * self.hit / max(1, self.heard + self.there)
        spread = np.std(self.errors) * 1000 if self.errors else float("nan")
        return f"precision {precision:.4f} recall {recall:.4f} F {f:.4f} onset SD {spread:.1f} ms of {self.there}"
