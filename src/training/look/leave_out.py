"""What each piano, and each thing that the closer look learnt by, is worth: as many networks learn from the same batches, each
of which is not shown one of them.

    python3 -m look.leave_out --data DATA --out OUT [--minutes 8] [--of 24] [--only steinhoff,apart]

Each is asked on the piano that it never heard beside the one that heard all; those without a part on the pianos kept out of
every training. Goes on where it stopped, as train.py does."""

import torch
import torch.multiprocessing as mp

import loop
from sound.bank import KEPT_OUT, SAME_PIANO, bank_plan, without

from . import evaluate
from .batches import DAMPERS
from .questions import STRAY
from .train import learn, objective, options, trainee

SECOND_BANK = ("home-upright", "small-grand-close", "small-grand-distant")


def unheard(bits):
    """→ an objective without the clips in which one of these sounds (batches.py)"""

    def learns(network, batch):
        return objective(network, {**batch, "weight": batch["weight"] * ((batch["sounds"] & bits) == 0)})

    return learns


def not_shown(change):
    """→ an objective that sees a batch as `change` leaves it"""

    def learns(network, batch):
        return objective(network, {**batch, **change(batch)})

    return learns


def _without_apart(batch):
    nobody = torch.full_like(batch["other"], len(batch["alone"]) - 1)
    return dict(other=nobody, own=nobody)


def _without_held(batch):
    return dict(views=[*batch["views"][:-1], torch.zeros_like(batch["views"][-1])])


def _without_twins(batch):
    return dict(group=torch.arange(len(batch["group"]), device=batch["group"].device))


def _without_strays(batch):
    return dict(weight=batch["weight"] * (batch["kind"] != STRAY))


def pianos_of(names):
    """The first recording of each piano that is trained on."""
    seconds = [second for _, second in SAME_PIANO]
    return [name for name in without(names, "") if name not in seconds]


def courses(names):
    """What is left out → how the others are learnt, and the network's size"""

    def bits(gone):
        return sum(1 << names.index(name) for name in gone)

    pianos = {name: unheard(bits(set(names) - set(without(names, name)))) for name in pianos_of(names)}
    second = [name for name in SECOND_BANK if name in names]
    parts = dict(
        nothing=objective,
        apart=not_shown(_without_apart),
        held=not_shown(_without_held),
        twins=not_shown(_without_twins),
        strays=not_shown(_without_strays),
        dampers=unheard(DAMPERS),
        second=unheard(bits(second)),
    )
    out = {name: (learns, "middle") for name, learns in {**parts, **pianos}.items()}
    return {**out, "small": (objective, "small"), "large": (objective, "large")}


def main():
    parser = options(__doc__)
    parser.add_argument("--only", default="", help="some of what is left out, by name; all without it")
    args, log = parser.parse_args(), loop.clock()
    plan = bank_plan(args.data, args.synthetic, copies=args.copies)
    given = courses(plan["names"])
    chosen = [name for name in given if not args.only or name in {"nothing", *args.only.split(",")}]
    trainees = {}
    for name in chosen:
        torch.manual_seed(args.seed)
        learns, size = given[name]
        trainees[name] = trainee("without-" + name, size, args.device, learns)
    renders = learn(list(trainees.values()), plan, args, log)
    asked = {}
    for piano in pianos_of(plan["names"]):
        if piano in trainees:
            recordings = [name for name in without(plan["names"], "") if name not in without(plan["names"], piano)]
            asked |= {name: [trainees[piano], trainees["nothing"]] for name in recordings}
    parts = [one for name, one in trainees.items() if name not in pianos_of(plan["names"])]
    evaluate.run({**{piano: parts for piano in KEPT_OUT}, **asked}, *renders, args, log)


if __name__ == "__main__":
    mp.set_start_method("spawn")
    main()
