"""Trains the closer look, in pieces that go on where the last one stopped.

    python3 -m look.train --data DATA --out OUT [--minutes 8] [--of 24] [--sizes middle] [--leave-out PIANO]

Each piece trains for `--minutes` and leaves OUT/look-SIZE.pt; called again with the same OUT it goes on, until `--of`
minutes are done (the rate of learning falls over all of them). Several sizes are trained side by side on the same batches.
The last piece writes the table of the pianos kept out (evaluate.py)."""

import argparse
import math
import os
import queue
import random
import threading
import time

import torch
import torch.multiprocessing as mp

from listener.features import level
from sound import RATE
from sound.acoustics import Room
from sound.bank import KEPT_OUT, Bank, bank_plan, talk_lines, without
from sound.draws import Draws
from sound.render import render

from . import batches, blind, features, net, project

LENGTH = int(batches.SECONDS * RATE)
RATE_OF_LEARNING, LAST_SHARE, WARM_UP = 1.8e-3, 0.01, 300
RENEW_SEC = 200
ABOVE_WEIGHT, ABSENT_WEIGHT = 1.5, 2.0


def work(out, plan, real, clips, most, seed, share_real, apart):
    """A worker process: batches without end."""
    maker = batches.Maker(plan, real, clips, most, seed, share_real, apart)
    while True:
        out.put(maker.batch())


class Source:
    """Worker processes that count, and what the GPU makes of their batches."""

    def __init__(self, bank, plan, real, args, seed, workers, share_real=0.75, apart=0.6):
        self.bank, self.args, self.device = bank, args, bank.device
        self.queue = mp.Queue(2 * workers)
        given = (self.queue, plan, real, args.clips, args.questions)
        self.workers = [
            mp.Process(target=work, args=(*given, seed * 1000 + i, share_real, apart), daemon=True)
            for i in range(workers)
        ]
        for worker in self.workers:
            worker.start()

    def stop(self):
        for worker in self.workers:
            worker.terminate()

    @torch.no_grad()
    def make(self, room, ear, talk, chance):
        """→ dict of tensors of one batch, padded to `questions` rows and `questions` + 1 looks at hands apart"""
        raw, device, clips = self.queue.get(), self.device, self.args.clips
        place = torch.tensor(raw["place"], device=device)
        y = render(self.bank.rows, self.bank.onsets, raw["events"], len(place), LENGTH)
        draws = Draws(place, device)
        mild = draws.place_chance(0.55)
        pedal = torch.tensor(raw["pedal"], device=device)[:, None]
        y = room(y, pedal, talk, chance, draws, mild)
        y = level(y) * 10 ** (draws.own_uniform(-4, 4) / 20)
        heard = ear(y[:clips])
        asked = torch.tensor(raw["asked"], device=device)
        clip, at, key = (asked[:, c].long() for c in (batches.CLIP, batches.AT, batches.MIDI))
        at = asked[:, batches.AT].round().long()
        column = {
            name: asked[:, getattr(batches, name)].float() for name in ("STRUCK", "LATE", "KIND", "BELOW", "HAND")
        }
        # a string's stiffness differs from the usual one's, and is the same alone and together
        stray = torch.randn(len(place), device=device) * 0.35
        cents, until = asked[:, batches.CENTS].float(), asked[:, batches.UNTIL].float()
        views = features.features(y, clip, at, key.float(), cents, stray[clip], until)
        word = blind.said(heard, clip, at, key)
        told = torch.cat([word.flatten(1), blind.usual(word, clip, column["HAND"], column["STRUCK"], clips)], 1)
        count, most = len(asked), self.args.questions
        alone = torch.tensor(raw["alone"][: 2 * most], device=device)
        empty = torch.zeros(2 * most + 1 - len(alone), features.COMPARED, device=device)
        if len(alone):
            which = alone[:, 0].long()
            shown = features.levels_at(
                y, which, alone[:, 1].round().long(), alone[:, 2].float(), alone[:, 3].float(), stray[place[which]]
            )
            empty = torch.cat([shown, empty])
        written = torch.cat(
            [torch.tensor(raw["marks"], device=device).float(), torch.tensor(raw["scalars"], device=device)], 1
        )

        def padded(x, value=0):
            return torch.cat([x, torch.full((most - count, *x.shape[1:]), value, device=device, dtype=x.dtype)])

        def known(column):
            index = asked[:, column].long()
            return padded(
                torch.where((index < 0) | (index >= len(alone)), torch.full_like(index, 2 * most), index), 2 * most
            )

        struck, kind = column["STRUCK"], column["KIND"]
        weight = (1 + (ABSENT_WEIGHT - 1) * (1 - struck) * (kind < 4)) * (1 + (ABOVE_WEIGHT - 1) * (kind == 2))
        return dict(
            views=[padded(one) for one in views],
            written=padded(written),
            told=padded(told),
            group=padded(asked[:, batches.TWIN].long(), most),
            alone=empty,
            other=known(batches.OTHER),
            own=known(batches.OWN),
            struck=padded(struck),
            late=padded(column["LATE"] * 100),
            weight=padded(weight),
            kind=padded(kind),
            below=padded(column["BELOW"]),
            mild=padded(mild[clip, 0]),
            count=count,
        )


