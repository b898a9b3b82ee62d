"""Trains the blind listener, in pieces that go on where the last one stopped; then its table of the pianos kept out.

    python3 -m listener.train --data DATA --out OUT [--minutes 8] [--of 24]"""

import argparse
import math
import os
import queue
import random
import threading
import time

import torch
import torch.multiprocessing as mp

from sound import KEYS, RATE
from sound.acoustics import Room
from sound.bank import KEPT_OUT, Bank, bank_plan, talk_lines, without
from sound.draws import Draws
from sound.render import render

from . import plays
from .features import features, frames, level
from .net import Listener
from .targets import loss, pick, targets

LENGTH = int(plays.SECONDS * RATE)
RATE_OF_LEARNING, LAST_SHARE, WARM_UP, MEAN_RATE = 3e-3, 0.01, 300, 8e-4
WEIGHTS = (1, 1, 0.3, 2)  # of onset, moment, level, sounding
SURE = 0.65


def work(out, plan, real, clips, seed, share_real):
    maker = plays.Maker(plan, real, clips, seed, share_real)
    while True:
        out.put(maker.batch())


class Source:
    """Worker processes that play, and what the GPU makes of it."""

    def __init__(self, plan, real, clips, seed, workers, share_real=0.7):
        self.clips, self.queue = clips, mp.Queue(2 * workers)
        self.workers = [
            mp.Process(target=work, args=(self.queue, plan, real, clips, seed * 1000 + i, share_real), daemon=True)
            for i in range(workers)
        ]
        for worker in self.workers:
            worker.start()

    def stop(self):
        for worker in self.workers:
            worker.terminate()

    @torch.no_grad()
    def make(self, bank, room, talk, chance):
        raw, device = self.queue.get(), bank.rows.device
        y = render(bank.rows, bank.onsets, raw["events"], self.clips, LENGTH)
        draws = Draws(torch.arange(self.clips, device=device), device)
        mild = draws.own_chance(0.3)
        y = room(y, torch.tensor(raw["pedal"], device=device)[:, None], talk, chance, draws, mild)
        y = level(y) * 10 ** (draws.own_uniform(-9, 9) / 20)
        keys, every = torch.tensor(raw["keys"], device=device), torch.arange(KEYS, device=device)[None]
        mask = ((every >= keys[:, :1]) & (every < keys[:, 1:])).float()[None, None]
        struck = torch.tensor(raw["struck"], device=device)
        return dict(seen=features(y), mask=mask, target=targets(struck, self.clips, frames(LENGTH)), struck=struck)


def step(net, optimiser, mean, mean_rate, z):
    cuda = z["mask"].is_cuda
    with torch.autocast("cuda" if cuda else "cpu", torch.bfloat16, enabled=cuda):
        out = net(z["seen"], frames(LENGTH), z["mask"])
    parts = loss(out.float(), z["target"], z["mask"])
    optimiser.zero_grad(set_to_none=True)
    sum(weight * part for weight, part in zip(WEIGHTS, parts)).backward()
    torch.nn.utils.clip_grad_norm_(net.parameters(), 1.0)
    optimiser.step()
    with torch.no_grad():
        for name, value in net.state_dict().items():
            if value.is_floating_point():
                mean[name].lerp_(value, mean_rate)
    return torch.stack([part.detach() for part in parts])


