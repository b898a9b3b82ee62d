"""Trains the blind listener, in pieces that go on where the last one stopped.

    python3 -m listener.train --data DATA --out OUT [--minutes 8] [--of 24]

Each piece trains for `--minutes` and leaves OUT/listener.pt; called again with the same OUT it goes on, until `--of` minutes
are done (the rate of learning falls over all of them). Each ends with a table of the pianos kept out (evaluate.py)."""

import functools
import os
import random

import torch
import torch.multiprocessing as mp

import loop
from sound import KEYS, RATE
from sound.acoustics import Room
from sound.bank import KEPT_OUT, Bank, bank_plan, talk_lines, without
from sound.draws import Draws
from sound.render import render

from . import plays
from .features import features, frames, level
from .net import Listener
from .targets import loss, targets

LENGTH = int(plays.SECONDS * RATE)
RATE_OF_LEARNING, MEAN_RATE = 3e-3, 8e-4
# of all clips, somebody counting aloud in them
ALOUD = 0.4
WEIGHTS = (1, 1, 0.3, 2)  # of onset, moment, level, sounding


class Source:
    """Worker processes that play, and what the GPU makes of it."""

    def __init__(self, plan, real, clips, seed, workers, share_real=0.7):
        self.clips, self.bank = clips, None
        self.workers = loop.Workers(
            [functools.partial(plays.Maker, plan, real, clips, seed * 1000 + i, share_real) for i in range(workers)]
        )

    def stop(self):
        self.workers.stop()

    @torch.no_grad()
    def make(self, room, talk, chance):
        raw, bank = self.workers.get(), self.bank
        device = bank.rows.device
        y = render(bank.rows, bank.onsets, raw["events"], self.clips, LENGTH)
        draws = Draws(torch.arange(self.clips, device=device), device)
        mild = draws.own_chance(0.3)
        y = room(y, torch.tensor(raw["pedal"], device=device)[:, None], talk, chance, draws, mild)
        y = level(y) * 10 ** (draws.own_uniform(-9, 9) / 20)
        keys, every = torch.tensor(raw["keys"], device=device), torch.arange(KEYS, device=device)[None]
        mask = ((every >= keys[:, :1]) & (every < keys[:, 1:])).float()[None, None]
        struck = torch.tensor(raw["struck"], device=device)
        towards = targets(struck, self.clips, frames(LENGTH))
        return dict(seen=features(y), mask=mask, **towards, struck=raw["struck"], both=raw["both"], sound=y)


def objective(network, batch):
    cuda = batch["mask"].is_cuda
    with torch.autocast("cuda" if cuda else "cpu", torch.bfloat16, enabled=cuda, cache_enabled=False):
        out = network(batch["seen"], frames(LENGTH), batch["mask"])
    parts = loss(out.float(), batch, batch["mask"])
    return sum(weight * part for weight, part in zip(WEIGHTS, parts)), torch.stack([part.detach() for part in parts])


def main():
    parser, log = loop.options(__doc__), loop.clock()
    parser.set_defaults(again=1, shelf=300)
    args = parser.parse_args()
    os.makedirs(args.out, exist_ok=True)
    torch.manual_seed(args.seed)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = args.device == "cuda"
    plan, chance = bank_plan(args.data, args.synthetic, copies=args.copies), random.Random(args.seed)
    network = Listener().to(args.device)
    trainee = loop.Trainee("listener", network, objective, 4, RATE_OF_LEARNING, MEAN_RATE, args.device)
    done = trainee.load(args.start or args.out)
    seed = args.seed + int(done * 60)
    # workers begin to play while the bank is made
    real = without(plan["names"], "")
    source = Source(plan, real, args.clips, seed, args.workers)
    bank = source.bank = Bank(args.data, args.device, args.synthetic, seed=seed, copies=args.copies)
    talk, talk_kept = talk_lines(args.data, args.device)
    room = Room(LENGTH, args.device, ALOUD)
    log(f"trained on {', '.join(real)}; {done:.1f} min and {trainee.steps} steps done")
    producer = loop.Producer(lambda: source.make(room, talk, chance), bank, seed, args.renew)
    loop.train([trainee], producer, args, done, log)
    producer.stop()
    source.stop()
    if args.evaluate:
        from . import evaluate

        trainee.use_mean()
        evaluate.run(network, KEPT_OUT, bank, plan, room, talk_kept, args, log)


if __name__ == "__main__":
    mp.set_start_method("spawn")
    main()