INPUTS = ("written", "told", "group", "alone", "other", "own", "struck", "late", "weight")


class Trainee:
    """One network, its optimiser, its mean over time, and on CUDA one graph of a step."""

    def __init__(self, size, most, device):
        self.size, self.most, self.device = size, most, device
        self.net = net.Look(**net.SIZES[size]).to(device)
        rate = torch.tensor(RATE_OF_LEARNING, device=device) if device == "cuda" else RATE_OF_LEARNING
        self.optimiser = torch.optim.AdamW(
            self.net.parameters(), lr=rate, weight_decay=1e-4, capturable=device == "cuda"
        )
        self.mean = {name: value.clone() for name, value in self.net.state_dict().items()}
        self.mean_rate = torch.tensor(1.0, device=device)
        self.losses = torch.zeros(3, device=device)
        self.steps, self.graph = 0, None

    def step(self, z):
        out = self.forward(z)
        first, last = (net.loss(o, z["struck"], z["late"], z["weight"]) for o in out)
        total = last[0] + 0.25 * last[1] + 0.3 * (first[0] + 0.25 * first[1])
        self.optimiser.zero_grad(set_to_none=False)
        total.backward()
        torch.nn.utils.clip_grad_norm_(self.net.parameters(), 1.0)
        self.optimiser.step()
        with torch.no_grad():
            for name, value in self.net.state_dict().items():
                self.mean[name].lerp_(value, self.mean_rate)
            self.losses += torch.stack([last[0].detach(), last[1].detach(), first[0].detach()])

    def forward(self, z):
        return self.net(
            z["views"], z["written"], z["told"], z["group"], self.most + 1, z["alone"], z["other"], z["own"]
        )

    def set_rate(self, rate):
        for group in self.optimiser.param_groups:
            if self.device == "cuda":
                group["lr"].fill_(rate)
            else:
                group["lr"] = rate
        self.mean_rate.fill_(max(1e-3, 1 / (self.steps + 1)))

    def state(self):
        return dict(
            sizes=self.net.sizes,
            mean={name: value.cpu() for name, value in self.mean.items()},
            net={name: value.cpu() for name, value in self.net.state_dict().items()},
            optimiser=self.optimiser.state_dict(),
            steps=self.steps,
        )

    def resume(self, state):
        self.net.load_state_dict(state["net"])
        self.optimiser.load_state_dict(state["optimiser"])
        for group in self.optimiser.param_groups:
            group["capturable"] = self.device == "cuda"
        for name, value in state["mean"].items():
            self.mean[name].copy_(value)
        self.steps = state["steps"]