@torch.no_grad()
def evaluate(net, source, bank, room, talk, chance, batches):
    """Precision, recall, F at ±50 ms and the SD of the onsets over so many batches."""
    hit = heard = there = 0
    errors = []
    for _ in range(batches):
        z = source.make(bank, room, talk, chance)
        found = pick(net(z["seen"], frames(LENGTH)))
        struck = z["struck"].cpu().tolist()
        for clip, notes in enumerate(found):
            notes = [one for one in notes if one[2] > SURE and 0.3 < one[0] < plays.SECONDS - 0.3]
            true = [(on, midi) for c, on, midi, _, _ in struck if c == clip and 0.3 < on < plays.SECONDS - 0.3]
            free = list(notes)
            for on, midi in true:
                near = [one for one in free if one[1] == midi and abs(one[0] - on) < 0.05]
                if near:
                    best = min(near, key=lambda one: abs(one[0] - on))
                    free.remove(best)
                    errors.append(best[0] - on)
                    hit += 1
            heard += len(notes)
            there += len(true)
    precision, recall = hit / max(1, heard), hit / max(1, there)
    spread = torch.tensor(errors).std().item() * 1000 if len(errors) > 1 else float("nan")
    return precision, recall, 2 * hit / max(1, heard + there), spread


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--data", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--start", help="folder of an earlier piece's checkpoint; left out: OUT")
    parser.add_argument("--minutes", type=float, default=8.0)
    parser.add_argument("--of", type=float, default=24.0)
    parser.add_argument("--clips", type=int, default=32)
    parser.add_argument("--workers", type=int, default=12)
    parser.add_argument("--evaluate", type=int, default=40, help="batches of each piano kept out; 0: none")
    parser.add_argument("--steps", type=int, default=10**9, help="at most so many, for trying it out")
    parser.add_argument("--synthetic", type=int, default=40)
    parser.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu")
    parser.add_argument("--seed", type=int, default=1)
    return parser.parse_args()


def main():
    args, begun = arguments(), time.time()
    os.makedirs(args.out, exist_ok=True)
    seed = args.seed + int(begun) % 1000
    torch.manual_seed(seed)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = args.device == "cuda"
    plan, chance = bank_plan(args.data, args.synthetic), random.Random(seed)
    source = Source(plan, without(plan["names"], ""), args.clips, seed, args.workers)
    bank = Bank(args.data, args.device, args.synthetic, seed=seed)
    talk, talk_kept = talk_lines(args.data, args.device)
    room, net = Room(LENGTH, args.device), Listener().to(args.device)
    optimiser = torch.optim.AdamW(net.parameters(), lr=RATE_OF_LEARNING, weight_decay=1e-4)
    mean, steps, done = {name: value.clone() for name, value in net.state_dict().items()}, 0, 0.0
    path = os.path.join(args.start or args.out, "listener.pt")
    if os.path.exists(path):
        state = torch.load(path, map_location=args.device)
        net.load_state_dict(state["net"])
        optimiser.load_state_dict(state["optimiser"])
        mean, steps, done = state["mean"], state["steps"], state["minutes"]
    ready, stop = queue.Queue(3), threading.Event()

    def produce():
        while not stop.is_set():
            z = source.make(bank, room, talk, chance)
            while not stop.is_set():
                try:
                    ready.put(z, timeout=1)
                    break
                except queue.Full:
                    pass

    thread = threading.Thread(target=produce, daemon=True)
    thread.start()
    start, taken, total = time.time(), 0, 0
    while taken < args.steps and (time.time() - start) / 60 < args.minutes:
        turn = min(1.0, (done + (time.time() - start) / 60) / args.of)
        rate = RATE_OF_LEARNING * min(1, (steps + 1) / WARM_UP)
        for group in optimiser.param_groups:
            group["lr"] = rate * (LAST_SHARE + (1 - LAST_SHARE) * 0.5 * (1 + math.cos(math.pi * turn)))
        total = total + step(net, optimiser, mean, max(MEAN_RATE, 1 / (steps + 1)), ready.get())
        steps, taken = steps + 1, taken + 1
        if taken % 250 == 0 or args.steps < 100:
            losses = " ".join(f"{value / min(taken, 250):.4f}" for value in total.tolist())
            print(f"{time.time() - begun:.0f}s step {steps}: {losses}", flush=True)
            total = 0
    stop.set()
    thread.join(timeout=20)
    source.stop()
    done += (time.time() - start) / 60
    state = dict(net=net.state_dict(), mean=mean, optimiser=optimiser.state_dict(), steps=steps, minutes=done)
    torch.save(state, os.path.join(args.out, "listener.pt"))
    net.load_state_dict(mean)
    net.eval()
    for piano in KEPT_OUT if args.evaluate else ():
        kept = Source(plan, [piano], args.clips, 7000, max(1, args.workers // 2), share_real=1.0)
        figures = evaluate(net, kept, bank, room, talk_kept, chance, args.evaluate)
        kept.stop()
        print("kept out: %s  precision %.4f recall %.4f F %.4f onset SD %.1f ms" % (piano, *figures), flush=True)


if __name__ == "__main__":
    mp.set_start_method("spawn")
    main()
