"""Trains the closer look, in pieces that go on where the last one stopped.

    python3 -m look.train --data DATA --out OUT [--minutes 8] [--of 24] [--sizes middle]

Each piece trains for `--minutes` and leaves OUT/look-SIZE.pt; called again with the same OUT it goes on, until `--of`
minutes are done (the rate of learning falls over all of them). Several sizes are trained side by side on the same batches.
The last piece writes the table of the pianos kept out (evaluate.py)."""

import functools
import os
import random

import numpy as np
import torch
import torch.multiprocessing as mp

import loop
from listener.features import level
from sound import RATE
from sound.acoustics import Room
from sound.bank import KEPT_OUT, Bank, bank_plan, talk_lines, without
from sound.draws import Draws
from sound.render import render

from . import batches, blind, features, net, project, questions, strays
from .shipped import take_over

LENGTH = int(batches.SECONDS * RATE)
RATE_OF_LEARNING, RATE_GOING_ON, MEAN_RATE = 2e-3, 1.2e-3, 1e-3
ABOVE_WEIGHT, ABSENT_WEIGHT = 1.5, 2.0


class Source:
    """Worker processes that count, and what the GPU makes of their batches."""

    def __init__(self, plan, real, args, seed, workers, share_real=0.75, apart=0.6):
        self.args, self.bank = args, None
        given = (plan, real, args.clips, args.questions - args.strays)
        self.workers = loop.Workers(
            [functools.partial(batches.Maker, *given, seed * 1000 + i, share_real, apart) for i in range(workers)]
        )

    def stop(self):
        self.workers.stop()

    @torch.no_grad()
    def make(self, room, ear, talk, chance):
        """→ dict of tensors of one batch, padded to `questions` rows and `questions` + 1 looks at hands apart"""
        raw, device, clips = self.workers.get(), self.bank.device, self.args.clips
        place = torch.tensor(raw["place"], device=device)
        y = render(self.bank.rows, self.bank.onsets, raw["events"], len(place), LENGTH)
        draws = Draws(place, device)
        mild = draws.place_chance(0.55)
        pedal = torch.tensor(raw["pedal"], device=device)[:, None]
        y = room(y, pedal, talk, chance, draws, mild)
        y = level(y) * 10 ** (draws.own_uniform(-4, 4) / 20)
        heard = ear(y[:clips])
        nobody = strays.asked(
            chance, blind.peaks(heard, ear.full, strays.LEAST), raw, self.args.strays, self.args.questions
        )
        raw.update({name: np.concatenate([raw[name], rows]) for name, rows in nobody.items()})
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
        word = blind.said(heard, ear.full, clip, at, key)
        answering = column["STRUCK"] * (column["KIND"] < questions.STRAY)
        told = torch.cat([word.flatten(1), blind.usual(word, clip, column["HAND"], answering, clips)], 1)
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
        above = kind == questions.ABOVE
        absent = (1 - struck) * (kind < questions.UNWRITTEN)
        weight = (1 + (ABSENT_WEIGHT - 1) * absent) * (1 + (ABOVE_WEIGHT - 1) * above)
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
            sounds=padded(torch.tensor(raw["sounds"], device=device)[clip]),
            count=count,
        )


def forward(network, batch):
    """→ what it says of each question by itself, and beside twins and hands apart"""
    groups = len(batch["group"]) + 1
    given = [batch[name] for name in ("views", "written", "told", "group")]
    return network(*given, groups, batch["alone"], batch["other"], batch["own"])


def objective(network, batch):
    first, last = (net.loss(out, batch["struck"], batch["late"], batch["weight"]) for out in forward(network, batch))
    total = last[0] + 0.25 * last[1] + 0.3 * (first[0] + 0.25 * first[1])
    return total, torch.stack([last[0].detach(), last[1].detach(), first[0].detach()])


def options(description):
    parser = loop.options(description)
    parser.set_defaults(clips=64, again=4)
    parser.add_argument("--questions", type=int, default=4800)
    parser.add_argument("--strays", type=int, default=400, help="of the questions, keys that answer nothing, at most")
    return parser


def trainee(name, size, device, learns=objective, from_engine=False):
    network = net.Look(**net.SIZES[size])
    rate = RATE_GOING_ON if from_engine else RATE_OF_LEARNING
    network = take_over(network) if from_engine else network
    return loop.Trainee(name, network.to(device), learns, 3, rate, MEAN_RATE, device)


def learn(trainees, plan, args, log):
    """All of them on the same batches, each from where it stopped. → bank, plan, room, ear, speech kept out: what renders"""
    os.makedirs(args.out, exist_ok=True)
    cuda = args.device == "cuda"
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = cuda
    done = max(one.load(args.start or args.out) for one in trainees)
    seed, chance = args.seed + int(done * 60), random.Random(args.seed)
    torch.manual_seed(seed)
    # workers begin to count while the bank is made
    real = without(plan["names"], "")
    source = Source(plan, real, args, seed, args.workers)
    bank = source.bank = Bank(args.data, args.device, args.synthetic, seed=seed, copies=args.copies)
    talk, talk_kept = talk_lines(args.data, args.device)
    room, ear = Room(LENGTH, args.device), blind.Blind(args.device)
    log(f"trained on {', '.join(real)}; {done:.1f} min done")
    for one in trainees:
        log(f"{one.name}: {sum(p.numel() for p in one.net.parameters())} weights, {one.steps} steps")
    if cuda and not project.agrees(args.device):
        log("the kernel of project.py is wrong here: plain torch instead")
        project.by_kernel = project.plainly
    producer = loop.Producer(lambda: source.make(room, ear, talk, chance), bank, seed, args.renew)
    loop.train(trainees, producer, args, done, log)
    producer.stop()
    source.stop()
    return bank, plan, room, ear, talk_kept


def main():
    parser = options(__doc__)
    parser.add_argument("--sizes", default="middle")
    parser.add_argument("--go-on", action="store_true", help="begin with the engine's weights (middle)")
    args, log = parser.parse_args(), loop.clock()
    torch.manual_seed(args.seed)
    sizes = args.sizes.split(",")
    trainees = [trainee("look-" + size, size, args.device, from_engine=args.go_on) for size in sizes]
    renders = learn(trainees, bank_plan(args.data, args.synthetic, copies=args.copies), args, log)
    if args.evaluate:
        from . import evaluate

        trainees.append(trainee("engine", "middle", args.device, from_engine=True))
        evaluate.run({piano: trainees for piano in KEPT_OUT}, *renders, args, log, args.out)


if __name__ == "__main__":
    mp.set_start_method("spawn")
    main()