def capture(trainees, static):
    """Records a step of each network as a CUDA graph on the static batch."""
    stream = torch.cuda.Stream()
    stream.wait_stream(torch.cuda.current_stream())
    with torch.cuda.stream(stream):
        for one in trainees:
            kept = {name: value.clone() for name, value in one.net.state_dict().items()}
            fresh = one.steps == 0
            state = None if fresh else one.optimiser.state_dict()
            one.set_rate(0.0)
            one.mean_rate.fill_(0.0)
            held = None if fresh else {k: {n: v.clone() for n, v in s.items()} for k, s in state["state"].items()}
            for _ in range(3):
                one.step(static)
            with torch.no_grad():
                for name, value in one.net.state_dict().items():
                    value.copy_(kept[name])
                for index, entry in enumerate(one.optimiser.state.values()):
                    for name, value in entry.items():
                        value.copy_(torch.zeros_like(value) if fresh else held[index][name])
    torch.cuda.current_stream().wait_stream(stream)
    torch.cuda.synchronize()
    for one in trainees:
        one.graph = torch.cuda.CUDAGraph()
        with torch.cuda.graph(one.graph):
            one.step(static)
        one.losses.zero_()
    torch.cuda.synchronize()


def producer(source, room, ear, talk, chance, ready, stop, bank, seed, cuda):
    """A thread: renders batches on its own CUDA stream."""
    stream = torch.cuda.Stream() if cuda else None
    begun, renewals = time.time(), 0
    main_stream = torch.cuda.default_stream() if cuda else None

    def run():
        nonlocal begun, renewals
        while not stop.is_set():
            if time.time() - begun > RENEW_SEC:
                renewals += 1
                bank.renew(seed * 77 + renewals)
                begun = time.time()
            z = source.make(room, ear, talk, chance)
            if cuda:
                for value in [*z["views"], *[v for v in z.values() if torch.is_tensor(v)]]:
                    value.record_stream(main_stream)
                stream.synchronize()
            while not stop.is_set():
                try:
                    ready.put(z, timeout=1)
                    break
                except queue.Full:
                    pass

    if cuda:
        with torch.cuda.stream(stream):
            run()
    else:
        run()


def arguments():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--data", required=True)
    parser.add_argument("--out", required=True)
    parser.add_argument("--start", help="folder of an earlier piece's checkpoints; left out: OUT")
    parser.add_argument("--minutes", type=float, default=8.0)
    parser.add_argument("--of", type=float, default=24.0)
    parser.add_argument("--sizes", default="middle")
    parser.add_argument("--leave-out", default="")
    parser.add_argument("--clips", type=int, default=32)
    parser.add_argument("--questions", type=int, default=2400)
    parser.add_argument("--workers", type=int, default=13)
    parser.add_argument("--evaluate", type=int, default=60, help="batches of each piano kept out; 0: none")
    parser.add_argument("--steps", type=int, default=10**9, help="at most so many, for trying it out")
    parser.add_argument("--synthetic", type=int, default=40)
    parser.add_argument("--device", default="cuda" if torch.cuda.is_available() else "cpu")
    parser.add_argument("--seed", type=int, default=1)
    return parser.parse_args()


def load(trainees, args):
    """→ minutes of training that lie behind"""
    done = 0.0
    for one in trainees:
        path = os.path.join(args.start or args.out, f"look-{one.size}.pt")
        if os.path.exists(path):
            state = torch.load(path, map_location=args.device, weights_only=False)
            one.resume(state)
            done = state["minutes"]
    return done


def save(trainees, args, done):
    for one in trainees:
        torch.save({**one.state(), "minutes": done}, os.path.join(args.out, f"look-{one.size}.pt"))


