"""The table of the pianos kept out: what is found, what is told absent, by itself, beside twins, and with hands apart known."""

import os
import random

import numpy as np
import torch

from .train import Source, forward

KINDS = ("alone", "in a chord", "an octave above", "an octave below", "not written", "answering nothing")
WAYS = ("alone", "twins", "apart", "not held")


@torch.no_grad()
def answers(network, z):
    """→ (count, 4 · 2) log odds and moments: by itself, beside twins, beside twins and hands apart, so without the held view"""
    first, last = forward(network, z)
    nobody = torch.full_like(z["other"], len(z["alone"]) - 1)
    _, twins = forward(network, {**z, "other": nobody, "own": nobody})
    _, brief = forward(network, {**z, "views": [*z["views"][:-1], torch.zeros_like(z["views"][-1])]})
    return torch.cat([out[:, :2] for out in (first, twins, last, brief)], 1)[: z["count"]]


def run(pianos, bank, plan, room, ear, talk, args, log, folder=None):
    """`pianos`: by each that is played, the trainees that are asked. `folder`: where all that they said is kept."""
    for one in {one for some in pianos.values() for one in some}:
        one.use_mean()
    sources = {
        piano: Source(plan, [piano], args, 7000 + i, max(1, args.workers // len(pianos)), share_real=1.0, apart=0.7)
        for i, piano in enumerate(pianos)
        if piano in plan["names"]
    }
    chance = random.Random(5)
    truths = {piano: [] for piano in sources}
    rows = {piano: {one.name: [] for one in pianos[piano]} for piano in sources}
    # in turn, since each piano's processes count while the others' batches are asked about
    for _ in range(args.evaluate):
        for piano, source in sources.items():
            source.bank = bank
            z = source.make(room, ear, talk, chance)
            has = torch.stack([(z[name] < len(z["alone"]) - 1).float() for name in ("other", "own")], 1)
            about = torch.stack([z[n] for n in ("struck", "late", "kind", "below", "mild")], 1)
            truths[piano].append(torch.cat([about, has, z["told"][:, :2]], 1)[: z["count"]].cpu())
            for one in pianos[piano]:
                rows[piano][one.name].append(answers(one.net, z).cpu())
    for piano, source in sources.items():
        source.stop()
        truth = torch.cat(truths[piano]).numpy()
        answered = {name: torch.cat(some).numpy() for name, some in rows[piano].items()}
        if folder is not None:
            kept = {name: value.astype(np.float16) for name, value in dict(answered, truth=truth).items()}
            np.savez_compressed(os.path.join(folder, f"evaluation-{piano}.npz"), **kept)
        for name, found in answered.items():
            log(f"## {piano}, {name}")
            table(truth, found, log)


def table(truth, found, log):
    struck, late, kind, below, mild = truth[:, 0] > 0.5, truth[:, 1], truth[:, 2], truth[:, 3], truth[:, 4] > 0.5
    both_known = (truth[:, 5] > 0.5) & (truth[:, 6] > 0.5)
    other_known = truth[:, 5] > 0.5
    for which, name in enumerate(KINDS):
        for label, part in (
            ("all", kind >= 0),
            ("mild", mild),
            ("hands apart known", both_known),
            ("other hand's known", other_known),
        ):
            own = (kind == which) & part
            if label in ("hands apart known", "other hand's known") and which not in (2, 3):
                continue
            if (own & struck).sum() < 50 or (own & ~struck).sum() < 50:
                continue
            line = f"{name:16s} {label:20s} {int((own & struck).sum())}/{int((own & ~struck).sum())}"
            ways = [("ear", truth[:, 7], truth[:, 8])] + [
                (way, found[:, 2 * i], found[:, 2 * i + 1]) for i, way in enumerate(WAYS)
            ]
            for way, odds, moment in ways:
                line += f" | {way} " + figures(odds, moment, late, own, struck)
            log(line)
    for low, high in ((-30, -9), (-9, -6), (-6, -3), (-3, -1), (-1, 1)):
        part = (kind == 2) & both_known
        some = part & struck & (below >= low) & (below < high)
        if some.sum() < 30:
            continue
        line = f"an octave above, {low}..{high} dB, {int(some.sum())}:"
        for i, way in enumerate(WAYS):
            bound = np.quantile(found[part & ~struck, 2 * i], 0.98)
            line += f" {way} {(found[some, 2 * i] > bound).mean():.3f}"
        log(line)


def figures(odds, moment, late, own, struck):
    """Found where 2 % of absent ones are invented; absent told where 1 % of struck ones are lost; SD of the onset, ms."""
    there, absent = odds[own & struck], odds[own & ~struck]
    error = (moment - late)[own & struck] * 10
    found = (there > np.quantile(absent, 0.98)).mean()
    told = (absent < np.quantile(there, 0.01)).mean()
    return f"{found:.3f} {told:.3f} {error.std():.1f}"