def train(trainees, make_next, args, done, log):
    """Steps for `--minutes`; `make_next`: the next batch, waiting for it. → minutes done in all"""
    begun, last, steps, waited, since = time.time(), time.time(), 0, 0.0, 0
    cuda, static = args.device == "cuda", None
    while True:
        minutes = (time.time() - begun) / 60
        if minutes >= args.minutes or steps >= args.steps:
            return done + minutes
        turn = min(1.0, (done + minutes) / args.of)
        rate = RATE_OF_LEARNING * (LAST_SHARE + (1 - LAST_SHARE) * 0.5 * (1 + math.cos(math.pi * turn)))
        before = time.time()
        z = make_next()
        waited += time.time() - before
        if cuda and static is None:
            static = {name: z[name].clone() for name in INPUTS}
            static["views"] = [one.clone() for one in z["views"]]
            capture(trainees, static)
        if cuda:
            torch._foreach_copy_(
                [*static["views"], *[static[n] for n in INPUTS]], [*z["views"], *[z[n] for n in INPUTS]]
            )
        for one in trainees:
            one.set_rate(rate * min(1.0, (one.steps + 1) / WARM_UP))
            one.graph.replay() if cuda else one.step(z)
            one.steps += 1
        steps, since = steps + 1, since + 1
        if cuda and steps % 4 == 0:
            torch.cuda.current_stream().synchronize()
        if since == 250 or args.steps < 1000:
            parts = [f"{one.size} " + " ".join(f"{v:.4f}" for v in (one.losses / since).tolist()) for one in trainees]
            speed = since / (time.time() - last)
            log(
                f"{trainees[0].steps} {done + minutes:.1f} min {speed:.1f}/s waiting {waited / since * 1000:.0f} ms | "
                + " | ".join(parts)
            )
            for one in trainees:
                one.losses.zero_()
            last, waited, since = time.time(), 0.0, 0
        if steps % 2000 == 0:
            save(trainees, args, done + minutes)


def main():
    args = arguments()
    begun = time.time()

    def log(text):
        print(f"{time.time() - begun:.0f}s {text}", flush=True)

    os.makedirs(args.out, exist_ok=True)
    torch.manual_seed(args.seed)
    chance, plan = random.Random(args.seed), bank_plan(args.data, args.synthetic)
    cuda = args.device == "cuda"
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = cuda
    # workers begin to count while the bank is made
    real = without(plan["names"], args.leave_out)
    shell = type("Shell", (), {"device": args.device})()
    source = Source(shell, plan, real, args, args.seed + int(begun) % 1000 * 17, args.workers)
    bank = Bank(args.data, args.device, args.synthetic, seed=args.seed + int(begun) % 1000)
    source.bank = bank
    talk, talk_kept = talk_lines(args.data, args.device)
    room, ear = Room(LENGTH, args.device), blind.Blind(args.device)
    trainees = [Trainee(size, args.questions, args.device) for size in args.sizes.split(",")]
    done = load(trainees, args)
    if done:
        bank.renew(args.seed + int(done * 60))
    log(f"trained on {', '.join(real)}; {done:.1f} min done")
    for one in trainees:
        log(f"{one.size}: {sum(p.numel() for p in one.net.parameters())} weights, {one.steps} steps")
    if cuda and not project.agrees(args.device):
        log("the kernel of project.py is wrong here: plain torch instead")
        project.by_kernel = project.plainly
    ready, stop = queue.Queue(4), threading.Event()
    given = (source, room, ear, talk, chance, ready, stop, bank, args.seed, cuda)
    thread = threading.Thread(target=producer, args=given, daemon=True)
    thread.start()
    done = train(trainees, ready.get, args, done, log)
    stop.set()
    thread.join(timeout=20)
    source.stop()
    save(trainees, args, done)
    log(f"done: {done:.1f} min, {trainees[0].steps} steps")
    if args.evaluate:
        from . import evaluate

        kept = [*KEPT_OUT, *([args.leave_out] if args.leave_out else [])]
        evaluate.run(trainees, kept, bank, plan, room, ear, talk_kept, args, log)


if __name__ == "__main__":
    mp.set_start_method("spawn")
    main()
